import { describe, expect, test } from "vitest";
import { temperToCut } from "../../../../kernel-lib/library/src/heat/freezing/temper-to-cut";
import { valueAt } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { foods } from "../foods";

const food = foods.reference;

describe("temperToCut", () => {
  test("tempering goes from too hard to too soft", () => {
    const found = temperToCut({ food, thicknessMm: 15 });
    expect(found.from.timeMin).toBeGreaterThan(1);
    expect(found.until.timeMin).toBeGreaterThan(found.from.timeMin);
    expect(valueAt(found.run, "coreC", found.from.timeMin)).toBeCloseTo(-10, 6);
    expect(temperToCut({ food, thicknessMm: 15, startC: -8 }).from.timeMin).toBe(0);
  });

  test("a slab that is soft already, or just so, is refused", () => {
    for (const startC of [-2, -3]) {
      expect(() => temperToCut({ food, thicknessMm: 15, startC })).toThrow("startC must be below softAboveC (-3 °C)");
    }
    expect(temperToCut({ food, thicknessMm: 15, startC: -3.2 }).until.timeMin).toBeGreaterThan(0);
  });
});
