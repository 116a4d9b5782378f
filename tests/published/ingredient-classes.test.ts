import { describe, expect, it } from "vitest";
import { RAW_CLASSES, type RawClass } from "../../kernel-lib/library/src/food/ingredient/ingredient";
import { INGREDIENTS } from "../library/food/kitchen-data";

/**
 * Our classes against what USDA SR28 (2015) prints of each food: its description, and its food group, which is the first
 * two digits of its number (01 dairy and egg, 05 poultry, 10 pork, 13 and 23 beef, 15 fish and shellfish, 17 lamb and
 * game). Cholesterol is found in food of animals alone: SR28 has 0 mg for every plant.
 */
const groupOf = (ndb: string | null): string => (ndb ?? "").slice(0, 2);
const published = (source: string): string => source.split(": ")[1];
const RAW_BY_GROUP: Readonly<Record<string, readonly RawClass[]>> = {
  "05": ["poultry"],
  10: ["groundMeat", "wholeMeat"],
  13: ["groundMeat", "wholeMeat"],
  15: ["fish"],
  17: ["groundMeat", "wholeMeat"],
  23: ["groundMeat", "wholeMeat"],
};
const COOKED = /cooked|canned|packaged|dried/;

describe("classes of the ingredients against SR28", () => {
  const meats = INGREDIENTS.filter((one) => groupOf(one.ndb) in RAW_BY_GROUP);

  it("calls meat, poultry and fish raw, by its group, unless SR28 says what was done to it", () => {
    expect(meats.length).toBeGreaterThan(15);
    const strange = meats.filter(({ ndb, foodClass, source }) =>
      COOKED.test(published(source))
        ? foodClass !== "cooked"
        : !RAW_BY_GROUP[groupOf(ndb)].includes(foodClass as RawClass),
    );
    expect(strange.map((one) => one.id)).toEqual([]);
  });

  it("calls ground meat what SR28 calls ground, and eggs raw that it calls raw", () => {
    const ground = meats.filter(
      ({ ndb, source }) => !["05", "15"].includes(groupOf(ndb)) && /ground/.test(published(source)),
    );
    expect(ground.length).toBeGreaterThan(3);
    expect(new Set(ground.map((one) => one.foodClass))).toEqual(new Set(["groundMeat"]));
    const eggs = INGREDIENTS.filter((one) => /^Egg, .*raw/.test(published(one.source)));
    expect(eggs.map((one) => one.foodClass)).toEqual(["egg", "egg", "egg"]);
  });

  it("calls nothing plant that has cholesterol or is milk, egg, fish or shellfish for certain", () => {
    const plants = INGREDIENTS.filter((one) => one.foodClass === "plant");
    expect(plants.length).toBeGreaterThan(100);
    const animal = ["milk", "egg", "fish", "crustacean", "mollusc"];
    const strange = plants.filter(
      (one) =>
        (one.per100G.cholesterolMg ?? 0) > 0 ||
        [...one.allergensUs, ...one.allergensEu].some(
          (mark) => mark.certainty === "inherent" && animal.includes(mark.allergen),
        ),
    );
    expect(strange.map((one) => one.id)).toEqual([]);
  });

  it("calls nothing raw outside the groups of animals", () => {
    const raw = INGREDIENTS.filter((one) => RAW_CLASSES.some((known) => known === one.foodClass));
    expect(raw.filter((one) => ![...Object.keys(RAW_BY_GROUP), "01"].includes(groupOf(one.ndb)))).toEqual([]);
  });
});
