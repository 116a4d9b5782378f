import type { CoreLimit } from "../core-limit";
import type { StoredFood } from "./storage-life";

/**
 * What a product counts as in the freezer: raw and par-cooked by what is raw in it, cooked food by what it was; what is not known by
 * the shortest life, and egg and food that is ready to eat by that of cooked poultry.
 *
 * @example
 * storedFoodOf(coreLimit("poultry", "par-cooked")); // → "raw poultry"
 */
export function storedFoodOf({ foodClass, state }: Pick<CoreLimit, "foodClass" | "state">): StoredFood {
  if (foodClass === "poultry") return state === "cooked and cooled" ? "cooked poultry" : "raw poultry";
  if (foodClass === "fish") return "breaded fish";
  if (foodClass === "groundMeat" || foodClass === "wholeMeat") return "ground meat";
  if (foodClass === "plant") return "vegetable";
  return foodClass === null ? "breaded fish" : "cooked poultry";
}
