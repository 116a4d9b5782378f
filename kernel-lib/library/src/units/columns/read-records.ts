import type { z } from "zod";
import { clipped } from "../../check/check";
import { type CsvText, numberOf, readCsv } from "../../check/csv";
import { nearestName } from "../../check/nearest-name";
import { type Slip, slipLines } from "../../check/slip";
import { convertUnit } from "../convert-unit";
import { KITCHEN_UNIT, type UnitKind } from "../unit-table";
import type { ColumnPlan, ColumnPlans } from "./column-plan";
import { type ColumnUnit, columnUnit } from "./column-unit";
import { headingIn } from "./heading-in";

/** Records read from a CSV file, with every problem found; a row with a problem gives no record. */
export interface ReadRecords<T> {
  readonly records: readonly T[];
  /** row in the file of each record */
  readonly rows: readonly number[];
  /** one sentence each; problems that are alike in several rows are one */
  readonly problems: readonly string[];
  /** the same problems, taken apart and row by row */
  readonly slips: readonly Slip[];
  /** every row as far as it can be read, with those that give no record */
  readonly drafts: readonly Draft<T>[];
  /** the heading of each field, or what it would be called */
  readonly headings: Readonly<Record<keyof T & string, string>>;
  /** whether all rows are among the drafts */
  readonly whole: boolean;
}

/** A row of a file as far as it can be read. */
export interface Draft<T> {
  readonly row: number;
  /** what cannot be read is left out; what must not be as it is stands here all the same */
  readonly fields: Partial<T>;
  /** fields that hold what they must not, or nothing where they must hold something */
  readonly faulty: ReadonlySet<keyof T & string>;
  /** the cells as they stand in the file, by heading */
  readonly cells: Readonly<Record<string, string>>;
}

/** After how many problems a file is read no further: our judgement, many more than anybody mends by hand. */
const MOST_PROBLEMS = 200_000;

/**
 * Reads a CSV file into records: takes each heading apart into name and unit, converts every number once into kitchen
 * units, and checks each record against its schema. An empty cell is `null`, or an empty array where a cell may hold
 * several values. Every problem names file, row, column, value and what was expected; a column that is missing, or goes by
 * another name, is one problem and not one a row. After 200,000 of them reading stops.
 *
 * @param schema its messages say what was expected, as in `"a setpoint of 100 to 290 °C"`
 */
export function readRecords<T>(
  text: string,
  file: string,
  plans: ColumnPlans<T>,
  schema: z.ZodType<T>,
): ReadRecords<T> {
  const csv = readCsv(text, file);
  const fields = Object.entries(plans) as [keyof T & string, ColumnPlan][];
  const { headingOf } = columnsOf(csv.headings, plans);
  const headings = Object.fromEntries(
    fields.map(([field, plan]) => [field, headingOf[field]?.heading ?? plan.column]),
  ) as Record<keyof T & string, string>;
  const slips: Slip[] = [];
  const absent = new Map<keyof T & string, string>();
  const missing = (field: keyof T & string, expected: string): void => {
    if (!absent.has(field)) absent.set(field, expected);
  };

  const records: T[] = [];
  const rows: number[] = [];
  const drafts: Draft<T>[] = [];
  const nothing = Object.fromEntries(fields.map(([field, plan]) => [field, plan.many ? [] : null]));
  for (const { field, expected } of issuesOf<T>(schema.safeParse(nothing).error))
    if (headingOf[field] === undefined) missing(field, expected);
  let isRead = true;
  for (const { row, cells } of Object.keys(headingOf).length > 0 ? csv.rows : []) {
    if (csv.slips.length + slips.length >= MOST_PROBLEMS) {
      const expected = `fewer problems, stopped reading after ${MOST_PROBLEMS}`;
      slips.push({ file, row, at: null, expected, got: null, nearest: null });
      isRead = false;
      break;
    }
    const draft: Record<string, unknown> = {};
    const faulty = new Set<keyof T & string>();
    const problem = (field: keyof T & string, expected: string): void => {
      faulty.add(field);
      if (headingOf[field] === undefined) missing(field, expected);
      else slips.push(cellSlip({ file, row, heading: headings[field], cells, expected }));
    };
    for (const [field, plan] of fields) {
      const found = headingOf[field];
      const cell = found === undefined ? "" : cells[found.heading];
      const values = (plan.many ? cell.split(";") : [cell])
        .map((value) => value.trim())
        .filter((value) => value !== "");
      const read = values.map((value) =>
        plan.holds === "text" ? value : quantityOf(value, plan, found?.unit ?? null),
      );
      if (read.includes(null)) problem(field, expectedNumber(plan, found?.unit ?? null));
      else draft[field] = plan.many ? read : (read[0] ?? null);
    }
    const parsed = schema.safeParse(draft);
    if (parsed.success && faulty.size === 0) {
      records.push(Object.freeze(parsed.data));
      rows.push(row);
    } else {
      for (const { field, expected } of issuesOf<T>(parsed.error)) if (!faulty.has(field)) problem(field, expected);
    }
    drafts.push({ row, fields: draft as Partial<T>, faulty, cells });
  }
  const all = [...csv.slips, ...(csv.headings.length > 0 ? headingSlips(csv, file, plans, absent) : []), ...slips];
  return { records, rows, problems: slipLines(all), slips: all, drafts, headings, whole: csv.whole && isRead };
}

