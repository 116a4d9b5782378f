import { clipped } from "../../check/check";
import { type CsvRow, type CsvText, failAll, numberOf, readCsv } from "../../check/csv";
import { expectedOf } from "../../check/expected-of";
import { nearestName } from "../../check/nearest-name";
import { type Slip, slipLines } from "../../check/slip";
import { proximateSumG } from "../composition/proximate-sum";
import { readMeasure } from "../formula/read-measure";
import { EU_ALLERGENS, readAllergenMarks, US_ALLERGENS } from "./allergens";
import {
  type EnergyFactors,
  type HouseholdWeight,
  INGREDIENT_CLASSES,
  type Ingredient,
  type IngredientClass,
  ingredientSchema,
} from "./ingredient";
import type { NutrientName, Nutrients } from "./nutrients";

/** The columns that `ingredients.csv` must have; `data/README.md` says what each holds. */
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

const COLUMN_OF: Readonly<Record<NutrientName, string>> = {
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

/** The ingredients of a file, with every slip in it. */
export interface ReadIngredients {
  /** those without a slip, in file order */
  readonly ingredients: readonly Ingredient[];
  /** the ids of all rows, with those that have a slip */
  readonly ids: readonly string[];
  readonly slips: readonly Slip[];
  /** whether the ids of all rows are known */
  readonly whole: boolean;
}

/**
 * Reads the ingredients of a kitchen from CSV text. A blank value is "not known". Every problem of the file is named in
 * one error: file, row, column, what was expected, what was found.
 *
 * @param csvText the file's text
 * @param fileName named in errors
 * @returns the ingredients, in file order
 */
export function parseIngredients(csvText: string, fileName: string): Ingredient[] {
  const { ingredients, slips } = readIngredients(csvText, fileName);
  failAll(slipLines(slips));
  return [...ingredients];
}

/** Reads the ingredients of a kitchen from CSV text, and lists every slip beside those that are sound. */
export function readIngredients(csvText: string, fileName: string): ReadIngredients {
  const csv = readCsv(csvText, fileName);
  const columns = csv.headings.length > 0 ? missingColumns(csv, fileName) : [];
  if (columns.length > 0 || csv.headings.length === 0)
    return { ingredients: [], ids: [], slips: csv.slips.concat(columns), whole: false };
  const slips = [...csv.slips];
  const firstRow = new Map<string, number>();
  const ingredients: Ingredient[] = [];
  for (const row of csv.rows) {
    const { id } = row.cells;
    const seen = firstRow.get(id);
    if (seen !== undefined) slips.push(slipIn(fileName, row, "id", `each id once, and row ${seen} has this one`));
    else firstRow.set(id, row.row);
    const ingredient = readRow(row, fileName, slips);
    if (ingredient !== null && seen === undefined) ingredients.push(ingredient);
  }
  return { ingredients, ids: [...firstRow.keys()], slips, whole: csv.whole };
}

/** The columns that a file lacks, each once, with the heading that most likely stands for it. */
function missingColumns({ headings, headingRow }: CsvText, file: string): Slip[] {
  const strange = headings.filter((heading) => !INGREDIENT_COLUMNS.includes(heading) && heading !== CLASS_COLUMN);
  const slip = (at: string | null, expected: string, got: string | null, nearest: string | null): Slip => ({
    file,
    row: headingRow,
    at,
    expected,
    got,
    nearest,
  });
  const missing = INGREDIENT_COLUMNS.filter((column) => !headings.includes(column)).map((column) =>
    slip(null, `a column ${column}`, "none", nearestName(column, strange)),
  );
  // the one that may be missing would go unread without a word, and with it what is raw
  const isClass = (heading: string): boolean => nearestName(heading, [CLASS_COLUMN]) !== null;
  const misspelt = headings.includes(CLASS_COLUMN) ? undefined : strange.find(isClass);
  if (misspelt === undefined || missing.some(({ nearest }) => nearest === misspelt)) return missing;
  return missing.concat(slip(`column ${clipped(misspelt)}`, "a column of ingredients", null, CLASS_COLUMN));
}

function slipIn(file: string, { row, cells }: CsvRow, column: string, expected: string, got?: string): Slip {
  const cell = clipped(JSON.stringify(cells[column] ?? ""));
  return { file, row, at: `column ${column}`, expected, got: got ?? cell, nearest: null };
}

function readRow(csvRow: CsvRow, fileName: string, slips: Slip[]): Ingredient | null {
  const { row, cells } = csvRow;
  const before = slips.length;
  const slip = (column: string, expected: string, got?: string): void => {
    slips.push(slipIn(fileName, csvRow, column, expected, got));
  };
  const number = (column: string): number | null => {
    if (cells[column] === "") return null;
    const value = numberOf(cells[column]);
    if (value === null) slip(column, "a number or blank");
    return value;
  };
  const per100G = Object.fromEntries(
    Object.entries(COLUMN_OF).map(([name, column]) => [name, number(column)]),
  ) as unknown as Nutrients;
  const householdWeights: HouseholdWeight[] = [];
  for (const column of ["household_1", "household_2"]) {
    const massG = number(`${column}_g`);
    if (cells[column] === "" && cells[`${column}_g`] === "") continue;
    if (cells[column] === "" || cells[`${column}_g`] === "")
      slip(
        column,
        "a measure and its grams together",
        `${JSON.stringify(cells[column])} and "${cells[`${column}_g`]}"`,
      );
    else if (!isMeasure(cells[column])) slip(column, 'a measure such as "1 cup", "1 tbsp" or "1 large"');
    else if (massG !== null)
      householdWeights.push({ measure: cells[column], massG, source: cells.household_source || "not stated" });
  }
  const factors = Object.values(FACTOR_COLUMN).map(number);
  const us = readAllergenMarks(cells.allergens_us, US_ALLERGENS);
  const eu = readAllergenMarks(cells.allergens_eu, EU_ALLERGENS);
  if (us.problem) slip("allergens_us", expectedOf(us.problem.replace(/, got .*$/, "")));
  if (eu.problem) slip("allergens_eu", expectedOf(eu.problem.replace(/, got .*$/, "")));
  const foodClass = readClass(cells[CLASS_COLUMN] ?? "");
  if (foodClass === undefined) slip(CLASS_COLUMN, `one of ${INGREDIENT_CLASSES.map(spoken).join(", ")} or blank`);
  const costPerKg = number("cost_per_kg");
  if (slips.length > before) return null;
  const checked = ingredientSchema.safeParse({
    id: cells.id,
    name: cells.name,
    ndb: cells.ndb === "" ? null : cells.ndb,
    foodClass,
    per100G,
    householdWeights,
    energyFactors: factorsOf(factors),
    allergensUs: us.marks,
    allergensEu: eu.marks,
    source: cells.source,
    costPerKg,
  });
  for (const issue of checked.error?.issues ?? []) slip(columnOf(issue.path), expectedOf(issue.message));
  const sum = proximateSumG(per100G);
  if (checked.success && sum !== null && (sum < 30 || sum > 107))
    slips.push({
      file: fileName,
      row,
      at: null,
      expected:
        "water, protein, fat, carbohydrate and ash to sum to 30 to 107 g (leavening salts are low, as their carbonate is not listed)",
      got: `${sum.toFixed(1)} g`,
      nearest: null,
    });
  return checked.success && slips.length === before ? Object.freeze(checked.data) : null;
}

function isMeasure(text: string): boolean {
  try {
    return readMeasure(text, "household").amount > 0;
  } catch {
    return false;
  }
}

/** The column that a value of an ingredient stands in. */
function columnOf(path: readonly PropertyKey[]): string {
  const [field, inner, last] = path.map(String);
  if (field === "per100G") return COLUMN_OF[inner as NutrientName];
  if (field === "householdWeights") return `household_${Number(inner) + 1}${last === "massG" ? "_g" : ""}`;
  if (field === "energyFactors") return FACTOR_COLUMN[inner as keyof EnergyFactors];
  return field === "costPerKg" ? "cost_per_kg" : field;
}

const FACTOR_COLUMN: Readonly<Record<keyof EnergyFactors, string>> = {
  proteinKcalG: "protein_kcal_per_g",
  fatKcalG: "fat_kcal_per_g",
  carbohydrateKcalG: "carbohydrate_kcal_per_g",
};

/** The class that a cell names, `"ground meat"` as well as `"groundMeat"`; `null` for a blank, nothing for a stranger. */
function readClass(cell: string): IngredientClass | null | undefined {
  if (cell === "") return null;
  const tidy = (text: string): string => text.toLowerCase().replace(/[\s_-]+/g, "");
  return INGREDIENT_CLASSES.find((known) => tidy(known) === tidy(cell).replace("ized", "ised"));
}

function spoken(known: IngredientClass): string {
  return known.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

function factorsOf(factors: readonly (number | null)[]): EnergyFactors | null {
  const [proteinKcalG, fatKcalG, carbohydrateKcalG] = factors;
  if (proteinKcalG === null || fatKcalG === null || carbohydrateKcalG === null) return null;
  return { proteinKcalG, fatKcalG, carbohydrateKcalG };
}
