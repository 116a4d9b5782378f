import { describe, expect, test } from "vitest";
import { freezingTimeClelandEarle } from "../../../../kernel-lib/library/src/heat/formulas/freezing-time-cleland-earle";
import { freezingTimePham } from "../../../../kernel-lib/library/src/heat/formulas/freezing-time-pham";
import { timeWhen } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { foods } from "../foods";

const food = foods.reference;

describe("freezingTimePham", () => {
  const slab = { food, thicknessMm: 20, coefficientWm2K: 60, airC: -30, startC: 10 };

  test("inside its range a correlation is not flagged and meets the solver within 10 %", () => {
    const solved = timeWhen(simulateSlab({ ...slab, endMin: 300, stopCoreC: -10.5 }), { column: "coreC", value: -10 });
    expect(Math.abs(freezingTimePham(slab).timeMin / solved - 1)).toBeLessThan(0.1);
    expect(Math.abs(freezingTimeClelandEarle(slab).timeMin / solved - 1)).toBeLessThan(0.1);
    expect(freezingTimePham(slab).extrapolation).toBe(false);
  });

  test("warm freezers, thawed targets and food without ice are refused", () => {
    expect(() => freezingTimePham({ ...slab, airC: -9 })).toThrow("the centre tends to -9 °C");
    expect(() => freezingTimePham({ ...slab, centreC: 0 })).toThrow("must be below the freezing point of -1 °C, got 0");
    expect(() => freezingTimePham({ ...slab, food: foods.withoutIce })).toThrow("must hold water that freezes");
  });

  test("whatever the freezing point, in a −18 °C freezer it is at most 3 % short of the solver, and says where it ends", () => {
    for (const freezingPointC of [-0.5, -1, -1.7, -2.4, -3])
      for (const [thicknessMm, coefficientWm2K] of [
        [10, 8],
        [25, 25],
        [40, 60],
      ]) {
        const pan = { food: { ...food, freezingPointC }, thicknessMm, coefficientWm2K, airC: -18, startC: 5 };
        const run = simulateSlab({ ...pan, endMin: 2000, stopCoreC: -10.5, drying: "none" });
        const short = freezingTimePham(pan).timeMin / timeWhen(run, { column: "coreC", value: -10 }) - 1;
        expect(short).toBeLessThan(0);
        expect(short).toBeGreaterThan(-0.03);
      }
    const salty = freezingTimePham({ ...slab, food: { ...food, freezingPointC: -5 } });
    expect(salty.extrapolation).toBe(true);
    expect(salty.notes).toContain("The freezing point of -5.00 °C is outside -3 to -0.4 °C.");
  });
});
