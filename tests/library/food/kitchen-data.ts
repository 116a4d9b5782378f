import { readFileSync } from "node:fs";
import type { Formula } from "../../../kernel-lib/library/src/food/formula/formula";
import { parseFormula } from "../../../kernel-lib/library/src/food/formula/read/parse-formula";
import type { Ingredient } from "../../../kernel-lib/library/src/food/ingredient/ingredient";
import { parseIngredients } from "../../../kernel-lib/library/src/food/ingredient/parse-ingredients";

const text = (path: string): string => readFileSync(new URL(`../../../data/${path}`, import.meta.url), "utf8");

/** The demo kitchen's ingredients. */
export const INGREDIENTS: readonly Ingredient[] = parseIngredients(text("ingredients.csv"), "ingredients.csv");

/** A formula of the demo kitchen. */
export function demoFormula(id: string): Formula {
  return parseFormula(text(`formulas/${id}.json`), `${id}.json`);
}

export const DEMO_FORMULAS: readonly string[] = [
  "beet-lentil",
  "turkey-sage",
  "pollock-dill",
  "chickpea-carrot",
  "corn-puff",
];
