import { clipped } from "../../check/check";
import { type Notice, noticeLines } from "../../check/notice";
import { type Slip, slipLines } from "../../check/slip";
import type { ReadRecords, Draft as RowDraft } from "../../units/columns/read-records";
import { cellSlip } from "../../units/columns/read-records";
import { type DecimalSign, decimalSign } from "../../units/typed/decimal-sign";
import type { KitchenUnits } from "../../units/unit-table";
import { type Trial, TrialSchema } from "../trial";
import { type CellSays, columnReader, EMPTY_TRIAL, fillDraft, shownCell } from "./cell/fill-draft";
import { type DayOrder, dayOrder } from "./cell/read-day";
import { LOG_FIELDS, type LogName, logHeading } from "./log-fields";
import { doubtsOf } from "./row-doubts";
import { type LogColumn, type LogLayout, layOut } from "./table/lay-out";
import { type LogFormat, type LogLine, logFormat } from "./table/log-table";
import { readTable } from "./table/read-table";

/** How `readTrials` reads, where the log itself does not say. */
export interface ReadTrialsOptions {
  /** by the ending of the file's name unless given; comma-separated when that says nothing */
  readonly format?: LogFormat;
  /** sheet of a workbook; the first unless given */
  readonly sheet?: string;
  /** order of day and month in days such as 11/3/2026; else other days of the file must show it */
  readonly dayOrder?: "d/m/y" | "m/d/y";
  /** decimal sign; else the numbers of the file must show it */
  readonly decimalSign?: DecimalSign;
  /** units of the headings that are proposed; those of most headings of the file unless given */
  readonly units?: KitchenUnits;
  /** today, as `2026-03-14`, against which days are held */
  readonly today?: string;
  /** whether to throw, with every problem, when a row cannot be taken; no unless given */
  readonly strict?: boolean;
}

/** A row that became a trial. */
export interface TakenRow {
  readonly row: number;
  readonly trial: Trial;
  /** what a person should know of it; none for a row that is good */
  readonly notices: readonly Notice[];
}

/** A row that cannot be a trial as it is. */
export interface RefusedRow {
  readonly row: number;
  /** its cells as they stand in the file, by heading */
  readonly cells: Readonly<Record<string, string>>;
  readonly reasons: readonly Slip[];
}

/** The way in which a file writes trials. */
export interface LogDialect {
  readonly format: LogFormat;
  /** headings in their order; none in JSON Lines */
  readonly headings: readonly string[];
  /** what parts the cells of a text; `null` in a workbook and in JSON Lines */
  readonly delimiter: string | null;
  readonly decimalSign: DecimalSign;
}

/** A log row by row: each of its rows is in exactly one of `good`, `kept`, `refused` and `aside`. */
export interface LogRows extends Omit<ReadRecords<Trial>, "problems"> {
  readonly good: readonly TakenRow[];
  /** taken with notices */
  readonly kept: readonly TakenRow[];
  readonly refused: readonly RefusedRow[];
  /** rows that are no trials: titles, units, totals */
  readonly aside: readonly number[];
  /** how the file writes, so that a line can be added in its own way */
  readonly dialect: LogDialect;
  /** of rows and of the whole file, as facts */
  readonly notices: readonly Notice[];
}

/** A log as read, with what is wrong in it and what a person should know of it as sentences. */
export interface ReadLog extends LogRows, ReadRecords<Trial> {
  /** `notices` as sentences; those that are alike in several rows are one */
  readonly noticeLines: readonly string[];
}

const NOTHING: ReadonlySet<never> = new Set();
/** What each row must hold, by field. */
const NEEDED: ReadonlyMap<string, string> = new Map(
  (TrialSchema.safeParse(EMPTY_TRIAL).error?.issues ?? []).map(({ path, message }) => [String(path[0]), message]),
);

/**
 * Reads a trial log: a text, or the bytes of a file, as CSV (parted by commas, semicolons or tabs), as a workbook or as JSON
 * Lines. Headings are those of `LOG_FIELDS`, numbers stand as people type them. No row is lost or quietly changed: each is
 * good, or kept with notices of how it was read and what is unlikely in it, or refused with reasons.
 *
 * @param content text or bytes
 * @param file named in problems and notices; its ending tells the format
 * @returns trials of the rows that are good or kept (`records`), the rows apart, every problem and every notice
 */
