import type { AllergenMark, EuAllergen, UsAllergen } from "./allergens";
import type { Ingredient, IngredientClass } from "./ingredient";
import type { Sr28Food } from "./parse-sr28";

/** What `ingredientFromFood` works from. */
export interface IngredientFromFoodOptions {
  /** from `loadFoods` or `searchFoods` */
  readonly food: Sr28Food;
  /** the name that formulas will use: lower case, words joined by hyphens */
  readonly id: string;
  /** the database's description unless given */
  readonly name?: string;
  /** what it is for the core limit; not stated unless given */
  readonly foodClass?: IngredientClass;
  /** none unless given: check the label */
  readonly allergensUs?: readonly AllergenMark<UsAllergen>[];
  /** none unless given: check the label */
  readonly allergensEu?: readonly AllergenMark<EuAllergen>[];
  /** price of 1 kg in the kitchen's own currency */
  readonly costPerKg?: number;
}

/**
 * Any of the 8,789 foods of SR28 as an ingredient that a formula can use.
 *
 * @param options the food, the id that formulas will use, allergens to check
 * @example
 * const [found] = searchFoods(loadFoods(), "parsnips raw");
 * ingredientFromFood({ food: found.food, id: "parsnip" }).per100G.fibreG; // → 4.9
 */
export function ingredientFromFood(options: IngredientFromFoodOptions): Ingredient {
  const { food } = options;
  return Object.freeze({
    id: options.id,
    name: options.name ?? food.description,
    ndb: food.ndb,
    foodClass: options.foodClass ?? null,
    per100G: food.per100G,
    householdWeights: food.householdWeights,
    energyFactors: food.energyFactors,
    allergensUs: options.allergensUs ?? [],
    allergensEu: options.allergensEu ?? [],
    source: `USDA SR28 (2015), food ${food.ndb}: ${food.description}`,
    costPerKg: options.costPerKg ?? null,
  });
}