/** A slip in one cell. */
export function cellSlip(place: {
  readonly file: string;
  readonly row: number;
  readonly heading: string;
  readonly cells: Readonly<Record<string, string>>;
  readonly expected: string;
  readonly nearest?: string | null;
}): Slip {
  const { file, row, heading, cells, expected, nearest = null } = place;
  const got = Object.hasOwn(cells, heading) ? clipped(JSON.stringify(cells[heading])) : "no such column";
  return { file, row, at: `column ${heading}`, expected, got, nearest };
}

/** What a schema finds in a record, the first of each field. */
function issuesOf<T>(
  error: z.ZodError | undefined,
): readonly { readonly field: keyof T & string; readonly expected: string }[] {
  const first = new Map<string, string>();
  for (const { path, message } of error?.issues ?? []) {
    const field = String(path[0] ?? "");
    if (!first.has(field)) first.set(field, message);
  }
  return [...first].map(([field, expected]) => ({ field: field as keyof T & string, expected }));
}

/** Which heading, in which unit, holds each field of a record, and what is wrong with the others. */
export interface MatchedColumns<T> {
  readonly headingOf: { readonly [Field in keyof T]?: { readonly heading: string; readonly unit: string | null } };
  readonly strange: readonly StrangeHeading<T>[];
}

/** A heading that stands for no field. */
export interface StrangeHeading<T> {
  readonly heading: string;
  readonly expected: string;
  /** a heading that would do, where one is near */
  readonly nearest: string | null;
  /** the field that it most likely stands for */
  readonly field: (keyof T & string) | null;
  /** the unit that its cells are in, `null` for a field without; left out when it cannot be told */
  readonly unit?: string | null;
}

/** Holds the headings of a CSV file against the columns that a record has. */
export function columnsOf<T>(headings: readonly string[], plans: ColumnPlans<T>): MatchedColumns<T> {
  const fields = Object.entries(plans) as [keyof T & string, ColumnPlan][];
  const headingOf: { [Field in keyof T]?: { heading: string; unit: string | null } } = {};
  const strange: StrangeHeading<T>[] = [];
  for (const heading of headings) {
    if (heading === "") continue; // readCsv lists it
    const matched = matchHeading(heading, fields);
    if ("expected" in matched) strange.push(matched);
    else if (headingOf[matched.field]?.heading === heading)
      continue; // so it does a heading that stands twice
    else if (headingOf[matched.field] !== undefined)
      strange.push({
        heading,
        expected: `one column for ${plans[matched.field].column}, got also ${headingOf[matched.field]?.heading}`,
        nearest: null,
        field: matched.field,
      });
    else headingOf[matched.field] = { heading, unit: matched.unit };
  }
  // what stands under a mistyped heading is read all the same, so that its cells are checked in the same reading
  for (const { heading, field, unit } of strange)
    if (field !== null && unit !== undefined && headingOf[field] === undefined) headingOf[field] = { heading, unit };
  return { headingOf, strange };
}

