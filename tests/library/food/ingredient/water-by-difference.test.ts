// The foods of USDA SR28 (2015), as published with their water, are the outside check: each is put on a US label (21 CFR
// 101.9(c)) and its water asked back.
import { describe, expect, it } from "vitest";
import { waterByDifference } from "../../../../kernel-lib/library/src/food/ingredient/water-by-difference";
import { roundLabelUs } from "../../../../kernel-lib/library/src/macros/round-label-us";
import { loadFoods } from "../../../../kernel-lib/library/src/notebook/load-foods";

const printed = (nutrient: "protein" | "fat" | "carbohydrate", amount: number): number => {
  const text = roundLabelUs({ nutrient, amount });
  return text.startsWith("<") ? Number(text.slice(1)) / 2 : Number(text);
};

describe("waterByDifference", () => {
  it("finds the water of published foods from their label, within twice its doubt for 19 in 20", () => {
    let tried = 0;
    let within = 0;
    for (const perG of [30, 85])
      for (const { per100G } of loadFoods().filter((_, at) => at % 4 === 0)) {
        const { waterG, proteinG, fatG, carbohydrateG, sodiumMg } = per100G;
        if (waterG === null || proteinG === null || fatG === null || carbohydrateG === null || sodiumMg === null)
          continue;
        const serving = (nutrient: "protein" | "fat" | "carbohydrate", amount: number): number =>
          (printed(nutrient, (amount * perG) / 100) * 100) / perG;
        const nutrients = {
          proteinG: serving("protein", proteinG),
          fatG: serving("fat", fatG),
          carbohydrateG: serving("carbohydrate", carbohydrateG),
          sodiumMg,
          ashG: null,
        };
        const found = waterByDifference({ nutrients, perG });
        if (found === null || "must" in found) continue;
        tried++;
        if (Math.abs(found.waterG - waterG) <= 2 * found.doubtG) within++;
      }
    expect(tried).toBeGreaterThan(4000);
    expect(within / tried).toBeGreaterThan(0.95);
  });

  it("refuses what the label cannot tell: leavening, salt, and a pinch of spice", () => {
    const nutrients = { proteinG: 0, fatG: 0, carbohydrateG: 24, sodiumMg: 10_600, ashG: null };
    expect(waterByDifference({ nutrients, perG: 100 })).toEqual({
      must: "water_g, as 27 g of 100 g are salt and its ash is not known (0 for a dry salt)",
    });
    expect(waterByDifference({ nutrients: { ...nutrients, sodiumMg: 0 }, perG: 0.5 })).toEqual({
      must: "water_g, as a serving of 0.5 g is too small to tell it (± 150 g in 100 g)",
    });
    expect(waterByDifference({ nutrients: { ...nutrients, ashG: 60 }, perG: 100 })).toMatchObject({ waterG: 16 });
    expect(waterByDifference({ nutrients: { ...nutrients, fatG: null }, perG: 100 })).toBeNull();
  });
});
