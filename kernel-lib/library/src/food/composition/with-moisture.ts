import { fail, within } from "../../check/check";
import type { FormulaTotals } from "../formula/formula-totals";
import type { Ingredient } from "../ingredient/ingredient";
import { NUTRIENT_NAMES, type NutrientName, type Nutrients } from "../ingredient/nutrients";

/**
 * An ingredient as wet as it is in this kitchen: its water set to a measured value, everything else scaled so that the
 * dry matter keeps its make-up. Drained pulses and cooked vegetables differ most from a table.
 *
 * x' = x · (100 − w') / (100 − w)
 *
 * @param ingredient with its water known
 * @param waterPercent measured water (% of mass)
 * @returns a copy; household weights are kept, its source says what was changed
 * @example
 * withMoisture(ingredientOf(loadKitchen().ingredients, "beets-cooked"), 90).per100G.carbohydrateG; // → 7.697
 */
export function withMoisture(ingredient: Ingredient, waterPercent: number): Ingredient {
  const water = within(waterPercent, 0, 99.9, "withMoisture: waterPercent", "%");
  const table = ingredient.per100G.waterG;
  if (table === null || table >= 100) {
    fail(`withMoisture: ingredient ${ingredient.id}`, "must state its water, below 100 g per 100 g", table);
  }
  const factor = (100 - water) / (100 - table);
  const per100G = {} as Record<NutrientName, number | null>;
  for (const name of NUTRIENT_NAMES) {
    const value = ingredient.per100G[name];
    per100G[name] = value === null ? null : value * factor;
  }
  per100G.waterG = water;
  return Object.freeze({
    ...ingredient,
    per100G: Object.freeze(per100G) as Nutrients,
    source: `${ingredient.source}; water set to ${water} %, table ${table} %`,
  });
}

/** Water to add to a mix, or to take from it. */
export interface WaterToAdd {
  /** water to add (g); negative: to drive off */
  readonly waterG: number;
  /** mass of the mix then (g) */
  readonly mixG: number;
  /** water of the mix before (% of mass) */
  readonly waterBeforePercent: number;
}

/**
 * How much water brings a mix to a wanted moisture: x = M (t − w) / (1 − t).
 *
 * @param totals from `formulaTotals`
 * @param waterPercent wanted water of the mix (% of mass)
 * @example
 * const kitchen = loadKitchen();
 * const totals = formulaTotals(variantOf(kitchen, "beet-lentil").formula, kitchen.ingredients);
 * waterToAdd(totals, 66).waterG; // → 46.5
 */
export function waterToAdd(totals: FormulaTotals, waterPercent: number): WaterToAdd {
  const target = within(waterPercent, 1, 95, "waterToAdd: waterPercent", "%") / 100;
  const { waterFraction } = totals.composition;
  const waterG = (totals.mixG * (target - waterFraction)) / (1 - target);
  return Object.freeze({ waterG, mixG: totals.mixG + waterG, waterBeforePercent: 100 * waterFraction });
}
