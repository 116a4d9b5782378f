import type { z } from "zod";
import { clipped } from "../../check/check";
import { type CsvText, readCsv } from "../../check/csv";
import type { Notice } from "../../check/notice";
import { type Slip, slipLines } from "../../check/slip";
import type { KitchenUnits } from "../unit-table";
import type { ColumnPlan, ColumnPlans } from "./column-plan";
import { guessUnits } from "./guess-units";
import { headingIn } from "./heading-in";
import { type MatchedColumns, matchColumns } from "./match-columns";
import { readCell } from "./read-cell";

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
  /** how cells were read, where that is not plain, and what stands for those that are empty */
  readonly notices: readonly Notice[];
}

/** What the reader of a file is told of the kitchen. */
export interface FileUnits {
  /** units of the headings that are proposed; those of most headings of the file unless given */
  readonly units?: KitchenUnits;
}

/** What `readRecords` works from. */
export interface ReadRecordsOptions<T> extends FileUnits {
  readonly text: string;
  /** as errors name it */
  readonly file: string;
  readonly plans: ColumnPlans<T>;
  /** its messages say what was expected, as in `"a setpoint of 100 to 290 °C"` */
  readonly schema: z.ZodType<T>;
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
 * Reads a CSV file into records: takes each heading apart into name and unit, reads every number as people type it (`17 1/4`,
 * `2 lb 10 oz`, `390 F`) once into kitchen units, and checks each record against its schema. An empty cell is what its plan
 * says, else `null`, or an empty array where a cell may hold several values. Every problem names file, row, column, value and
 * what was expected; a column that is missing, or goes by another name, is one problem and not one a row. After 200,000 of
 * them reading stops.
 */
export function readRecords<T>(options: ReadRecordsOptions<T>): ReadRecords<T> {
  const { text, file, plans, schema } = options;
  const csv = readCsv(text, file);
  const fields = Object.entries(plans) as [keyof T & string, ColumnPlan][];
  const units = options.units ?? guessUnits(csv.headings).units;
  const { headingOf, strange } = matchColumns({ headings: csv.headings, plans, units, rows: csv.rows });
  const headings = Object.fromEntries(
    fields.map(([field, plan]) => [field, headingOf[field]?.heading ?? plan.column]),
  ) as Record<keyof T & string, string>;
  const slips: Slip[] = [];
  const notices: Notice[] = [];
  const told = (
    row: number,
    field: keyof T & string,
    given: string | null,
    says: string,
    taken: string | null,
  ): void => {
    notices.push({ file, row, at: `column ${headings[field]}`, kind: "read", given, taken, says });
  };
  const absent = new Map<keyof T & string, string>();
  const missing = (field: keyof T & string, expected: string): void => {
    if (!absent.has(field)) absent.set(field, expected);
  };

  const records: T[] = [];
  const rows: number[] = [];
  const drafts: Draft<T>[] = [];
  const nothing: Record<string, unknown> = {};
  for (const [field, plan] of fields) nothing[field] = plan.many ? [] : (plan.whenEmpty?.value(nothing) ?? null);
  for (const { field, expected } of issuesOf<T>(schema.safeParse(nothing).error))
    if (headingOf[field] === undefined && plans[field].whenEmpty === undefined) missing(field, expected);
  const isMissing = new Set(
    strange.flatMap(({ field, unit }) => (field !== null && unit === undefined ? [field] : [])),
  );
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
      const read: unknown[] = [];
      for (const value of values) {
        const one = readCell(value, plan, found?.unit ?? null);
        if ("expected" in one) problem(field, one.expected);
        else if (one.value !== null) read.push(one.value);
        if ("says" in one && one.says !== null) told(row, field, clipped(JSON.stringify(value)), one.says, one.taken);
      }
      if (faulty.has(field)) continue;
      if (plan.many) draft[field] = read;
      else if (read.length > 0 || plan.whenEmpty === undefined) draft[field] = read[0] ?? null;
      else {
        draft[field] = plan.whenEmpty.value(draft);
        const { says } = plan.whenEmpty;
        if (says === undefined || isMissing.has(field)) continue;
        if (found !== undefined) told(row, field, null, `is empty: ${says}`, null);
        else if (drafts.length === 0)
          notices.push({
            file,
            row: csv.headingRow,
            at: null,
            kind: "read",
            given: null,
            taken: null,
            says: `has no column ${headingIn(plan, units)}: ${says}`,
          });
      }
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
  const ofHeadings =
    csv.headings.length > 0 ? headingSlips({ csv, file, plans, units, headingOf, strange, absent }) : [];
  const all = [...csv.slips, ...ofHeadings, ...slips];
  const whole = csv.whole && isRead;
  return {
    records,
    rows,
    problems: slipLines(all),
    slips: all,
    drafts,
    headings,
    whole,
    notices: [...csv.notices, ...notices],
  };
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

/** What `headingSlips` works from; `absent` are the fields that rows need and no heading holds. */
interface HeadingSlipsOptions<T> extends MatchedColumns<T> {
  readonly csv: CsvText;
  readonly file: string;
  readonly plans: ColumnPlans<T>;
  readonly units: KitchenUnits;
  readonly absent: ReadonlyMap<keyof T & string, string>;
}

/** What is wrong with the headings of a file. */
function headingSlips<T>(options: HeadingSlipsOptions<T>): readonly Slip[] {
  const { csv, file, plans, units, headingOf, strange, absent } = options;
  // of a file without one heading that is known, nothing is missing: it is another file
  const isOther = Object.keys(headingOf).length === 0;
  const meant = new Set(strange.map(({ field }) => field));
  const missing = isOther ? [] : [...absent].filter(([field]) => !meant.has(field));
  const unmeant = strange.filter(({ field }) => field === null);
  // one strange heading and one that is missing: it was given another name
  const renamed = unmeant.length === 1 && missing.length === 1 ? headingIn(plans[missing[0][0]], units) : null;
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
    const wanted = `a column ${headingIn(plans[field], units)} (${expected})`;
    return { file, row, at: null, expected: wanted, got: "none", nearest: null };
  });
  return slips.concat(absences);
}
