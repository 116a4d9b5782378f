// Source: USDA SR28 (2015); see sr28/reference.json.
import { describe, expect, it } from "vitest";
import { proximateSumG } from "../../kernel-lib/library/src/food/composition/proximate-sum";
import { gramsOf } from "../../kernel-lib/library/src/food/formula/grams-of";
import { ingredientOf } from "../../kernel-lib/library/src/food/ingredient/ingredient-of";
import type { Sr28Food } from "../../kernel-lib/library/src/food/ingredient/parse-sr28";
import { energyOf } from "../../kernel-lib/library/src/macros/energy-of";
import { loadFoods } from "../../kernel-lib/library/src/notebook/load-foods";
import { type YieldBalance, yieldFromComposition } from "../../kernel-lib/library/src/yield/yield-from-composition";
import { INGREDIENTS } from "../library/food/kitchen-data";
import { comparison } from "./comparison";
import reference from "./sr28/reference.json";

const sr28 = (what: string, against: string) =>
  comparison({
    page: "yield-and-macros",
    what,
    against,
    source: "USDA National Nutrient Database for Standard Reference, Release 28 (2015)",
  });
const yields = sr28(
  "cooked on raw mass by non-fat solids and by protein",
  "household weights of the raw and cooked food",
);
const hydration = sr28("cooked on dry mass by total solids", "ratios as kitchens print them");
const practice = sr28("grams of household measures", "common practice, no source");

const byNumber = new Map(loadFoods().map((food) => [food.ndb, food]));
const food = (ndb: string): Sr28Food => byNumber.get(ndb)!;
const ratio = (before: string, after: string, balance: YieldBalance): number =>
  yieldFromComposition({ before: food(before).per100G, after: food(after).per100G, balance }) / 100;

describe("SR28 identities", () => {
  it("sums water, protein, fat, carbohydrate and ash of this kitchen's foods to 100 ± 1.5 g, but for those known", () => {
    const off = INGREDIENTS.filter((one) => Math.abs(proximateSumG(one.per100G)! - 100) > 1.5).map((one) => one.id);
    expect(off.sort()).toEqual(Object.keys(reference.proximateExceptions).sort());
  });

  it("gives back published energy within 1 kcal from each food's own factors, but for rice flour (2 kcal)", () => {
    const withFactors = INGREDIENTS.filter((one) => one.energyFactors !== null);
    expect(withFactors.length).toBeGreaterThanOrEqual(77);
    const gap = (one: (typeof withFactors)[number]): number =>
      Math.abs(
        energyOf({ nutrients: one.per100G, basis: "food factors", energyFactors: one.energyFactors }).kcal -
          one.per100G.energyKcal!,
      );
    expect(withFactors.filter((one) => gap(one) > 1).map((one) => one.id)).toEqual(["rice-flour"]);
    expect(gap(ingredientOf(INGREDIENTS, "rice-flour"))).toBeLessThan(2.1);
  });

  it("gives back published energy within 1 kcal for 96 % of all foods that have three factors", () => {
    const gaps = loadFoods()
      .filter(({ per100G: n, energyFactors }) => energyFactors && n.energyKcal !== null && n.carbohydrateG !== null)
      .map(({ per100G, energyFactors }) =>
        Math.abs(energyOf({ nutrients: per100G, basis: "food factors", energyFactors }).kcal - per100G.energyKcal!),
      );
    expect(gaps.length).toBeGreaterThan(4500);
    expect(gaps.filter((gap) => gap <= 1).length / gaps.length).toBeGreaterThan(0.96);
  });

  it.each([
    "flour-all-purpose",
    "oil-canola",
    "butter",
    "cornstarch",
    "pork-ground",
    "beef-ground-80",
    "crumbs-dry-plain",
  ])("agrees with 4-9-4 within 4 %% where the factors are near 4, 9 and 4: %s", (id) => {
    const { per100G } = ingredientOf(INGREDIENTS, id);
    const general = energyOf({ nutrients: per100G, basis: "general 4-9-4" }).kcal;
    expect(Math.abs(general / per100G.energyKcal! - 1)).toBeLessThan(0.04);
  });

  it.each([
    ["spinach-raw", 0.15, 0.3],
    ["broccoli", 0.15, 0.3],
    ["cauliflower", 0.15, 0.3],
    ["oat-bran", 0.2, 0.66],
    ["wheat-bran", 0.2, 0.66],
    ["oregano", 0.2, 0.6],
    ["coriander-seed", 0.2, 0.6],
  ] as const)("runs high with 4-9-4 on greens, brans and dried spices: %s", (id, low, high) => {
    const { per100G } = ingredientOf(INGREDIENTS, id);
    const over = energyOf({ nutrients: per100G, basis: "general 4-9-4" }).kcal / per100G.energyKcal! - 1;
    expect(over).toBeGreaterThan(low);
    expect(over).toBeLessThan(high);
  });
});

describe("cooking yields from SR28 pairs", () => {
  it.each(reference.meat)("$name", ({ raw, cooked, household, solids, protein }) => {
    const bySolids = ratio(raw, cooked, "non-fat solids");
    const byProtein = ratio(raw, cooked, "protein");
    expect(Math.abs(bySolids - solids)).toBeLessThan(0.0006);
    expect(Math.abs(byProtein - protein)).toBeLessThan(0.0006);
    if (household !== null) {
      yields.absolute(bySolids, household, 0.05, "-");
      yields.absolute(byProtein, household, 0.05, "-");
    }
  });

  it("reads household yields off the table's own measures", () => {
    const grams = (ndb: string, start: string): number =>
      food(ndb).householdWeights.find((weight) => weight.measure.startsWith(start))!.massG;
    expect(grams("23568", "1 patty") / 113.4).toBeCloseTo(reference.meat[0].household!, 3);
    expect(grams("23569", "1 patty") / 113.4).toBeCloseTo(reference.meat[1].household!, 3);
    expect(grams("13495", "1 loaf") / 453.6).toBeCloseTo(reference.meat[2].household!, 3);
    expect(grams("05306", "1 unit") / 453.6).toBeCloseTo(reference.meat[3].household!, 3);
    expect(grams("17225", "1 unit") / 453.6).toBeCloseTo(reference.meat[4].household!, 3);
  });

  it.each(reference.hydration)("hydration of $name by total solids", ({ dry, cooked, ratio: published }) => {
    hydration.absolute(ratio(dry, cooked, "solids"), published, 0.006, "-");
  });

  it.each(reference.reheat)("reheating loss of $name", ({ frozen, heated, solids }) => {
    expect(Math.abs(ratio(frozen, heated, "non-fat solids") - solids)).toBeLessThan(0.0006);
  });
});

describe("household measures", () => {
  it.each(reference.commonPractice)("$amount of $id is about $grams g (common practice, no source)", (one) => {
    const { massG } = gramsOf(ingredientOf(INGREDIENTS, one.id), one.amount);
    practice.relative(massG, one.grams, 0.1);
  });

  it("leaves out the weight that cannot be: mashed sweet potato at 1.39 g/mL", () => {
    expect(food("11510").householdWeights).toEqual([]);
  });
});
