import { clipped } from "../../check/check";
import { type CsvRow, failAll, numberOf, readCsv } from "../../check/csv";
import { expectedOf } from "../../check/expected-of";
import { kebab } from "../../check/kebab";
import type { Notice } from "../../check/notice";
import { type Slip, slipLines } from "../../check/slip";
import { findUnit } from "../../units/find-unit";
import { readNumber } from "../../units/typed/read-number";
import { isUnknown } from "../../units/typed/unknown-mark";
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
import { CLASS_COLUMN, type IngredientColumn, ingredientColumns, NUTRIENT_COLUMN, unitOf } from "./ingredient-columns";
import type { NutrientName, Nutrients } from "./nutrients";
import { euMarksOf, usMarksOf } from "./other-allergens";
import { readServing } from "./read-serving";
import { waterByDifference } from "./water-by-difference";

/** The ingredients of a file, with every slip in it. */
export interface ReadIngredients {
  /** those without a slip, in file order */
  readonly ingredients: readonly Ingredient[];
  /** the ids of all rows, with those that have a slip */
  readonly ids: readonly string[];
  readonly slips: readonly Slip[];
  /** whether the ids of all rows are known */
  readonly whole: boolean;
  /** as they stand in the file */
  readonly headings: readonly string[];
  /** where each id stands */
  readonly placeOf: ReadonlyMap<string, IngredientPlace>;
  /** what must be written of the water of those that a mix cannot be made of without */
  readonly waterMust: ReadonlyMap<string, string>;
  /** how cells were read, and water that was taken by difference */
  readonly notices: readonly Notice[];
}

/** Where an ingredient stands. */
export interface IngredientPlace {
  readonly file: string;
  readonly row: number;
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
  const { headings, headingRow } = csv;
  const { columnOf, slips: ofHeadings, notices } = ingredientColumns({ headings, headingRow, file: fileName });
  const slips = [...csv.slips, ...(headings.length > 0 ? ofHeadings : [])];
  const nothing = { ingredients: [], ids: [], headings, placeOf: new Map(), waterMust: new Map() };
  if (!columnOf.has("id")) return { ...nothing, slips, whole: false, notices: csv.notices };
  const told: Notice[] = [...csv.notices, ...notices];
  const placeOf = new Map<string, IngredientPlace>();
  const waterMust = new Map<string, string>();
  const ingredients: Ingredient[] = [];
  for (const row of csv.rows) {
    const reading = { row, columnOf, file: fileName, slips, notices: told };
    const id = idOf(reading);
    const seen = placeOf.get(id);
    if (seen !== undefined) slips.push(slipIn(reading, "id", `each id once, and row ${seen.row} has this one`));
    else placeOf.set(id, { file: fileName, row: row.row });
    const read = readRow(reading, id);
    if (read === null || seen !== undefined) continue;
    ingredients.push(read.ingredient);
    if (read.waterMust !== null) waterMust.set(id, read.waterMust);
  }
  const ids = [...placeOf.keys()];
  return { ingredients, ids, slips, whole: csv.whole, headings, placeOf, waterMust, notices: told };
}

/** The ingredients of several files as those of one; an id that stands in two is a slip of the later. */
export function joinIngredients(files: readonly ReadIngredients[]): ReadIngredients {
  const placeOf = new Map<string, IngredientPlace>();
  const slips: Slip[] = files.flatMap((read) => read.slips);
  for (const read of files)
    for (const [id, place] of read.placeOf) {
      const earlier = placeOf.get(id);
      if (earlier === undefined) placeOf.set(id, place);
      else {
        const expected = `each id once, and ${earlier.file} row ${earlier.row} has this one`;
        slips.push({ ...place, at: "column id", expected, got: JSON.stringify(id), nearest: null });
      }
    }
  return {
    ingredients: files.flatMap(({ ingredients }) => ingredients),
    ids: [...placeOf.keys()],
    slips,
    whole: files.every(({ whole }) => whole),
    headings: files[0]?.headings ?? [],
    placeOf,
    waterMust: new Map(files.flatMap((read) => [...read.waterMust])),
    notices: files.flatMap(({ notices }) => notices),
  };
}

/** A row that is being read. */
interface Reading {
  readonly row: CsvRow;
  readonly columnOf: ReadonlyMap<string, IngredientColumn>;
  readonly file: string;
  readonly slips: Slip[];
  readonly notices: Notice[];
}

function cellOf({ row, columnOf }: Reading, column: string): string {
  const heading = columnOf.get(column)?.heading;
  return heading === undefined ? "" : (row.cells[heading] ?? "");
}

function placed({ row, columnOf, file }: Reading, column: string): Pick<Slip, "file" | "row" | "at"> {
  return { file, row: row.row, at: `column ${columnOf.get(column)?.heading ?? column}` };
}

