import { clipped, fail } from "../../check/check";
import { csvTable, failAll } from "../../check/csv";
import { ownValue } from "../../check/own-value";
import { slipLines } from "../../check/slip";
import { type Ingredient, ingredientSchema } from "./ingredient";
import { NUTRIENT_NAMES, type NutrientName } from "./nutrients";

/** Where one nutrient stands in a foreign table. */
export interface ForeignColumn {
  readonly column: string;
  /** unit of the column, turned into ours (g, mg for sodium and cholesterol, kcal); that unit unless given */
  readonly unit?: "g" | "mg" | "µg" | "kcal" | "kJ";
}

/** What `importFoods` works from. */
export interface ImportFoodsOptions {
  readonly csvText: string;
  /** named in errors and in the source of each food */
  readonly fileName: string;
  /** column of the food's name; ids are made from the names */
  readonly nameColumn: string;
  /** our nutrient to the table's column; nutrients left out stay unknown */
  readonly columns: Readonly<Partial<Record<NutrientName, ForeignColumn>>>;
  /** whether the table's carbohydrate includes fibre; `false` for European tables, whose fibre is then added */
  readonly carbohydrateIncludesFibre: boolean;
  /** mass that the values are of (g); 100 unless given */
  readonly perG?: number;
  /** `","` unless given */
  readonly delimiter?: string;
  /** numbers are written `1,5`; false unless given */
  readonly decimalComma?: boolean;
  /** words for "not known", besides a blank: `["N", "-"]` unless given */
  readonly unknownWords?: readonly string[];
  /** words for "a trace", taken as 0: `["Tr", "tr", "traces"]` unless given */
  readonly traceWords?: readonly string[];
  /** named as each food's source, with the file: the table and its licence */
  readonly source: string;
}

/** Foods of a foreign table. */
export interface ImportedFoods {
  readonly ingredients: readonly Ingredient[];
  /** what was read as something other than it was written: traces as 0, "below x" as x/2 */
  readonly notices: readonly string[];
}

/**
 * Reads the user's own copy of another food table (national tables are often open data) from CSV text, by a map from
 * our nutrients to its columns. Unknown stays unknown; a trace is 0; "< x" is x/2, and both are counted in `notices`.
 * Every problem of the file is named in one error: file, row, column, what was expected, what was found.
 *
 * @param options text, columns, conventions of the table
 * @returns ingredients with ids made from their names, and notices
 * @example
 * const table = importFoods({ csvText: "food,kJ,protein\nCooked peas,340,5.4\nDill,N,3.5", fileName: "table.csv", nameColumn: "food", columns: { energyKcal: { column: "kJ", unit: "kJ" }, proteinG: { column: "protein" } }, carbohydrateIncludesFibre: false, source: "an invented table" });
 * table.ingredients[0].id; // → "cooked-peas"
 * table.ingredients[0].per100G.energyKcal; // → 81.26
 * table.ingredients[1].per100G.energyKcal; // → null
 */
