import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type CrustOptions,
  crustDepthMm,
  crustMin,
  crustSurfaceC,
} from "../../../../kernel-lib/library/src/heat/formulas/crust-depth";
import { crustStart } from "../../../../kernel-lib/library/src/heat/formulas/crust-start";
import { foods } from "../foods";

const food = foods.reference;

describe("crustDepthMm", () => {
  test("depth and time undo each other", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 60, noNaN: true }),
        fc.double({ min: 5, max: 150, noNaN: true }),
        fc.double({ min: 101, max: 260, noNaN: true }),
        (dryingMin, coefficientWm2K, airC) => {
          const air = { coefficientWm2K, airC, crustWaterKgM3: 700 };
          const crustMm = crustDepthMm({ ...air, dryingMin });
          expect(Math.abs(crustMin({ ...air, crustMm }) / dryingMin - 1)).toBeLessThan(1e-6);
          expect(crustSurfaceC({ ...air, crustMm })).toBeLessThan(airC);
        },
      ),
    );
  });

  test("grows with the time while the air film decides, with its root once the crust does", () => {
    const air = { coefficientWm2K: 40, airC: 204, crustWaterKgM3: 700 };
    // all that comes through the film evaporates water: h·(Ta − Tev)·t/(ρw·Lv)
    const film = (1000 * 40 * 104 * 0.06) / (700 * 2257e3);
    expect(crustDepthMm({ ...air, dryingMin: 0.001 }) / film).toBeCloseTo(1, 3);
    // 2·kc·(Ta − Tev)·t/(ρw·Lv), its root
    const crust = 1000 * Math.sqrt((2 * 0.12 * 104 * 6e6) / (700 * 2257e3));
    expect(crustDepthMm({ ...air, dryingMin: 1e5 }) / crust).toBeCloseTo(1, 1);
    expect(crustDepthMm({ ...air, dryingMin: 0 })).toBe(0);
    expect(crustMin({ ...air, crustMm: 0 })).toBe(0);
  });

  test("the surface is as hot as the front without a crust, and half-way to the air where crust and film resist alike", () => {
    const air = { coefficientWm2K: 40, airC: 200, crustWaterKgM3: 700, evaporationC: 90 };
    expect(crustSurfaceC({ ...air, crustMm: 0 })).toBe(90);
    expect(crustSurfaceC({ ...air, crustMm: 3 })).toBeCloseTo(145, 9);
    expect(crustSurfaceC({ ...air, crustConductivityWmK: 0.06, crustMm: 1.5 })).toBeCloseTo(145, 9);
  });

  test("constants that cannot be are refused", () => {
    const air = { coefficientWm2K: 40, airC: 204, crustWaterKgM3: 700, dryingMin: 5 };
    const refused = (change: Partial<typeof air> & Partial<CrustOptions>) => () => crustDepthMm({ ...air, ...change });
    expect(refused({ crustConductivityWmK: 3 })).toThrow("crustConductivityWmK must be between 0.01 and 2");
    expect(refused({ evaporationC: 140 })).toThrow("evaporationC must be between 20 and 130");
    expect(refused({ airC: 100 })).toThrow("must be above the evaporating front at 100 °C, got 100");
    expect(refused({ dryingMin: -1 })).toThrow("dryingMin must be >= 0 min, got -1");
    expect(refused({ crustWaterKgM3: 0 })).toThrow("crustWaterKgM3 must be > 0");
  });

  test("air below the front is refused", () => {
    const air = { coefficientWm2K: 40, airC: 90, crustWaterKgM3: 700 };
    expect(() => crustDepthMm({ ...air, dryingMin: 5 })).toThrow(
      "must be above the evaporating front at 100 °C, got 90",
    );
    expect(() => crustStart({ food, thicknessMm: 10, coefficientWm2K: 40, airC: 95 })).toThrow(
      "must be above the evaporating front",
    );
  });
});
