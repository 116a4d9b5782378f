import { describe, expect, test } from "vitest";
import { thermalProperties } from "../../../../kernel-lib/library/src/food/thermal/thermal-properties";
import { crustStart } from "../../../../kernel-lib/library/src/heat/formulas/crust-start";
import { timeWhen } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { foods } from "../foods";

const food = foods.reference;

describe("crustStart", () => {
  test("a chilled slab starts its crust when the solver says so, within 6 %", () => {
    const slab = { food, thicknessMm: 10, coefficientWm2K: 40, airC: 204, startC: 4 };
    const solved = timeWhen(simulateSlab({ ...slab, endMin: 20 }), { column: "surfaceC", value: 99.99 });
    expect(Math.abs(crustStart(slab).surfaceMin / solved - 1)).toBeLessThan(0.06);
    expect(crustStart(slab).extrapolation).toBe(true);
  });

  test("on foods from 45 to 85 % water, at the ends of its range, it stays within the error that it states", () => {
    for (const waterFraction of [0.45, 0.65, 0.85])
      for (const proteinShare of [0.1, 0.6]) {
        const dry = 1 - waterFraction;
        const shares = { protein: proteinShare, fat: 0.1, carbohydrate: 0.82 - proteinShare, fibre: 0.04, ash: 0.04 };
        const mix = thermalProperties({
          waterFraction,
          proteinFraction: dry * shares.protein,
          fatFraction: dry * shares.fat,
          carbohydrateFraction: dry * shares.carbohydrate,
          fibreFraction: dry * shares.fibre,
          ashFraction: dry * shares.ash,
        });
        for (const airC of [170, 210])
          for (const biot of [0.16, 0.7, 1.08]) {
            const thicknessMm = 12;
            const coefficientWm2K = (2000 * biot * mix.thawedConductivityWmK) / thicknessMm;
            const slab = { food: mix, thicknessMm, coefficientWm2K, airC, startC: -18 };
            const start = crustStart(slab);
            expect(start.extrapolation).toBe(false);
            const run = simulateSlab({ ...slab, endMin: 60, drying: "none" });
            const solved = timeWhen(run, { column: "surfaceC", value: 99.99 });
            expect(Math.abs(start.surfaceMin / solved - 1)).toBeLessThan(start.worstRelativeError);
          }
      }
  });
});
