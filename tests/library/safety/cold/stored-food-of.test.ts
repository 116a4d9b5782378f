import { expect, test } from "vitest";
import { packLabel } from "../../../../kernel-lib/library/src/advice/card/pack-label";
import { packStock } from "../../../../kernel-lib/library/src/advice/stock/pack-stock";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { STORAGE_LIVES } from "../../../../kernel-lib/library/src/safety/cold/storage-life";
import { storedFoodOf } from "../../../../kernel-lib/library/src/safety/cold/stored-food-of";
import { coreLimit } from "../../../../kernel-lib/library/src/safety/core-limit";

test("every class and state has a food, what is not stated the shortest life", () => {
  const shortest = Math.min(...Object.values(STORAGE_LIVES).map(({ days }) => days));
  expect(STORAGE_LIVES[storedFoodOf(coreLimit())].days).toBe(shortest);
  expect(storedFoodOf(coreLimit("poultry", "par-cooked"))).toBe("raw poultry");
  expect(storedFoodOf(coreLimit("poultry", "cooked and cooled"))).toBe("cooked poultry");
  expect(storedFoodOf(coreLimit("wholeMeat"))).toBe("ground meat");
  expect(storedFoodOf(coreLimit("plant"))).toBe("vegetable");
  for (const animal of ["egg", "readyToEat"] as const)
    expect(STORAGE_LIVES[storedFoodOf(coreLimit(animal))].days).toBeLessThan(STORAGE_LIVES.vegetable.days);
});

test("a product's label and its packs in the freezer rest on one life, whatever its class", () => {
  const kitchen = loadKitchen();
  for (const foodClass of [
    "poultry",
    "groundMeat",
    "wholeMeat",
    "fish",
    "egg",
    "plant",
    "readyToEat",
    undefined,
  ] as const)
    for (const state of ["raw", "cooked and cooled", undefined] as const) {
      const variants = kitchen.variants.map((variant) => ({ ...variant, limit: coreLimit(foodClass, state) }));
      const { products } = packStock({ kitchen: { ...kitchen, variants } });
      for (const { variantId, food } of products)
        expect(packLabel({ kitchen: { ...kitchen, variants }, variantId }).lifeDays).toBe(STORAGE_LIVES[food].days);
    }
});