export function readTrials(content: string | Uint8Array, file: string, options: ReadTrialsOptions = {}): ReadLog {
  const rows = readLogRows(content, file, options);
  const problems = slipLines(rows.slips);
  if (options.strict === true && problems.length > 0) throw new RangeError(problems.join("\n"));
  return { ...rows, problems, noticeLines: noticeLines(rows.notices) };
}

/** What `readTrials` reads, before it is put into sentences. */
export function readLogRows(content: string | Uint8Array, file: string, options: ReadTrialsOptions = {}): LogRows {
  const format = options.format ?? logFormat(file) ?? "csv";
  const table = readTable(content, { file, format, sheet: options.sheet });
  const layout = layOut(table, file, options.units);
  const notices: Notice[] = [...table.notices, ...layout.notices];
  const slips: Slip[] = [...table.slips, ...layout.slips];
  const columns = layout.columns.map((column) => withUnit(column, layout, file, slips));
  const sign =
    options.decimalSign ?? table.decimalSign ?? decimalSign(layout.lines, numberColumns(layout)) ?? table.usualSign;
  const order = options.dayOrder ?? dayOrderOf(layout);
  const fileNotice = (says: string, at: string | null = null): void => {
    notices.push({
      file,
      row: at === null ? null : layout.headingRow,
      at,
      kind: "read",
      given: null,
      taken: null,
      says,
    });
  };
  if (sign === "," && options.decimalSign === undefined) fileNotice("numbers were read with a decimal comma");
  for (const { heading, field, slip } of columns)
    if (field === null && slip === null && heading !== "")
      fileNotice("is no column that is known, and is kept with its trials as it is", `column ${clipped(heading)}`);

  const absent = absentFields(columns, layout, file, slips);
  const headings = headingsOf(columns);
  const columnOf = new Map(columns.flatMap((column) => (column.field === null ? [] : [[column.field.name, column]])));
  const good: TakenRow[] = [];
  const kept: TakenRow[] = [];
  const refused: RefusedRow[] = [];
  const records: Trial[] = [];
  const rows: number[] = [];
  const drafts: RowDraft<Trial>[] = [];
  const filled = columns.filter(({ heading }) => heading !== "");
  const inOrder = filled.toSorted((a, b) => rank(a) - rank(b)).map((column) => columnReader(column, sign));
  const cellsOf = ({ cells }: LogLine): Readonly<Record<string, string>> => {
    const named: Record<string, string> = {};
    for (const { at, heading } of filled) named[heading] = cells[at] ?? "";
    return named;
  };
  const doubts = doubtsOf(file, options.today);
  let whole = table.slips.length === 0;
  let line: LogLine = { row: 0, cells: [] };
  let reasons: Slip[] | null = null;
  let faulty: Set<keyof Trial & string> | null = null;
  let said: Notice[] | null = null;
  const refuse = (slip: Slip): void => {
    reasons ??= [];
    reasons.push(slip);
  };
  const wrong = (column: LogColumn, expected: string): undefined => {
    faulty ??= new Set();
    for (const field of fieldsOf(column.field?.name as LogName)) faulty.add(field);
    const slip = cellSlip({ file, row: line.row, heading: column.heading, cells: cellsOf(line), expected });
    slips.push(slip);
    refuse(slip);
  };
  const told = ({ column, says, taken, kind = "read" }: CellSays): undefined => {
    const given = shownCell(line.cells[column.at] ?? "");
    said ??= [];
    said.push({ file, row: line.row, at: `column ${column.heading}`, kind, given, taken, says });
  };
  const gaps = new Map<string, readonly number[]>();
  const filling = { draft: { ...EMPTY_TRIAL }, rules: { sign, order, guards: format !== "jsonl" }, gaps, wrong, told };
  // of many thousands of rows few are asked for their cells by name
  const named: object = {
    get cells(): Readonly<Record<string, string>> {
      return cellsOf((this as unknown as { readonly line: LogLine }).line);
    },
  };
  const draftOf = (fields: Partial<Trial>, of: ReadonlySet<keyof Trial & string>): RowDraft<Trial> =>
    ({ __proto__: named, row: line.row, fields, faulty: of, line }) as unknown as RowDraft<Trial>;
  const refusedOf = (because: readonly Slip[]): RefusedRow =>
    ({ __proto__: named, row: line.row, reasons: because, line }) as unknown as RefusedRow;
  for (line of layout.lines) {
    const { row } = line;
    if (line.expected !== undefined || !layout.isLog) {
      const own = line.expected === undefined || line.expected === "" ? [] : [wholeSlip(file, line)];
      for (const slip of own) slips.push(slip);
      refused.push(refusedOf(own.length > 0 ? own : layout.slips));
      whole &&= !layout.isLog;
      continue;
    }
    reasons = null;
    faulty = null;
    said = null;
    gaps.clear();
    filling.draft = { ...EMPTY_TRIAL };
    for (const reader of inOrder) {
      const { column } = reader;
      const raw = line.cells[column.at] ?? "";
      if (raw === "" || raw.trim() === "") continue;
      if (column.slip !== null) {
        refuse(column.slip);
        const { field } = column;
        if (field === null || (field.kind !== null && column.unit === null)) {
          faulty ??= new Set();
          for (const name of field === null ? [] : fieldsOf(field.name)) faulty.add(name);
          continue;
        }
      }
      fillDraft(reader, raw, filling);
    }
    const { draft } = filling;
    const parsed = TrialSchema.safeParse(draft);
    if (!parsed.success) {
      const seen = new Set<string>();
      for (const { path, message } of parsed.error.issues) {
        const name = nameOf(String(path[0] ?? ""));
        if (seen.has(name) || (faulty as Set<string> | null)?.has(fieldsOf(name)[0])) continue;
        seen.add(name);
        const column = columnOf.get(name);
        if (column !== undefined) wrong(column, saidUnder(message, column.unit));
        else refuse(absent(name, message));
      }
    }
    const read = (said as Notice[] | null) ?? NO_NOTICES;
    if (reasons === null && parsed.success) {
      const trial = Object.freeze(parsed.data);
      const doubtful = doubts({ row, trial, cells: line.cells, columnOf });
      const of = doubtful.length === 0 ? read : [...read, ...doubtful];
      for (const notice of of) notices.push(notice);
      (of.length === 0 ? good : kept).push({ row, trial, notices: of });
      records.push(trial);
      rows.push(row);
      drafts.push(draftOf(trial, NOTHING));
      continue;
    }
    for (const notice of read) notices.push(notice);
    refused.push(refusedOf(reasons ?? []));
    const fields = draft as unknown as Partial<Trial>;
    drafts.push(draftOf(fields, faulty ?? NOTHING));
  }
  const { aside } = layout;
  const dialect: LogDialect = {
    format,
    headings: table.isFramed ? [] : columns.map(({ heading }) => heading),
    delimiter: table.delimiter,
    decimalSign: sign ?? ".",
  };
  return {
    records,
    rows,
    slips,
    drafts,
    headings,
    whole,
    good,
    kept,
    refused,
    aside,
    notices,
    dialect,
  };
}

