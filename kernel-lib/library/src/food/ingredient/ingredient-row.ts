import { csvLine } from "../../check/csv-line";
import { convertUnit } from "../../units/convert-unit";
import { ingredientColumns, NUTRIENT_COLUMN, unitOf } from "./ingredient-columns";
import type { NutrientName } from "./nutrients";
import type { Sr28Food } from "./parse-sr28";

/** What `ingredientRow` works from. */
export interface IngredientRowOptions {
  readonly food: Sr28Food;
  /** the id that formulas will use */
  readonly id: string;
  /** of the table that the row is for */
  readonly headings: readonly string[];
}

/**
 * A food of SR28 as a row for a table of ingredients, in its columns and units, to be pasted. Its class and its allergens
 * are left empty: the database knows neither.
 */
export function ingredientRow({ food, id, headings }: IngredientRowOptions): string {
  const { columnOf } = ingredientColumns({ headings, headingRow: 1, file: "" });
  const cells = new Map<string, string>();
  const put = (column: string, text: string): void => {
    const heading = columnOf.get(column)?.heading;
    if (heading !== undefined) cells.set(heading, text);
  };
  put("id", id);
  put("name", food.description);
  put("ndb", food.ndb);
  for (const [name, column] of Object.entries(NUTRIENT_COLUMN)) {
    const value = food.per100G[name as NutrientName];
    const from = unitOf(column) as string;
    const to = columnOf.get(column)?.unit ?? from;
    if (value !== null) put(column, String(Number(convertUnit({ value, from, to }).toPrecision(6))));
  }
  for (const [at, { measure, massG }] of food.householdWeights.slice(0, 2).entries()) {
    put(`household_${at + 1}`, measure);
    put(`household_${at + 1}_g`, String(massG));
  }
  if (food.householdWeights.length > 0) put("household_source", food.householdWeights[0].source);
  put("source", `USDA SR28 (2015), food ${food.ndb}: ${food.description}`);
  return csvLine(
    headings.map((heading) => cells.get(heading) ?? ""),
    ",",
  );
}
