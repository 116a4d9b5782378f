import { describe, expect, it } from "vitest";
import { readAllergenMarks, US_ALLERGENS } from "../../../../kernel-lib/library/src/food/ingredient/allergens";
import { euMarksOf, usMarksOf } from "../../../../kernel-lib/library/src/food/ingredient/other-allergens";
import { parseIngredients } from "../../../../kernel-lib/library/src/food/ingredient/parse-ingredients";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";

describe("marks by one law, told by the other", () => {
  it("every one of the US nine has its EU group, with species and certainty", () => {
    const marks = readAllergenMarks("milk; eggs; fish (cod); wheat?; tree nut (almond); soy", US_ALLERGENS).marks;
    expect(euMarksOf(marks).map(({ allergen, species, certainty }) => [allergen, species, certainty])).toEqual([
      ["milk", "", "inherent"],
      ["egg", "", "inherent"],
      ["fish", "cod", "inherent"],
      ["gluten", "wheat", "depends on the maker"],
      ["nut", "almond", "inherent"],
      ["soy", "", "inherent"],
    ]);
    for (const allergen of US_ALLERGENS)
      expect(usMarksOf(euMarksOf([{ allergen, species: "", certainty: "inherent" }]))[0].allergen).toBe(allergen);
  });

  it("gluten is wheat where the cereal is, may be where none is named, and is not where it is barley", () => {
    const gluten = (species: string) => usMarksOf([{ allergen: "gluten", species, certainty: "inherent" }]);
    expect(gluten("wheat")).toEqual([{ allergen: "wheat", species: "wheat", certainty: "inherent" }]);
    expect(gluten("")).toEqual([{ allergen: "wheat", species: "", certainty: "depends on the maker" }]);
    expect(gluten("barley")).toEqual([]);
  });

  it("a row with the US column alone is not silent in the EU's list", () => {
    const csv =
      "id,name,class,water_g,protein_g,fat_g,carbohydrate_g,ash_g,fibre_g,sodium_mg,energy_kcal,allergens_us\npanko,panko,plant,8,12,3,74,3,3,300,370,wheat";
    expect(parseIngredients(csv, "labels.csv")[0].allergensEu).toMatchObject([
      { allergen: "gluten", species: "wheat" },
    ]);
  });

  it("changes nothing of the demo's foods, which state both", () => {
    for (const food of loadKitchen().ingredients)
      if (food.allergensUs.length > 0) expect(food.allergensEu.length, food.id).toBeGreaterThan(0);
  });
});
