import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { energyOf } from "../../../kernel-lib/library/src/macros/energy-of";

const nutrients = { energyKcal: 120, proteinG: 10, fatG: 5, carbohydrateG: 8, fibreG: 3 };

describe("energyOf", () => {
  it("counts each basis", () => {
    expect(energyOf({ nutrients, basis: "published" })).toEqual({ kcal: 120, kJ: expect.closeTo(502.08, 9) });
    expect(energyOf({ nutrients, basis: "general 4-9-4" }).kcal).toBe(117);
    expect(energyOf({ nutrients, basis: "EU Annex XIV" })).toEqual({ kcal: 111, kJ: 464 });
    const energyFactors = { proteinKcalG: 3.36, fatKcalG: 8.37, carbohydrateKcalG: 2.9 };
    expect(energyOf({ nutrients, basis: "food factors", energyFactors }).kcal).toBeCloseTo(98.65, 10);
  });

  it("never counts more on the EU basis than on 4-9-4", () => {
    const grams = fc.double({ min: 0, max: 30, noNaN: true });
    fc.assert(
      fc.property(grams, grams, grams, grams, (proteinG, fatG, carbohydrateG, fibreG) => {
        const food = { energyKcal: null, proteinG, fatG, carbohydrateG, fibreG };
        const eu = energyOf({ nutrients: food, basis: "EU Annex XIV" }).kcal;
        expect(eu).toBeLessThanOrEqual(energyOf({ nutrients: food, basis: "general 4-9-4" }).kcal + 1e-9);
      }),
    );
  });

  it("says what it misses", () => {
    const bare = { energyKcal: null, proteinG: null, fatG: 1, carbohydrateG: 1, fibreG: null };
    expect(() => energyOf({ nutrients: bare, basis: "published" })).toThrow("energyKcal");
    expect(() => energyOf({ nutrients: bare, basis: "general 4-9-4" })).toThrow("protein, fat and carbohydrate");
    expect(() => energyOf({ nutrients: { ...nutrients, fibreG: null }, basis: "EU Annex XIV" })).toThrow("fibreG");
    expect(() => energyOf({ nutrients, basis: "food factors", energyFactors: null })).toThrow("energyFactors");
    expect(() => energyOf({ nutrients, basis: "kJ" as "published" })).toThrow("energyOf: basis");
  });
});
