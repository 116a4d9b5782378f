import { describe, expect, it } from "vitest";
import { COMPOSITION_FIELDS } from "../../../../kernel-lib/library/src/food/composition/composition";
import { compositionOf } from "../../../../kernel-lib/library/src/food/composition/composition-of";
import { INGREDIENTS } from "../kitchen-data";

describe("compositionOf", () => {
  it("sums to 1 for every food of the kitchen, with fibre taken out of carbohydrate", () => {
    for (const { name, per100G } of INGREDIENTS) {
      const composition = compositionOf(per100G, name);
      expect(COMPOSITION_FIELDS.reduce((sum, field) => sum + composition[field], 0)).toBeCloseTo(1, 12);
      const sumG = per100G.waterG! + per100G.proteinG! + per100G.fatG! + per100G.carbohydrateG! + per100G.ashG!;
      expect(composition.carbohydrateFraction + composition.fibreFraction).toBeCloseTo(
        per100G.carbohydrateG! / sumG,
        12,
      );
      expect(composition.fibreFraction).toBeCloseTo(Math.min(per100G.fibreG ?? 0, per100G.carbohydrateG!) / sumG, 12);
    }
  });

  it("takes unknown fibre as carbohydrate and unknown ash as what is missing", () => {
    const { per100G } = INGREDIENTS.find((one) => one.id === "lentils-cooked")!;
    const bare = compositionOf({ ...per100G, fibreG: null, ashG: null }, "lentils");
    const full = compositionOf(per100G, "lentils");
    expect(bare.fibreFraction).toBe(0);
    expect(bare.carbohydrateFraction).toBeCloseTo(full.carbohydrateFraction + full.fibreFraction, 3);
    expect(bare.ashFraction).toBeCloseTo(full.ashFraction, 3);
  });

  it("makes baking soda nearly all ash", () => {
    const soda = INGREDIENTS.find((one) => one.id === "baking-soda")!;
    expect(compositionOf(soda.per100G, soda.name).ashFraction).toBeGreaterThan(0.99);
  });

  it("needs water, protein, fat and carbohydrate", () => {
    const { per100G } = INGREDIENTS[0];
    for (const field of ["waterG", "proteinG", "fatG", "carbohydrateG"]) {
      expect(() => compositionOf({ ...per100G, [field]: null }, "x")).toThrow(
        "must state water, protein, fat and carbohydrate",
      );
    }
  });
});
