import { z } from "zod";
import { clipped } from "../../check/check";
import { type CsvRow, failAll, numberOf, readCsv } from "../../check/csv";
import { proximateSumG } from "../composition/proximate-sum";
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

/**
 * Reads the ingredients of a kitchen from CSV text. A blank value is "not known". Every problem of the file is named in
 * one error: file, row, column, what was expected, what was found.
 *
 * @param csvText the file's text
 * @param fileName named in errors
 * @returns the ingredients, in file order
 */
export function parseIngredients(csvText: string, fileName: string): Ingredient[] {
  const csv = readCsv(csvText, fileName);
  const problems = [...csv.problems];
  for (const column of INGREDIENT_COLUMNS) {
    if (csv.headings.length > 0 && !csv.headings.includes(column))
      problems.push(`${fileName} row 1: expected a column ${column}, found none`);
  }
  failAll(problems);
  const firstRow = new Map<string, number>();
  const ingredients: Ingredient[] = [];
  for (const row of csv.rows) {
    const seen = firstRow.get(row.cells.id);
    if (seen)
      problems.push(
        `${fileName} row ${row.row}, id: expected each id once, ${clipped(row.cells.id)} is in row ${seen} too`,
      );
    else firstRow.set(row.cells.id, row.row);
    const ingredient = readRow(row, fileName, problems);
    if (ingredient) ingredients.push(ingredient);
  }
  failAll(problems);
  return ingredients;
}

function readRow({ row, cells }: CsvRow, fileName: string, problems: string[]): Ingredient | null {
  const before = problems.length;
  const number = (column: string): number | null => {
    if (cells[column] === "") return null;
    const value = numberOf(cells[column]);
    if (value === null) {
      problems.push(
        `${fileName} row ${row}, ${column}: expected a number or blank, got ${clipped(`"${cells[column]}"`)}`,
      );
    }
    return value;
  };
  const per100G = Object.fromEntries(
    Object.entries(COLUMN_OF).map(([name, column]) => [name, number(column)]),
  ) as unknown as Nutrients;
  const householdWeights: HouseholdWeight[] = [];
  for (const column of ["household_1", "household_2"]) {
    const massG = number(`${column}_g`);
    if (cells[column] === "" && massG === null) continue;
    if (cells[column] === "" || massG === null) {
      problems.push(`${fileName} row ${row}, ${column}: expected a measure and its grams together`);
    } else householdWeights.push({ measure: cells[column], massG, source: cells.household_source || "not stated" });
  }
  const factors = ["protein_kcal_per_g", "fat_kcal_per_g", "carbohydrate_kcal_per_g"].map(number);
  const us = readAllergenMarks(cells.allergens_us, US_ALLERGENS);
  const eu = readAllergenMarks(cells.allergens_eu, EU_ALLERGENS);
  if (us.problem) problems.push(`${fileName} row ${row}, allergens_us: ${us.problem}`);
  if (eu.problem) problems.push(`${fileName} row ${row}, allergens_eu: ${eu.problem}`);
  const foodClass = readClass(cells[CLASS_COLUMN] ?? "");
  if (foodClass === undefined)
    problems.push(
      `${fileName} row ${row}, ${CLASS_COLUMN}: expected one of ${INGREDIENT_CLASSES.map(spoken).join(", ")} or blank, got "${cells[CLASS_COLUMN]}"`,
    );
  const sum = proximateSumG(per100G);
  if (sum !== null && (sum < 30 || sum > 107)) {
    problems.push(
      `${fileName} row ${row}: expected water, protein, fat, carbohydrate and ash to sum to 30 to 107 g (leavening salts are low, as their carbonate is not listed), got ${sum.toFixed(1)} g`,
    );
  }
  if (problems.length > before) return null;
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
    costPerKg: number("cost_per_kg"),
  });
  if (checked.success) return Object.freeze(checked.data);
  problems.push(`${fileName} row ${row}: ${z.prettifyError(checked.error).replace(/\s*\n\s*/g, " ")}`);
  return null;
}

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