const NO_NOTICES: readonly Notice[] = Object.freeze([]);

/** A message without a question that another unit of the heading would ask, and with a mass in the heading's unit first. */
function saidUnder(message: string, unit: string | null): string {
  const apt = message.replace(/; is this °[CF] under a (°[CF]) heading\?/, (question, heading) =>
    heading === unit ? question : "",
  );
  return unit === "oz" || unit === "lb" ? apt.replace(/, ([\d.]+ g) \(([^)]+)\)$/, ", $2 ($1)") : apt;
}

function wholeSlip(file: string, { row, expected, got }: LogLine): Slip {
  return { file, row, at: null, expected: expected ?? "", got: got ?? null, nearest: null };
}

/** Tasters come after the scores that they gave. */
function rank({ field }: LogColumn): number {
  return field?.name === "tasters" ? 1 : 0;
}

/** The fields of a trial that a column fills. */
function fieldsOf(name: LogName): readonly (keyof Trial & string)[] {
  if (name === "coresC") return ["coreC", "coresC"];
  if (name === "tasters") return ["crispTasters", "brownTasters"];
  return [name];
}

/** The column that fills a field. */
function nameOf(field: string): LogName {
  if (field === "coreC") return "coresC";
  if (field === "crispTasters") return "crispScores";
  return (field === "brownTasters" ? "brownScores" : field) as LogName;
}

