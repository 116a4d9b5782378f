import { describe, expect, test } from "vitest";
import { enthalpyAt } from "../../../../kernel-lib/library/src/food/thermal/enthalpy";
import { thermalProperties } from "../../../../kernel-lib/library/src/food/thermal/thermal-properties";
import { type CrustStartOptions, crustStart } from "../../../../kernel-lib/library/src/heat/formulas/crust-start";
import { timeWhen } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { foods } from "../foods";

const food = foods.reference;

describe("crustStart", () => {
  test("soaks ℓ²/3α after the surface is hot, which a thick slab under a strong fan is at once", () => {
    const slab = { food, thicknessMm: 60, coefficientWm2K: 300, airC: 204 };
    const start = crustStart(slab);
    expect(start.surfaceMin).toBe(0);
    // α = 0.49/(1050·3500), ℓ = 30 mm
    expect(start.soakMin).toBeCloseTo(0.03 ** 2 / (3 * (0.49 / (1050 * 3500))) / 60, 9);
    expect(start.startMin).toBe(start.soakMin);
    const gentle = crustStart({ ...slab, thicknessMm: 10, coefficientWm2K: 40 });
    expect(gentle.surfaceMin).toBeGreaterThan(0);
    expect(gentle.startMin).toBeCloseTo(gentle.surfaceMin + gentle.soakMin, 12);
  });

  test("with hardly any inner resistance it is lumped: ρℓ/h·∫dh/(Ta − T) until the surface is at 100 °C", () => {
    const slab = { food, thicknessMm: 10, coefficientWm2K: 1e-3, airC: 204 };
    let perDriving = 0;
    for (let at = 0; at < 20_000; at++) {
      const low = -18 + (118 * at) / 20_000;
      const high = low + 118 / 20_000;
      perDriving += (1000 * (enthalpyAt(food, high) - enthalpyAt(food, low))) / (204 - (low + high) / 2);
    }
    const lumpedMin = (1050 * 0.005 * perDriving) / 1e-3 / 60;
    expect(crustStart(slab).surfaceMin / lumpedMin).toBeCloseTo(1, 4);
  });

  test("is flagged just past each end of what it was checked for, and not at the ends", () => {
    const plain = { ...food, thawedConductivityWmK: 0.5 };
    const middle = { food: plain, thicknessMm: 10, coefficientWm2K: 40, airC: 190 };
    const flagged = (change: Partial<CrustStartOptions>): boolean => crustStart({ ...middle, ...change }).extrapolation;
    // Bi = h·5 mm/0.5, exactly 0.15 and 1.1 at the ends
    expect(flagged({})).toBe(false);
    const ends: readonly [Partial<CrustStartOptions>, Partial<CrustStartOptions>][] = [
      [{ airC: 170 }, { airC: 169.9 }],
      [{ airC: 210 }, { airC: 210.1 }],
      [{ coefficientWm2K: 15 }, { coefficientWm2K: 14.9 }],
      [{ coefficientWm2K: 110 }, { coefficientWm2K: 110.1 }],
      [{ startC: -15 }, { startC: -14.9 }],
      [{ evaporationC: 100 }, { evaporationC: 99 }],
    ];
    for (const [inside, past] of ends) {
      expect(flagged(inside), JSON.stringify(inside)).toBe(false);
      expect(flagged(past), JSON.stringify(past)).toBe(true);
    }
  });

  test("refuses a front, a start or a body that cannot be", () => {
    const slab = { food, thicknessMm: 10, coefficientWm2K: 40, airC: 190 };
    expect(() => crustStart({ ...slab, evaporationC: 131 })).toThrow("evaporationC must be between 20 and 130");
    expect(() => crustStart({ ...slab, startC: 101 })).toThrow("startC must be between -40 and 100");
    expect(() => crustStart({ ...slab, airC: 100 })).toThrow("must be above the evaporating front at 100 °C, got 100");
    expect(() => crustStart({ ...slab, coefficientWm2K: 0 })).toThrow("coefficientWm2K must be > 0");
  });

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
