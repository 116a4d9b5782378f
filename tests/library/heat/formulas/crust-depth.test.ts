import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { crustDepthMm, crustMin, crustSurfaceC } from "../../../../kernel-lib/library/src/heat/formulas/crust-depth";
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
