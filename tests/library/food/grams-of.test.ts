import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gramsOf, type MeasuredFood } from "../../../kernel-lib/library/src/food/grams-of";

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
    expect(() => gramsOf(carrot, "1 cup")).toThrow("must say which measure is meant: 1 cup, chopped or 1 cup, grated");
    expect(() => gramsOf(egg, "1 each")).toThrow("must say which measure is meant");
    expect(() => gramsOf(carrot, "1 cup melted")).toThrow("one of its known measures");
    expect(() => gramsOf(salt, "-2 g")).toThrow("must be >= 0");
    expect(() => gramsOf(salt, "a pinch")).toThrow("must begin with a number");
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
