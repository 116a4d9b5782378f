// Source: see label-rounding/reference.json (21 CFR 101.9(c); Regulation (EU) 1169/2011 Annex XIV).
import { describe, expect, it } from "vitest";
import { energyOf } from "../../kernel-lib/library/src/macros/energy-of";
import { roundLabelUs, type UsLabelNutrient } from "../../kernel-lib/library/src/macros/round-label-us";
import reference from "./label-rounding/reference.json";

const cases = Object.entries(reference.us).flatMap(([nutrient, pairs]) =>
  Object.entries(pairs).map(([amount, printed]) => ({ nutrient, amount: Number(amount), printed: String(printed) })),
);
const gramRule = cases.filter((one) => one.nutrient === "carbohydrate");
const sameRule = (nutrient: string): typeof cases => gramRule.map((one) => ({ ...one, nutrient }));

describe("US label rounding", () => {
  it.each([
    ...cases,
    ...sameRule("protein"),
    ...sameRule("fibre"),
    ...sameRule("sugars"),
    ...cases.filter((one) => one.nutrient === "fat").map((one) => ({ ...one, nutrient: "saturated fat" })),
  ])("$nutrient $amount prints $printed", ({ nutrient, amount, printed }) => {
    expect(roundLabelUs({ nutrient: nutrient as UsLabelNutrient, amount })).toBe(printed);
  });
});

describe("EU energy", () => {
  it("counts kJ and kcal each from its own factors", () => {
    const { per100g, kJ, kcal } = reference.eu;
    const energy = energyOf({
      nutrients: {
        energyKcal: null,
        proteinG: per100g.protein,
        fatG: per100g.fat,
        carbohydrateG: per100g.carb + per100g.fibre,
        fibreG: per100g.fibre,
      },
      basis: "EU Annex XIV",
    });
    expect(energy.kJ).toBeCloseTo(kJ, 8);
    expect(energy.kcal).toBeCloseTo(kcal, 8);
  });
});