/** The heading of each field, or what it would be called. */
function headingsOf(columns: readonly LogColumn[]): Readonly<Record<keyof Trial & string, string>> {
  const headings: Record<string, string> = { extra: "extra" };
  for (const field of LOG_FIELDS) {
    const column = columns.find((one) => one.field?.name === field.name);
    for (const name of fieldsOf(field.name)) headings[name] ??= column?.heading ?? field.column;
  }
  const scores = { crispTasters: headings.crispScores, brownTasters: headings.brownScores };
  return Object.freeze({ ...headings, ...scores }) as unknown as Readonly<Record<keyof Trial & string, string>>;
}

/** A quantity's column without a unit in its heading is good when each of its cells has its own. */
function withUnit(column: LogColumn, layout: LogLayout, file: string, slips: Slip[]): LogColumn {
  const { field, unit, slip, at, heading } = column;
  if (field === null || field.kind === null || unit !== null || slip !== null) return column;
  const isBare = (cell: string): boolean => cell !== "" && !/[a-z°"”″:]/i.test(cell) && /\d/.test(cell);
  const lines = layout.lines.filter(({ cells }) => (cells[at] ?? "") !== "");
  if (lines.length > 0 && !lines.some(({ cells }) => isBare(cells[at]))) return column;
  const expected = `a heading that ends in its unit, such as ${logHeading(field, layout.units)}`;
  const missing = {
    file,
    row: layout.headingRow,
    at: `column ${clipped(heading)}`,
    expected,
    got: null,
    nearest: null,
  };
  slips.push(missing);
  return { ...column, slip: missing };
}

/** The columns by which the decimal sign is told. */
function numberColumns({ columns }: LogLayout): readonly number[] {
  return columns.flatMap(({ at, field }) => {
    const isNumber = field !== null && (field.kind !== null || field.holds === "scores" || field.holds === "share");
    return isNumber ? [at] : [];
  });
}

/** The order of day and month that the heading says, or the days show. */
function dayOrderOf({ columns, lines }: LogLayout): DayOrder {
  const column = columns.find(({ field }) => field?.holds === "day");
  if (column === undefined) return null;
  if (column.unit === "d/m/y" || column.unit === "m/d/y") return column.unit;
  return dayOrder(lines.map(({ cells }) => cells[column.at] ?? ""));
}

/**
 * What is said of a field that rows need and no heading holds: one slip for the file. A heading that is not known takes the
 * place of the only one that is missing.
 */
function absentFields(
  columns: readonly LogColumn[],
  layout: LogLayout,
  file: string,
  slips: Slip[],
): (name: LogName, expected: string) => Slip {
  const known = new Map<LogName, Slip>();
  const unmeant = columns.filter(({ field, heading }) => field === null && heading !== "");
  const has = (name: LogName): boolean => columns.some(({ field }) => field?.name === name);
  const needed = LOG_FIELDS.filter(({ name }) => NEEDED.has(name) && !has(name));
  const isOther = !layout.isLog;
  const absent = (name: LogName, expected: string): Slip => {
    const before = known.get(name);
    if (before !== undefined) return before;
    const field = LOG_FIELDS.find((one) => one.name === name);
    const heading = field === undefined ? name : logHeading(field, layout.units);
    const row = layout.headingRow;
    const isRenamed = unmeant.length === 1 && needed.length === 1 && needed[0].name === name;
    const slip: Slip = isRenamed
      ? {
          file,
          row,
          at: `column ${clipped(unmeant[0].heading)}`,
          expected: `${heading}, which is missing`,
          got: null,
          nearest: null,
        }
      : { file, row, at: null, expected: `a column ${heading} (${expected})`, got: "none", nearest: null };
    known.set(name, slip);
    slips.push(slip);
    return slip;
  };
  if (!isOther)
    // probes or else the batch mass: one of them will do
    for (const { name } of needed) if (name !== "probesMm" || !has("batchG")) absent(name, NEEDED.get(name) as string);
  return absent;
}
