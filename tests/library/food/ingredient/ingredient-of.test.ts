import { describe, expect, it } from "vitest";
import { ingredientOf } from "../../../../kernel-lib/library/src/food/ingredient/ingredient-of";
import { INGREDIENTS } from "../kitchen-data";

describe("ingredientOf", () => {
  it("finds by id", () => {
    expect(ingredientOf(INGREDIENTS, "salt-fine").name).toBe("fine salt");
  });

  it("names those that look alike, or how many there are", () => {
    expect(() => ingredientOf(INGREDIENTS, "lentil-cooked")).toThrow(/nearest: .*lentils-cooked.*got "lentil-cooked"/);
    expect(() => ingredientOf(INGREDIENTS, "xyz")).toThrow(`${INGREDIENTS.length} known`);
  });
});
