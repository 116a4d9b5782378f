// Source: see label-rounding/reference.json (21 CFR 101.9(c); Regulation (EU) 1169/2011 Annex XIV).
import { describe, it } from "vitest";
import { energyOf } from "../../kernel-lib/library/src/macros/energy-of";
import { roundLabelUs, type UsLabelNutrient } from "../../kernel-lib/library/src/macros/round-label-us";
import { comparison } from "./comparison";
import reference from "./label-rounding/reference.json";

const label = (what: string, against: string, source: string) =>
  comparison({ page: "yield-and-macros", what, against, source });
const us = label(
  "amounts as `roundLabelUs` prints them",
  "the rule worked out by hand",
  "21 CFR 101.9(c), as in FDA's Food Labeling Guide, appendix H",
);
const eu = label(
  "energy by `energyOf` with the EU's factors",
  "the factors worked out by hand",
  "Regulation (EU) 1169/2011, Annex XIV",
);

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
    us.equal(roundLabelUs({ nutrient: nutrient as UsLabelNutrient, amount }), printed);
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
    eu.absolute(energy.kJ, kJ, 5e-9, "kJ");
    eu.absolute(energy.kcal, kcal, 5e-9, "kcal");
  });
});
