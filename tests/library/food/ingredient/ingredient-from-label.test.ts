import { describe, expect, it } from "vitest";
import { compositionOf } from "../../../../kernel-lib/library/src/food/composition/composition-of";
import {
  type IngredientFromLabelOptions,
  ingredientFromLabel,
} from "../../../../kernel-lib/library/src/food/ingredient/ingredient-from-label";

const base: IngredientFromLabelOptions = {
  id: "pack-crumbs",
  name: "crumbs from a pack",
  style: "US",
  perG: 30,
  printed: { energyKcal: 110, proteinG: 3, fatG: 1.5, carbohydrateG: 21, fibreG: 1.5, sodiumMg: 90 },
};

describe("ingredientFromLabel", () => {
  it("turns a serving into 100 g and keeps what is not printed unknown", () => {
    const { per100G } = ingredientFromLabel(base);
    expect(per100G.energyKcal).toBeCloseTo(366.667, 3);
    expect(per100G.carbohydrateG).toBeCloseTo(70, 10);
    expect(per100G.sodiumMg).toBeCloseTo(300, 10);
    expect(per100G.sugarsG).toBeNull();
    expect(per100G.waterG).toBeNull();
    expect(() => compositionOf(per100G, "pack-crumbs")).toThrow("must state water");
  });

  it("adds fibre to an EU carbohydrate, and reads salt as sodium × 2.5", () => {
    const { per100G } = ingredientFromLabel({
      ...base,
      style: "EU",
      perG: 100,
      printed: { energyKcal: 360, proteinG: 11, fatG: 4, carbohydrateG: 68, fibreG: 4, saltG: 1.25 },
    });
    expect(per100G.carbohydrateG).toBe(72);
    expect(per100G.sodiumMg).toBeCloseTo(500, 10);
  });

  it("gives water by difference only when asked", () => {
    const { per100G } = ingredientFromLabel({ ...base, waterByDifference: true });
    expect(per100G.waterG).toBeCloseTo(100 - 10 - 5 - 70 - 0.75, 9);
  });

  it.each([
    [{ perG: 15 }, "must hold at most 100 g of protein, fat and carbohydrate in 100 g (is perG 15 g right?)"],
    [{ printed: { ...base.printed, energyKcal: 460 } }, "is it kJ?"],
    [{ printed: { ...base.printed, saltG: 1 } }, "sodiumMg or saltG, not both"],
    [{ id: "Pack Crumbs" }, "lower-case words joined by hyphens"],
    [{ style: "UK" as "EU" }, '"US" or "EU"'],
  ])("refuses %j", (change, message) => {
    expect(() => ingredientFromLabel({ ...base, ...change })).toThrow(message);
  });
});
