// Source: USDA SR28 (2015); see hydration/reference.json. A pot of the dry food with much water, boiled down to the mass that the
// published ratio says, must hold what the table says of the boiled food. Water follows from the same balance; energy, protein,
// fat and carbohydrate are separate analyses of separate samples, and what goes into a poured-off broth is theirs alone.
import { describe, expect, it } from "vitest";
import { COMPOSITION_FIELDS, type Composition } from "../../kernel-lib/library/src/food/composition/composition";
import { compositionOf } from "../../kernel-lib/library/src/food/composition/composition-of";
import { type FormulaTotals, formulaTotals } from "../../kernel-lib/library/src/food/formula/formula-totals";
import { ingredientOf } from "../../kernel-lib/library/src/food/ingredient/ingredient-of";
import { mixDensity } from "../../kernel-lib/library/src/food/thermal/mix-density";
import { thermalProperties } from "../../kernel-lib/library/src/food/thermal/thermal-properties";
import { demoFormula, INGREDIENTS } from "../library/food/kitchen-data";
import { comparison } from "./comparison";
import reference from "./hydration/reference.json";

const table = (what: string) =>
  comparison({
    page: "yield-and-macros",
    what,
    against: "the table's boiled food",
    source: "USDA National Nutrient Database for Standard Reference, Release 28 (2015)",
  });
const water = table("water of dry food cooked down to the printed ratio");
const others = table("protein and carbohydrate of the same");

const tap = ingredientOf(INGREDIENTS, "water");
/** Tap water's tenth of a per cent of minerals stays in the pot, and would be a third of one in nine times as much water. */
const FOODS = [...INGREDIENTS, { ...tap, id: "pure-water", per100G: { ...tap.per100G, waterG: 100, ashG: 0 } }];

function pot(dry: string, ratio: number): FormulaTotals {
  const formula = {
    ...demoFormula("beet-lentil"),
    mix: [
      { ingredient: dry, amount: "100 g" },
      { ingredient: "pure-water", amount: "900 g" },
    ],
    cookedG: 100 * ratio,
  };
  return formulaTotals(formula, FOODS);
}

describe("a pot cooked down to the published ratio", () => {
  it.each(reference.cookedOnDry)("makes $boiled of $dry and water", ({ dry, boiled, ratio }) => {
    const { mix, mixG, composition } = pot(dry, ratio);
    const published = ingredientOf(INGREDIENTS, boiled).per100G;
    expect(mixG).toBeCloseTo(100 * ratio, 9);
    // the ratio has three digits: a fifth of a per cent of the solids
    water.absolute(mix.per100G.waterG as number, published.waterG as number, 0.15, "g in 100 g");
    expect(Math.abs((mix.per100G.energyKcal as number) - (published.energyKcal as number))).toBeLessThan(1.5);
    others.absolute(mix.per100G.carbohydrateG as number, published.carbohydrateG as number, 1.1, "g in 100 g");
    others.absolute(mix.per100G.proteinG as number, published.proteinG as number, 0.9, "g in 100 g");

    // water alone has left: boiled food in much water, boiled down again, is what it was
    const again = pot(boiled, 1).composition;
    const boiledFood = compositionOf(published, boiled);
    for (const field of COMPOSITION_FIELDS) expect(again[field]).toBeCloseTo(boiledFood[field], 12);
    // a gram of solids in 100 g that is protein instead of starch moves either by less than 1 %
    const conductivity = (of: Composition): number => thermalProperties(of).thawedConductivityWmK;
    expect(Math.abs(mixDensity(composition) / mixDensity(boiledFood) - 1)).toBeLessThan(0.01);
    expect(Math.abs(conductivity(composition) / conductivity(boiledFood) - 1)).toBeLessThan(0.01);
  });
});
