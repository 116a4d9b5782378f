import { clipped } from "../../check/check";
import { nearestName } from "../../check/nearest-name";
import type { Notice } from "../../check/notice";
import type { Slip } from "../../check/slip";
import { headingUnit } from "../../units/columns/heading-unit";
import { wordsOf } from "../../units/columns/words-of";
import { findUnit, isUnit } from "../../units/find-unit";
import type { NutrientName } from "./nutrients";

/** The columns of the table that the demo's `make` writes, all that an ingredient can have but its class and its serving. */
export const INGREDIENT_COLUMNS: readonly string[] = Object.freeze([
  "id",
  "name",
  "ndb",
  "water_g",
  "energy_kcal",
  "protein_g",
  "fat_g",
  "saturated_fat_g",
  "carbohydrate_g",
  "fibre_g",
  "sugars_g",
  "sodium_mg",
  "cholesterol_mg",
  "ash_g",
  "household_1",
  "household_1_g",
  "household_2",
  "household_2_g",
  "household_source",
  "protein_kcal_per_g",
  "fat_kcal_per_g",
  "carbohydrate_kcal_per_g",
  "allergens_us",
  "allergens_eu",
  "cost_per_kg",
  "source",
]);

/** A column that it may have: what each ingredient is, for the core limit. */
export const CLASS_COLUMN: string = "class";

/** The column of each nutrient. */
export const NUTRIENT_COLUMN: Readonly<Record<NutrientName, string>> = {
  waterG: "water_g",
  energyKcal: "energy_kcal",
  proteinG: "protein_g",
  fatG: "fat_g",
  saturatedFatG: "saturated_fat_g",
  carbohydrateG: "carbohydrate_g",
  fibreG: "fibre_g",
  sugarsG: "sugars_g",
  sodiumMg: "sodium_mg",
  cholesterolMg: "cholesterol_mg",
  ashG: "ash_g",
};

/** What packs print otherwise than by nutrient: the serving, carbohydrate without its fibre and salt as in the EU. */
const OF_LABELS = ["serving", "carbohydrate_without_fibre_g", "salt_g"] as const;

/** Other words for the columns, without a unit. */
const ALSO: Readonly<Record<string, string>> = {
  ingredient: "id",
  calories: "energy",
  kcal: "energy",
  total_fat: "fat",
  sat_fat: "saturated_fat",
  saturated: "saturated_fat",
  saturates: "saturated_fat",
  total_carbohydrate: "carbohydrate",
  carbohydrates: "carbohydrate",
  carbs: "carbohydrate",
  carb: "carbohydrate",
  fiber: "fibre",
  dietary_fiber: "fibre",
  dietary_fibre: "fibre",
  sugar: "sugars",
  total_sugars: "sugars",
  moisture: "water",
  serving_size: "serving",
  per: "serving",
  allergens: "allergens_us",
  contains: "allergens_us",
  cost: "cost_per_kg",
};

const ALL: readonly string[] = [...INGREDIENT_COLUMNS, CLASS_COLUMN, ...OF_LABELS];
/** Each column that holds a quantity, by its name without the unit. */
const QUANTITIES: ReadonlyMap<string, string> = new Map(
  [...Object.values(NUTRIENT_COLUMN), ...OF_LABELS, "household_1_g", "household_2_g"].map((column) => [
    column === "serving" ? column : column.replace(/_[a-z]+$/, ""),
    column,
  ]),
);

/** What packs print and nothing here is made of. */
const UNUSED = /^(?:trans|poly|mono|added|includes|vitamin|calcium|iron|potassium|servings|ingredients|brand|note)/;

/** A column of a table of ingredients, understood. */
export interface IngredientColumn {
  readonly heading: string;
  /** unit of its numbers; `null` for a text and for a bare number */
  readonly unit: string | null;
}

/** The columns of a table of ingredients, and what is to be said of its headings. */
export interface IngredientColumns {
  /** by the name of the column as `data/README.md` has it: `"fat_g"` */
  readonly columnOf: ReadonlyMap<string, IngredientColumn>;
  readonly slips: readonly Slip[];
  readonly notices: readonly Notice[];
}

/** What `ingredientColumns` works from. */
export interface IngredientColumnsOptions {
  readonly headings: readonly string[];
  readonly headingRow: number;
  readonly file: string;
}

/**
 * Finds the columns of a table of ingredients: `fat_g`, `Total Fat (g)` and `fat` are one, and numbers without a unit are in
 * the one that packs print, mg for sodium and cholesterol. Only `id` must be there. A heading that is near to a column that
 * is missing is a slip; others are named in a notice.
 */
export function ingredientColumns({ headings, headingRow, file }: IngredientColumnsOptions): IngredientColumns {
  const columnOf = new Map<string, IngredientColumn>();
  const slips: Slip[] = [];
  const notices: Notice[] = [];
  const strange: string[] = [];
  const slip = (at: string | null, expected: string, got: string | null, nearest: string | null): void => {
    slips.push({ file, row: headingRow, at, expected, got, nearest });
  };
  for (const heading of headings) {
    if (heading === "") continue;
    const found = columnNamed(heading);
    if (found === null) strange.push(heading);
    else if (!columnOf.has(found.column)) columnOf.set(found.column, { heading, unit: found.unit });
    else if (columnOf.get(found.column)?.heading !== heading)
      slip(
        `column ${clipped(heading)}`,
        `one column for ${found.column}, got also ${columnOf.get(found.column)?.heading}`,
        null,
        null,
      );
  }
  const missing = ALL.filter((column) => !columnOf.has(column));
  for (const heading of strange) {
    const isUnused = UNUSED.test(wordsOf(heading));
    const nearest = isUnused ? null : nearestName(heading, missing);
    if (nearest !== null && nearest !== "id")
      slip(`column ${clipped(heading)}`, "a column of ingredients", null, nearest);
    else if (nearest === null && !isUnused)
      notices.push({
        file,
        row: headingRow,
        at: `column ${clipped(heading)}`,
        kind: "read",
        given: null,
        taken: null,
        says: "is no column of ingredients, and is not read",
      });
  }
  if (!columnOf.has("id")) slip(null, "a column id, the name that formulas use", "none", nearestName("id", strange));
  return { columnOf, slips, notices };
}

/** The column that a heading names, and the unit of its numbers; `null` for a stranger. */
function columnNamed(heading: string): { readonly column: string; readonly unit: string | null } | null {
  if (heading.length > 100) return null;
  const words = wordsOf(heading);
  const known = (name: string): string => (Object.hasOwn(ALSO, name) ? ALSO[name] : name);
  const whole = known(words);
  if (ALL.includes(whole) && unitOf(whole) === null) return { column: whole, unit: null };
  const bare = QUANTITIES.get(whole);
  if (bare !== undefined) return { column: bare, unit: unitOf(bare) };
  const at = words.lastIndexOf("_");
  const column = QUANTITIES.get(known(words.slice(0, Math.max(0, at))));
  const unit = headingUnit(words.slice(at + 1));
  if (column === undefined || unit === null || !isUnit(unit)) return null;
  const wanted = column === "serving" ? "mass" : findUnit(unitOf(column) as string, "columnNamed").kind;
  return findUnit(unit, "columnNamed").kind === wanted ? { column, unit } : null;
}

/** The unit that a column's name ends in. */
export function unitOf(column: string): string | null {
  if (![...QUANTITIES.values()].includes(column)) return null;
  return headingUnit(column.slice(column.lastIndexOf("_") + 1));
}