function slipIn(reading: Reading, column: string, expected: string, got?: string): Slip {
  const cell = clipped(JSON.stringify(cellOf(reading, column)));
  return { ...placed(reading, column), expected, got: got ?? cell, nearest: null };
}

/** The id of a row, in the form of one where words can be; that of its name where it has none. */
function idOf(reading: Reading): string {
  const typed = cellOf(reading, "id");
  const id = kebab(typed === "" ? cellOf(reading, "name") : typed);
  if (id === null || id === typed) return typed;
  const says = "was taken as an id, which has lower-case words joined by hyphens";
  const given = typed === "" ? cellOf(reading, "name") : typed;
  reading.notices.push({
    ...placed(reading, "id"),
    kind: "read",
    given: clipped(JSON.stringify(given)),
    taken: id,
    says,
  });
  return id;
}

/** A row as an ingredient; what must be written of its water where that is not known, and is needed. */
interface ReadRow {
  readonly ingredient: Ingredient;
  readonly waterMust: string | null;
}

function readRow(reading: Reading, id: string): ReadRow | null {
  const { slips, notices } = reading;
  const before = slips.length;
  const cell = (column: string): string => cellOf(reading, column);
  const slip = (column: string, expected: string, got?: string): void => {
    slips.push(slipIn(reading, column, expected, got));
  };
  const number = (column: string): number | null => {
    const read = numberIn(reading, column);
    if (read === undefined) slip(column, "a number or blank");
    return read ?? null;
  };
  const serving =
    cell("serving") === "" ? null : readServing(cell("serving"), reading.columnOf.get("serving")?.unit ?? null);
  if (cell("serving") !== "" && serving === null)
    slip("serving", 'a serving with its mass, such as "30 g" or "1/4 cup (30 g)"');
  const perG = serving?.massG ?? 100;
  const per100 = (value: number | null): number | null => (value === null ? null : (value * 100) / perG);
  const printed = Object.fromEntries(
    Object.entries(NUTRIENT_COLUMN).map(([name, column]) => [name, per100(number(column))]),
  ) as unknown as Nutrients;
  const withoutFibreG = per100(number("carbohydrate_without_fibre_g"));
  const saltG = per100(number("salt_g"));
  if (withoutFibreG !== null && printed.carbohydrateG !== null)
    slip("carbohydrate_without_fibre_g", "carbohydrate with its fibre or without, not both");
  if (saltG !== null && printed.sodiumMg !== null) slip("salt_g", "sodium or salt, not both");
  const known: Nutrients = {
    ...printed,
    carbohydrateG: withoutFibreG === null ? printed.carbohydrateG : withoutFibreG + (printed.fibreG ?? 0),
    sodiumMg: saltG === null ? printed.sodiumMg : 400 * saltG,
  };
  const householdWeights: HouseholdWeight[] = [];
  for (const column of ["household_1", "household_2"]) {
    const massG = number(`${column}_g`);
    if (cell(column) === "" && cell(`${column}_g`) === "") continue;
    if (cell(column) === "" || cell(`${column}_g`) === "")
      slip(column, "a measure and its grams together", `${JSON.stringify(cell(column))} and "${cell(`${column}_g`)}"`);
    else if (!isMeasure(cell(column))) slip(column, 'a measure such as "1 cup", "1 tbsp" or "1 large"');
    else if (massG !== null)
      householdWeights.push({ measure: cell(column), massG, source: cell("household_source") || "not stated" });
  }
  if (serving?.measure) householdWeights.push({ measure: serving.measure, massG: serving.massG, source: "its label" });
  const factors = Object.values(FACTOR_COLUMN).map(number);
  const us = readAllergenMarks(cell("allergens_us"), US_ALLERGENS);
  const eu = readAllergenMarks(cell("allergens_eu"), EU_ALLERGENS);
  if (us.problem) slip("allergens_us", expectedOf(us.problem.replace(/, got .*$/, "")));
  if (eu.problem) slip("allergens_eu", expectedOf(eu.problem.replace(/, got .*$/, "")));
  const foodClass = readClass(cell(CLASS_COLUMN));
  if (foodClass === undefined) slip(CLASS_COLUMN, `one of ${INGREDIENT_CLASSES.map(spoken).join(", ")} or blank`);
  const costPerKg = number("cost_per_kg");
  if (slips.length > before) return null;

  const difference = known.waterG === null ? waterByDifference({ nutrients: known, perG }) : null;
  const per100G = difference !== null && "waterG" in difference ? { ...known, waterG: difference.waterG } : known;
  const of = serving === null ? "" : `, and the values are of ${short(perG)} g`;
  const checked = ingredientSchema.safeParse({
    id,
    name: cell("name") || cell("id"),
    ndb: cell("ndb") === "" ? null : cell("ndb"),
    foodClass,
    per100G,
    householdWeights,
    energyFactors: factorsOf(factors),
    allergensUs: cell("allergens_us") === "" ? usMarksOf(eu.marks) : us.marks,
    allergensEu: cell("allergens_eu") === "" ? euMarksOf(us.marks) : eu.marks,
    source: cell("source") || (serving === null ? "not stated" : `label, per ${short(perG)} g`),
    costPerKg,
  });
  const issues = checked.error?.issues ?? [];
  const solidsG = (known.proteinG ?? 0) + (known.fatG ?? 0) + (known.carbohydrateG ?? 0);
  const isOff = serving !== null && (solidsG > 107 || issues.filter(({ path }) => path[0] === "per100G").length > 1);
  if (isOff)
    slip(
      "serving",
      `the serving that the values are of: with ${short(perG)} g, protein, fat and carbohydrate would be ${solidsG.toFixed(0)} g in 100 g`,
    );
  for (const { path, message } of issues) {
    const isNutrient = path[0] === "per100G";
    if (!isNutrient || !isOff) slip(columnOf(path), `${expectedOf(message)}${isNutrient ? of : ""}`);
  }
  const wrong = checked.success && !isOff ? faultOf(per100G, serving !== null) : null;
  if (wrong !== null) {
    const { column, expected, got } = wrong;
    const place = placed(reading, column ?? "id");
    slips.push({ ...place, at: column === null ? null : place.at, expected: `${expected}${of}`, got, nearest: null });
  }
  if (!checked.success || slips.length > before) return null;
  if (difference !== null && "waterG" in difference)
    notices.push({
      ...placed(reading, "water_g"),
      kind: "read",
      given: null,
      taken: `${difference.waterG.toFixed(0)} g in 100 g, give or take ${difference.doubtG.toFixed(0)}, for ${id}`,
      says: "is not stated: water by difference was taken",
    });
  const waterMust = difference !== null && "must" in difference ? difference.must : null;
  return { ingredient: Object.freeze(checked.data), waterMust };
}

