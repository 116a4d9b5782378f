import { fail } from "../check/check";
import type { FoodClass, Formula } from "../food/formula/formula";
import { type Ingredient, RAW_CLASSES, type RawClass } from "../food/ingredient/ingredient";
import { ingredientOf } from "../food/ingredient/ingredient-of";
import { type CoreLimit, coreLimit } from "./core-limit";

/**
 * The core limit of a formula: the strictest raw class of its mix and its coating decides (an egg wash counts), unless
 * its state is `cooked and cooled`, which always has 74 °C / 165 °F. Par-cooked stays raw.
 *
 * A declared class that is stricter stands; one that is milder, or says that nothing raw is in it when something is, is
 * refused, unless it is in there too, as fish bound with egg. Egg in a mix declared `plant` is no contradiction: the 74 °C of `plant` stands, with the caution of raw food. Where an ingredient states no class, the declared class is taken at its word and the caution says so; without
 * a declared class the strictest limit stands, as for raw food.
 *
 * @param formula from `parseFormula`
 * @param ingredients from `parseIngredients`
 * @param where named in errors: the formula's file
 * @returns limit, class, state, and the ingredients that ask for it
 *
 * @example
 * const kitchen = loadKitchen();
 * const { formula } = variantOf(kitchen, "turkey-sage");
 * formulaLimit(formula, kitchen.ingredients).limitF; // → 165
 * formulaLimit({ ...formula, foodClass: "fish" }, kitchen.ingredients); // throws "foodClass must be poultry"
 */
export function formulaLimit(
  formula: Formula,
  ingredients: readonly Ingredient[],
  where: string = `formulaLimit: ${formula.id}`,
): CoreLimit {
  const { foodClass: declared, state } = formula;
  const lines = [...formula.mix, ...formula.coating.flatMap((layer) => layer.lines)];
  const used = [...new Set(lines.map((line) => ingredientOf(ingredients, line.ingredient, `${where}: ingredient`)))];
  const unstated = used.filter((one) => one.foodClass === null);
  const asked = strictest(used.flatMap((one) => RAW_CLASSES.find((raw) => raw === one.foodClass) ?? []));
  const cooled = state === "cooked and cooled";

  // an egg binder in a plant mix keeps the mix's 74 °C, which is more than egg asks for, and is raw all the same
  const boundWithEgg = declared === "plant" && asked === "egg";
  // a class that is in it is no contradiction beside a stricter one, as fish bound with egg: the stricter decides
  const present = RAW_CLASSES.some((raw) => raw === declared) && used.some((one) => one.foodClass === declared);
  const excused = boundWithEgg || present || (cooled && declared === "readyToEat");
  if (asked !== null && declared !== undefined && milder(declared, asked) && !excused) {
    const { id } = used.find((one) => one.foodClass === asked) as Ingredient;
    const way = declared === "readyToEat" ? ', unless state is "cooked and cooled",' : "";
    fail(`${where}: foodClass`, `must be ${asked} or as strict${way} since ${id} is raw ${asked}`, declared);
  }

  const nothingRaw = used.every((one) => one.foodClass === "plant") ? "plant" : "readyToEat";
  const stricterIn = asked !== null && declared !== undefined && present && milder(declared, asked);
  const foodClass = stricterIn ? asked : (declared ?? (unstated.length > 0 ? undefined : (asked ?? nothingRaw)));
  const limit = boundWithEgg ? { ...coreLimit(undefined, state), foodClass: declared } : coreLimit(foodClass, state);
  const asking = boundWithEgg ? asked : foodClass;
  const from = used.filter((one) => one.foodClass === asking && asked !== null).map((one) => one.name);
  const doubt = cooled || foodClass === "poultry" ? "" : unstatedText(unstated, declared);
  return Object.freeze({ ...limit, from: Object.freeze(from), caution: doubt + limit.caution });
}

/** The raw class with the highest limit, and of equal ones the first of `RAW_CLASSES`; `null` without any. */
function strictest(classes: readonly RawClass[]): RawClass | null {
  return RAW_CLASSES.filter((raw) => classes.includes(raw)).reduce<RawClass | null>(
    (most, raw) => (most === null || milder(most, raw) ? raw : most),
    null,
  );
}

/** Whether a class asks for less than a raw class does; one without anything raw does, as its food is not labelled raw. */
function milder(one: FoodClass, than: RawClass): boolean {
  const [a, b] = [coreLimit(one), coreLimit(than)];
  return !a.raw || a.limitC < b.limitC || (a.limitC === b.limitC && a.holdS < b.holdS);
}

function unstatedText(unstated: readonly Ingredient[], declared: FoodClass | undefined): string {
  if (unstated.length === 0) return "";
  const named = unstated.slice(0, 3).map((one) => one.name);
  const names = [...named, ...(unstated.length > 3 ? [`${unstated.length - 3} more`] : [])].join(", ");
  const taken = declared === undefined ? "the strictest limit stands" : `the formula's word, ${declared}, is taken`;
  return `No class is stated for ${names}: ${taken}. `;
}