/** What is wrong with the headings of a file; `absent` are the fields that its rows need and no heading holds. */
function headingSlips<T>(
  csv: CsvText,
  file: string,
  plans: ColumnPlans<T>,
  absent: ReadonlyMap<keyof T & string, string>,
): readonly Slip[] {
  const { headingOf, strange } = columnsOf(csv.headings, plans);
  // of a file without one heading that is known, nothing is missing: it is another file
  const isOther = Object.keys(headingOf).length === 0;
  const meant = new Set(strange.map(({ field }) => field));
  const missing = isOther ? [] : [...absent].filter(([field]) => !meant.has(field));
  const unmeant = strange.filter(({ field }) => field === null);
  // one strange heading and one that is missing: it was given another name
  const renamed = unmeant.length === 1 && missing.length === 1 ? exampleHeading(plans[missing[0][0]]) : null;
  const row = csv.headingRow;
  const slips = strange.map(({ heading, expected, nearest, field }): Slip => {
    const isRenamed = renamed !== null && field === null;
    const wanted = isRenamed ? `${renamed}, which is missing` : expected;
    return {
      file,
      row,
      at: `column ${clipped(heading)}`,
      expected: wanted,
      got: null,
      nearest: isRenamed ? null : nearest,
    };
  });
  if (renamed !== null) return slips;
  const absences = missing.map(([field, expected]): Slip => {
    const wanted = `a column ${exampleHeading(plans[field])} (${expected})`;
    return { file, row, at: null, expected: wanted, got: "none", nearest: null };
  });
  return slips.concat(absences);
}

function matchHeading<T>(
  heading: string,
  fields: readonly [keyof T & string, ColumnPlan][],
): { readonly field: keyof T & string; readonly unit: string | null } | StrangeHeading<T> {
  const strange = (field: keyof T & string, expected: string): StrangeHeading<T> => ({
    heading,
    expected,
    nearest: null,
    field,
  });
  const bare = fields.find(([, plan]) => isBare(plan) && plan.column === heading);
  if (bare !== undefined) return { field: bare[0], unit: null };
  for (const [field, plan] of fields) {
    if (isBare(plan)) continue;
    if (heading === plan.column)
      return strange(field, `a heading that ends in its unit, such as ${exampleHeading(plan)}`);
    if (!heading.startsWith(`${plan.column}_`)) continue;
    const ending = heading.slice(plan.column.length + 1);
    if (ending.includes("_")) continue;
    const unit = headingUnit(heading);
    if (unit === null || unit.kind !== plan.holds)
      return strange(field, `a unit of ${plan.holds}, such as ${exampleHeading(plan)}`);
    return { field, unit: unit.unit };
  }
  const known = fields.map(([field, plan]) => ({ field, name: nameLike(heading, plan) }));
  const nearest = nearestName(
    heading,
    known.map(({ name }) => name),
  );
  return {
    heading,
    expected:
      nearest === null ? `one of ${fields.map(([, plan]) => exampleHeading(plan)).join(", ")}` : "a known heading",
    nearest,
    field: known.find(({ name }) => name === nearest)?.field ?? null,
    unit: nearest === null ? undefined : (headingUnit(nearest)?.unit ?? null),
  };
}

/** A plan's heading, in the unit that a mistyped heading ends in where that unit fits. */
function nameLike(heading: string, plan: ColumnPlan): string {
  const unit = headingUnit(heading.toLowerCase());
  if (unit === null || unit.kind !== plan.holds) return exampleHeading(plan);
  return `${plan.column}_${heading.slice(heading.lastIndexOf("_") + 1).toLowerCase()}`;
}

/** Whether a plan's heading carries no unit. */
function isBare(plan: ColumnPlan): boolean {
  return plan.holds === "text" || plan.holds === "number";
}

function headingUnit(heading: string): ColumnUnit | null {
  try {
    return columnUnit(heading);
  } catch {
    return null;
  }
}

function exampleHeading(plan: ColumnPlan): string {
  return headingIn(plan, "metric");
}

function quantityOf(cell: string, plan: ColumnPlan, unit: string | null): number | null {
  const value = numberOf(cell) ?? (unit === "in" ? fractionOf(cell) : null);
  if (value === null || unit === null) return value;
  return convertUnit({ value, from: unit, to: KITCHEN_UNIT[plan.holds as UnitKind] });
}

/** Inches as a ruler shows them: `3/8`, `1 1/2`, `1-1/2`. */
function fractionOf(cell: string): number | null {
  const match = /^(?:(\d{1,4})[ -])?(\d{1,4})\/(\d{1,4})$/.exec(cell);
  if (match === null || Number(match[3]) === 0) return null;
  return Number(match[1] ?? 0) + Number(match[2]) / Number(match[3]);
}

function expectedNumber(plan: ColumnPlan, unit: string | null): string {
  const of = unit === null ? "" : ` in ${unit === "in" ? "inches" : unit}`;
  const how = unit === "in" ? "with a decimal point or as a fraction (3/8)" : "with a decimal point";
  return plan.many ? `numbers${of} ${how}, parted by semicolons` : `a number${of} ${how}`;
}