export function importFoods(options: ImportFoodsOptions): ImportedFoods {
  const { fileName } = options;
  const delimiter = options.delimiter ?? ",";
  if (delimiter.length !== 1) fail("importFoods: delimiter", "must be one character", delimiter);
  const { headings, rows, slips } = csvTable(options.csvText, fileName, { delimiter });
  const problems = [...slipLines(slips)];
  const need = [options.nameColumn, ...Object.values(options.columns).map((one) => one.column)];
  for (const column of need) {
    if (!headings.includes(column)) problems.push(`${fileName}: expected a column "${column}", found none`);
  }
  failAll(problems);
  const counts = { traces: 0, below: 0 };
  const firstRow = new Map<string, number>();
  const ingredients: Ingredient[] = [];
  for (const { row, cells } of rows) {
    const name = cells[options.nameColumn];
    const id = idOf(name);
    if (id === "") {
      problems.push(`${fileName} row ${row}, ${options.nameColumn}: expected a name, got ${clipped(`"${name}"`)}`);
      continue;
    }
    const seen = firstRow.get(id);
    if (seen !== undefined) {
      problems.push(
        `${fileName} row ${row}, ${options.nameColumn}: expected names that differ, ${clipped(`"${name}"`)} is like row ${seen}`,
      );
      continue;
    }
    firstRow.set(id, row);
    const per100G = Object.fromEntries(NUTRIENT_NAMES.map((field) => [field, null])) as Record<
      NutrientName,
      number | null
    >;
    for (const field of NUTRIENT_NAMES) {
      const foreign = options.columns[field];
      if (foreign)
        per100G[field] = foreignValue({ options, row, field, foreign, cell: cells[foreign.column], counts, problems });
    }
    if (!options.carbohydrateIncludesFibre && per100G.carbohydrateG !== null)
      per100G.carbohydrateG += per100G.fibreG ?? 0;
    const checked = ingredientSchema.safeParse({
      id,
      name,
      ndb: null,
      foodClass: null,
      per100G,
      householdWeights: [],
      energyFactors: null,
      allergensUs: [],
      allergensEu: [],
      source: `${options.source} (${fileName} row ${row})`,
      costPerKg: null,
    });
    if (checked.success) ingredients.push(Object.freeze(checked.data));
    else {
      for (const issue of checked.error.issues) {
        problems.push(`${fileName} row ${row} (${clipped(name)}), ${issue.path.join(".")}: ${issue.message}`);
      }
    }
  }
  failAll(problems);
  const notices: string[] = [];
  if (counts.traces > 0) notices.push(`${fileName}: ${counts.traces} traces taken as 0`);
  if (counts.below > 0) notices.push(`${fileName}: ${counts.below} values "below x" taken as x/2`);
  return Object.freeze({ ingredients: Object.freeze(ingredients), notices: Object.freeze(notices) });
}

const GRAMS: Readonly<Record<string, number>> = { g: 1, mg: 1e-3, µg: 1e-6 };

function foreignValue(parts: {
  options: ImportFoodsOptions;
  row: number;
  field: NutrientName;
  foreign: ForeignColumn;
  cell: string;
  counts: { traces: number; below: number };
  problems: string[];
}): number | null {
  const { options, row, field, foreign, cell, counts, problems } = parts;
  if (cell === "" || (options.unknownWords ?? ["N", "-"]).includes(cell)) return null;
  if ((options.traceWords ?? ["Tr", "tr", "traces"]).includes(cell)) {
    counts.traces += 1;
    return 0;
  }
  const point = options.decimalComma ? cell.replace(",", ".") : cell;
  const match = /^(<\s*)?(\d+(?:\.\d*)?|\.\d+)$/.exec(point);
  const factor = factorTo(field, foreign.unit);
  if (!match || factor === null) {
    const expected = match ? `a unit that turns into ${field}` : "a number, a blank, a trace or < a number";
    const found = match ? `unit ${foreign.unit}` : clipped(`"${cell}"`);
    problems.push(`${options.fileName} row ${row}, ${foreign.column}: expected ${expected}, got ${found}`);
    return null;
  }
  if (match[1]) counts.below += 1;
  return (Number(match[2]) * (match[1] ? 0.5 : 1) * factor * 100) / (options.perG ?? 100);
}

function factorTo(field: NutrientName, unit: ForeignColumn["unit"]): number | null {
  if (unit === undefined) return 1;
  if (field === "energyKcal") return unit === "kcal" ? 1 : unit === "kJ" ? 1 / 4.184 : null;
  const grams = ownValue(GRAMS, unit);
  return grams === undefined ? null : field.endsWith("Mg") ? grams * 1000 : grams;
}

function idOf(name: string): string {
  return name
    .normalize("NFD")
    .replace(/[\u0300-\u036f]/g, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");
}
