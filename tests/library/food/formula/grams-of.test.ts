import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gramsOf, type MeasuredFood } from "../../../../kernel-lib/library/src/food/formula/grams-of";
import { readMeasure } from "../../../../kernel-lib/library/src/food/formula/read-measure";
import { loadFoods } from "../../../../kernel-lib/library/src/notebook/load-foods";

const weights = (...pairs: [string, number][]): MeasuredFood => ({
  name: "test food",
  householdWeights: pairs.map(([measure, massG]) => ({ measure, massG, source: "a scale" })),
});

describe("gramsOf", () => {
  const salt = weights(["1 tsp", 6], ["1 tbsp", 18]);
  const carrot = weights(["1 cup, chopped", 128], ["1 cup, grated", 110]);
  const egg = weights(["1 large", 50], ["1 extra large", 56]);

  it.each([
    [salt, "12.5 g", 12.5, "weighed"],
    [salt, "2 oz", 56.69904625, "weighed"],
    [salt, "1 lb 2 oz", 510.29141625, "weighed"],
    [salt, "1 1/2 tsp", 9, "at 6 g for 1 tsp (a scale)"],
    [salt, "1 cup", 288, "at 18 g for 1 tbsp (a scale)"],
    [salt, "1 tbsp + 1 tsp", 24, "at 18 g for 1 tbsp"],
    [carrot, "1/2 cup grated", 55, "1 cup, grated"],
    [carrot, "2 cups, chopped", 256, "1 cup, chopped"],
    [egg, "2 large", 100, "1 large"],
    [egg, "3 extra large", 168, "1 extra large"],
    [weights(["1 slice", 28]), "3 slices", 84, "1 slice"],
    [weights(["1 slice", 28]), "2 each", 56, "1 slice"],
    [weights([".25 cup", 30]), "1 cup", 120, ".25 cup"],
  ] as const)("%# %s", (food, amount, massG, how) => {
    const mass = gramsOf(food, amount);
    expect(mass.massG).toBeCloseTo(massG, 8);
    expect(mass.how).toContain(how);
  });

  it("refuses what it would have to guess", () => {
    expect(() => gramsOf(weights(), "1 cup")).toThrow(
      "gramsOf: amount of test food must be a mass, as no household weight is known: weigh it, or add a household weight for it (a density is one",
    );
    expect(() => gramsOf(egg, "1 cup")).toThrow(/1 large = 50 g; 1 extra large = 56 g/);
    expect(() => gramsOf(carrot, "1 cup")).toThrow(
      'must say which measure is meant: "1 cup chopped" or "1 cup grated"',
    );
    expect(() => gramsOf(egg, "1 each")).toThrow("must say which measure is meant");
    expect(() => gramsOf(carrot, "1 cup melted")).toThrow("one of its known measures");
    expect(() => gramsOf(salt, "-2 g")).toThrow("must be >= 0");
    expect(() => gramsOf(salt, "a pinch")).toThrow("must begin with a number");
  });

  it("prefers the plain measure, and words said in any order", () => {
    const cream = weights(["1 cup, whipped", 120], ["1 cup, fluid (yields 2 cups whipped)", 239]);
    expect(gramsOf(cream, "1 cup whipped").massG).toBe(120);
    expect(gramsOf(cream, "1/2 cup fluid").massG).toBeCloseTo(119.5, 9);
    expect(gramsOf(weights(["1 cup, diced", 140], ["1 cup", 244]), "1 cup").massG).toBe(244);
  });

  it("never takes an ounce for a piece", () => {
    expect(gramsOf(weights(["4 oz, crumbled", 112], ["1 patty", 85]), "2 each").massG).toBe(170);
    expect(() => gramsOf(weights(["1 oz", 28.35]), "2 each")).toThrow("one of its known measures");
  });

  it("reads every household weight of the food table, each by its own words", () => {
    let read = 0;
    for (const { description, householdWeights } of loadFoods()) {
      for (const { measure, massG } of householdWeights) {
        const one = { name: description, householdWeights: [{ measure, massG, source: "SR28" }] };
        const found = readMeasure(measure, description);
        if (found.kind === "mass") continue;
        expect(gramsOf(one, measure).massG).toBeCloseTo(massG, 8);
        read += 1;
      }
    }
    expect(read).toBeGreaterThan(9000);
  });

  it("takes a density as the weight of a millilitre", () => {
    expect(gramsOf(weights(["1 mL", 1.07]), "1 cup").massG).toBeCloseTo(1.07 * 236.5882365, 9);
  });

  it("grows in proportion to the amount", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), (quarters) => {
        expect(gramsOf(salt, `${quarters / 4} tsp`).massG).toBeCloseTo(1.5 * quarters, 8);
      }),
    );
  });
});