/** A number in the unit of its column; `null` for a blank cell, undefined for what is none. `<1 g` is half of it. */
function numberIn(reading: Reading, column: string): number | null | undefined {
  const typed = cellOf(reading, column);
  if (typed === "" || isUnknown(typed)) return null;
  const plain = numberOf(typed);
  const base = unitOf(column);
  const unit = reading.columnOf.get(column)?.unit ?? base;
  if (plain !== null && (base === null || base === unit)) return plain;
  const less = /^(?:<|less than) ?/i.exec(typed)?.[0] ?? "";
  const kind = base === null ? null : findUnit(base, "numberIn").kind;
  const read = readNumber(typed.slice(less.length), { sign: ".", kind, base, unit });
  if ("expected" in read) return undefined;
  const says = less === "" ? read.says : "is less than so much; half was taken";
  const taken = less === "" ? read.taken : String(read.value / 2);
  if (says !== null)
    reading.notices.push({ ...placed(reading, column), kind: "read", given: JSON.stringify(typed), taken, says });
  return less === "" ? read.value : read.value / 2;
}

/** What in values of 100 g cannot be. */
function faultOf(
  nutrients: Nutrients,
  isLabel: boolean,
): { readonly column: string | null; readonly expected: string; readonly got: string } | null {
  const { proteinG, fatG, carbohydrateG, energyKcal } = nutrients;
  const sum = proximateSumG(nutrients);
  if (sum !== null && (sum < 30 || sum > 107))
    return {
      column: null,
      expected:
        "water, protein, fat, carbohydrate and ash to sum to 30 to 107 g (leavening salts are low, as their carbonate is not listed)",
      got: `${sum.toFixed(1)} g`,
    };
  if ((proteinG ?? 0) + (fatG ?? 0) + (carbohydrateG ?? 0) > 107)
    return { column: null, expected: "protein, fat and carbohydrate to sum to at most 100 g in 100 g", got: "more" };
  if (!isLabel || energyKcal === null || proteinG === null || fatG === null || carbohydrateG === null) return null;
  const general = 4 * proteinG + 9 * fatG + 4 * carbohydrateG;
  if (general <= 40 || (energyKcal <= 1.5 * general && energyKcal >= 0.4 * general)) return null;
  return {
    column: "energy_kcal",
    expected: `near the ${general.toFixed(0)} kcal in 100 g that 4-9-4 gives for its protein, fat and carbohydrate (is it kJ?)`,
    got: `${energyKcal.toFixed(0)} kcal in 100 g`,
  };
}

function short(value: number): string {
  return String(Number(value.toPrecision(4)));
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
  if (field === "per100G") return NUTRIENT_COLUMN[inner as NutrientName];
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
