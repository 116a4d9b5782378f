import type { z } from "zod";
import { clipped } from "../check/check";
import { numberOf, readCsv } from "../check/csv";
import { type ColumnUnit, columnUnit } from "./column-unit";
import { convertUnit } from "./convert-unit";
import { KITCHEN_UNIT, type UnitKind } from "./unit-table";

/** How one field of a record is written in a CSV file. */
export interface ColumnPlan {
  /** heading, without a unit: `"thickness"` */
  readonly column: string;
  /** text, a bare number, or a quantity whose heading ends in its unit (`thickness_mm`, `thickness_in`) */
  readonly holds: "text" | "number" | UnitKind;
  /** several values in one cell, parted by semicolons: the field is an array */
  readonly many?: boolean;
}

/** The columns of a CSV file, by field of the record. */
export type ColumnPlans<T> = { readonly [Field in keyof T]-?: ColumnPlan };

/** Records read from a CSV file, with every problem found; a row with a problem gives no record. */
export interface ReadRecords<T> {
  readonly records: readonly T[];
  /** row in the file of each record */
  readonly rows: readonly number[];
  readonly problems: readonly string[];
}

/** After how many problems a file is read no further: our judgement, many more than anybody mends by hand. */
const MOST_PROBLEMS = 200_000;

/**
 * Reads a CSV file into records: takes each heading apart into name and unit, converts every number once into kitchen
 * units, and checks each record against its schema. An empty cell is `null`, or an empty array where a cell may hold
 * several values. Every problem names file, row, column, value and what was expected; after 200,000 of them reading stops.
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
  const columns = columnsOf(csv.headings, file, plans);
  const problems = [...csv.problems, ...columns.problems];
  const { headingOf } = columns;
  if (Object.keys(headingOf).length === 0) return { records: [], rows: [], problems };

  const records: T[] = [];
  const rows: number[] = [];
  for (const { row, cells } of csv.rows) {
    if (problems.length >= MOST_PROBLEMS) {
      problems.push(`${file} row ${row}: expected fewer problems, stopped reading after ${MOST_PROBLEMS}`);
      break;
    }
    if (csv.headings.every((heading) => cells[heading] === "")) {
      problems.push(`${file} row ${row}: expected a row that holds something, got empty cells`);
      continue;
    }
    const draft: Record<string, unknown> = {};
    const unread = new Set<string>();
    const problem = (field: string, expected: string): void => {
      const heading = headingOf[field as keyof T & string]?.heading;
      const got = heading === undefined ? "no such column" : clipped(JSON.stringify(cells[heading]));
      problems.push(
        `${file} row ${row}, column ${heading ?? plans[field as keyof T].column}: expected ${expected}, got ${got}`,
      );
      unread.add(field);
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
    if (parsed.success && unread.size === 0) {
      records.push(Object.freeze(parsed.data));
      rows.push(row);
    } else
      for (const issue of parsed.error?.issues ?? []) {
        const field = String(issue.path[0] ?? "");
        if (!unread.has(field)) problem(field, issue.message);
      }
  }
  return { records, rows, problems };
}

/** Which heading, in which unit, holds each field of a record; strange and repeated headings are listed. */
export interface MatchedColumns<T> {
  readonly headingOf: { readonly [Field in keyof T]?: { readonly heading: string; readonly unit: string | null } };
  readonly problems: readonly string[];
}

/** Holds the headings of a CSV file against the columns that a record has. */
export function columnsOf<T>(headings: readonly string[], file: string, plans: ColumnPlans<T>): MatchedColumns<T> {
  const fields = Object.entries(plans) as [keyof T & string, ColumnPlan][];
  const headingOf: { [Field in keyof T]?: { heading: string; unit: string | null } } = {};
  const problems: string[] = [];
  for (const heading of headings) {
    const matched = matchHeading(heading, fields);
    if (typeof matched === "string") problems.push(`${file} row 1, column ${clipped(heading)}: ${matched}`);
    else if (headingOf[matched.field] !== undefined)
      problems.push(
        `${file} row 1, column ${heading}: expected one column for ${plans[matched.field].column}, got also ${headingOf[matched.field]?.heading}`,
      );
    else headingOf[matched.field] = { heading, unit: matched.unit };
  }
  return { headingOf, problems };
}

function matchHeading<T>(
  heading: string,
  fields: [keyof T & string, ColumnPlan][],
): { field: keyof T & string; unit: string | null } | string {
  const bare = fields.find(([, plan]) => isBare(plan) && plan.column === heading);
  if (bare !== undefined) return { field: bare[0], unit: null };
  for (const [field, plan] of fields) {
    if (isBare(plan)) continue;
    if (heading === plan.column) return `expected a heading that ends in its unit, such as ${exampleHeading(plan)}`;
    if (!heading.startsWith(`${plan.column}_`)) continue;
    const ending = heading.slice(plan.column.length + 1);
    if (ending.includes("_")) continue;
    const unit = headingUnit(heading);
    if (unit === null || unit.kind !== plan.holds)
      return `expected a unit of ${plan.holds}, such as ${exampleHeading(plan)}`;
    return { field, unit: unit.unit };
  }
  const known = fields.map(([, plan]) => (isBare(plan) ? plan.column : exampleHeading(plan)));
  return `expected one of ${known.join(", ")}`;
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
  const unit = KITCHEN_UNIT[plan.holds as UnitKind];
  return `${plan.column}_${unit.replace("°", "").toLowerCase()}`;
}

function quantityOf(cell: string, plan: ColumnPlan, unit: string | null): number | null {
  const value = numberOf(cell);
  if (value === null || unit === null) return value;
  return convertUnit({ value, from: unit, to: KITCHEN_UNIT[plan.holds as UnitKind] });
}

function expectedNumber(plan: ColumnPlan, unit: string | null): string {
  const number = unit === null ? "a number" : `a number in ${unit}`;
  return plan.many
    ? `numbers${unit === null ? "" : ` in ${unit}`} with a decimal point, parted by semicolons`
    : `${number} with a decimal point`;
}
