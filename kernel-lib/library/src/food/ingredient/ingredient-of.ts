import { fail } from "../../check/check";
import type { Ingredient } from "./ingredient";

/**
 * The ingredient with an id. Throws, naming the ids that look alike, when there is none.
 *
 * @param ingredients the kitchen's
 * @param id as formulas write it
 * @param where named in the error; this function unless given
 */
export function ingredientOf(
  ingredients: readonly Ingredient[],
  id: string,
  where: string = "ingredientOf: id",
): Ingredient {
  const found = ingredients.find((ingredient) => ingredient.id === id);
  if (!found) fail(where, `must be one of the kitchen's ingredients (${alike(ingredients, id)})`, id);
  return found;
}

function alike(ingredients: readonly Ingredient[], id: string): string {
  const words = id.split("-");
  const near = ingredients.filter((ingredient) =>
    words.some((word) => word.length > 2 && ingredient.id.includes(word)),
  );
  const shown = (near.length > 0 ? near : ingredients).slice(0, 8).map((ingredient) => ingredient.id);
  return near.length > 0 ? `nearest: ${shown.join(", ")}` : `${ingredients.length} known, such as ${shown.join(", ")}`;
}
