import { clipped } from "../../../check/check";
import { nearestName } from "../../../check/nearest-name";
import type { Notice } from "../../../check/notice";
import type { Slip } from "../../../check/slip";
import { guessUnits } from "../../../units/columns/guess-units";
import { headingUnit } from "../../../units/columns/heading-unit";
import type { KitchenUnits } from "../../../units/unit-table";
import { LOG_FIELDS, type LogField, type LogName, logHeading } from "../log-fields";
import { knownHeadings } from "./csv-table";
import type { LogLine, LogTable } from "./log-table";
import { type LogHeading, readHeading } from "./read-heading";

/** One column of a log, understood. */
export interface LogColumn {
  readonly at: number;
  readonly heading: string;
  /** `null` for a column that is kept as it is */
  readonly field: LogField | null;
  readonly unit: string | null;
  /** what is wrong with its heading, so that no row which fills it can be taken */
  readonly slip: Slip | null;
}

/** A log with its headings found and understood. */
export interface LogLayout {
  /** `null` in a format without headings */
  readonly headingRow: number | null;
  readonly columns: readonly LogColumn[];
  readonly lines: readonly LogLine[];
  /** rows that are no trials, such as titles and totals */
  readonly aside: readonly number[];
  readonly slips: readonly Slip[];
  readonly notices: readonly Notice[];
  /** whether the file has a heading that is known */
  readonly isLog: boolean;
  /** of the headings that are proposed */
  readonly units: KitchenUnits;
}

/** The most columns that a log may have: our judgement, ten times what a log needs. */
const MOST_COLUMNS = 500;
/** Among how many lines the headings are looked for: our judgement. */
const MOST_ABOVE = 40;

/** The longest cell that may be a unit: our judgement. */
const LONGEST_UNIT = 40;

const TOTALS =
  /^(?:(?:grand |sub)?totals?|sums?|averages?|avg|means?|medians?|counts?|st\.? ?dev\.?|sd|min|max|minimum|maximum)\.?:?$/i;

/**
 * Finds the headings of a log and what each column holds. Lines above the headings, a line of units below them, the
 * headings once more, and lines of totals are no trials; each is named in a notice.
 */
export function layOut(table: LogTable, file: string, ownUnits?: KitchenUnits): LogLayout {
  const slips: Slip[] = [];
  const notices: Notice[] = [];
  const aside: number[] = [];
  const slip = (
    row: number | null,
    at: string | null,
    expected: string,
    got: string | null,
    nearest?: string,
  ): Slip => {
    const one = { file, row, at, expected, got, nearest: nearest ?? null };
    slips.push(one);
    return one;
  };
  const putAside = (row: number, says: string): void => {
    aside.push(row);
    notices.push({ file, row, at: null, kind: "aside", given: null, taken: null, says });
  };
  const top = headingLine(table);
  if (top < 0)
    return { headingRow: 1, columns: [], lines: [], aside, slips, notices, isLog: false, units: ownUnits ?? "metric" };
  const { cells } = table.lines[top];
  const headingRow = table.isFramed ? null : table.lines[top].row;
  for (const line of table.lines.slice(0, top)) putAside(line.row, "stands above the headings, not read");
  const units = ownUnits ?? guessUnits(cells.slice(0, MOST_COLUMNS)).units;
  if (cells.length > MOST_COLUMNS) {
    slip(headingRow, null, `at most ${MOST_COLUMNS} columns`, String(cells.length));
    return { headingRow, columns: [], lines: table.lines.slice(top + 1), aside, slips, notices, isLog: false, units };
  }
  const headings = cells.map((cell) => readHeading(cell.trim(), units));
  const isLog = headings.some(({ field }) => field !== null);
  let below = table.lines.slice(top + 1);
  const unitsBelow = isLog && below.length > 0 ? unitLine(headings, below[0]) : null;
  if (unitsBelow !== null) {
    putAside(below[0].row, "is a row of units below the headings, no trial");
    below = below.slice(1);
  }
  const width = cells.length;
  const lines: LogLine[] = [];
  const isFilled = new Array<boolean>(width).fill(false);
  const idAt = headings.findIndex(({ field }) => field?.name === "trialId");
  const dayAt = headings.findIndex(({ field }) => field?.name === "date");
  const variantAt = headings.findIndex(({ field }) => field?.name === "variantId");
  const at = (line: LogLine, column: number): string => (column < 0 ? "" : (line.cells[column] ?? "").trim());
  for (const line of below) {
    const first = line.cells.findIndex((cell) => cell !== "" && cell.trim() !== "");
    if (first < 0 && line.expected === undefined) continue;
    if (isLog && at(line, dayAt) === "" && at(line, variantAt) === "" && line.expected === undefined) {
      const word = line.cells[first].trim();
      if (TOTALS.test(word) && (at(line, idAt) === "" || first === idAt)) {
        putAside(line.row, "looks like totals or averages, no trial");
        continue;
      }
    }
    if (isLog && isSame(line.cells, cells)) {
      putAside(line.row, "holds the headings once more, no trial");
      continue;
    }
    for (let column = 0; column < Math.min(width, line.cells.length); column++)
      if (!isFilled[column] && line.cells[column] !== "") isFilled[column] = true;
    lines.push(line);
  }
  const columns = columnsOf({ headings, units: unitsBelow, isFilled, headingRow, isLog, slip, proposed: units });
  return { headingRow, columns, lines: fitted(lines, width, headingRow, slip), aside, slips, notices, isLog, units };
}

/** Which line holds the headings: the first of those with most that are known; -1 in a file without a line. */
function headingLine(table: LogTable): number {
  if (table.lines.length === 0) return -1;
  if (table.isFramed) return 0;
  let best = { at: 0, known: 0 };
  for (const [at, { cells }] of table.lines.slice(0, MOST_ABOVE).entries()) {
    const known = knownHeadings(cells);
    if (known > best.known) best = { at, known };
  }
  return best.at;
}

function isSame(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((cell, at) => cell === other[at]);
}

/** The units of a line below the headings; `null` when it is no such line. */
function unitLine(headings: readonly LogHeading[], { cells }: LogLine): readonly (string | null)[] | null {
  if (cells.length > headings.length) return null;
  let lacking = 0;
  const units: (string | null)[] = [];
  for (const [at, cell] of cells.entries()) {
    const { field, unit } = headings[at];
    if (cell.length > LONGEST_UNIT) return null;
    const text = cell
      .trim()
      .replace(/^[([]/, "")
      .replace(/[)\]]$/, "")
      .trim();
    const told = headingUnit(text);
    if (told === null && !/^(?:|[-–—]|id|text|name|0-9|0–9|yes\/no|#|no\.?|y\/n)$/i.test(text)) return null;
    if (told !== null && field !== null && unit === null) lacking++;
    units.push(told);
  }
  return lacking > 0 || units.filter((unit) => unit !== null).length > 1 ? units : null;
}

interface ColumnsOptions {
  readonly headings: readonly LogHeading[];
  readonly units: readonly (string | null)[] | null;
  readonly isFilled: readonly boolean[];
  readonly headingRow: number | null;
  readonly isLog: boolean;
  /** units of the headings that are proposed */
  readonly proposed: KitchenUnits;
  readonly slip: (
    row: number | null,
    at: string | null,
    expected: string,
    got: string | null,
    nearest?: string,
  ) => Slip;
}

function columnsOf({
  headings,
  units,
  isFilled,
  headingRow,
  isLog,
  proposed,
  slip,
}: ColumnsOptions): readonly LogColumn[] {
  const taken = new Map<LogName, number>();
  for (const [at, { field }] of headings.entries())
    if (field !== null && !taken.has(field.name)) taken.set(field.name, at);
  const seen = new Set<string>();
  return headings.map((read, at): LogColumn => {
    const { field, expected } = read;
    const heading = read.heading;
    const place = `column ${clipped(heading === "" ? String(at + 1) : heading)}`;
    const column = { at, heading, field, unit: read.unit };
    const blocked = (expectedHere: string, got: string | null = null, nearest?: string): LogColumn => ({
      ...column,
      slip: slip(headingRow, place, expectedHere, got, nearest),
    });
    if (heading === "") return isFilled[at] ? blocked("a heading", "an empty cell") : { ...column, slip: null };
    const isTwice = seen.has(heading);
    seen.add(heading);
    if (isTwice) return { ...blocked("each heading once", "it twice"), field: null };
    if (field === null) {
      if (!isLog) return blocked(`one of ${LOG_FIELDS.map((one) => logHeading(one, proposed)).join(", ")}`);
      if (heading === "__proto__") return { ...blocked("a heading that is a name"), heading: "" };
      const meant = meantBy(heading, taken, proposed);
      if (meant === null) return { ...column, slip: null };
      taken.set(meant.field.name, at);
      return { ...blocked("a known heading", null, meant.name), field: meant.field, unit: meant.unit };
    }
    if (expected !== null) return blocked(expected);
    const first = taken.get(field.name);
    if (first !== at) return blocked(`one column for ${field.column}, got also ${headings[first as number].heading}`);
    const below = units?.[at] ?? null;
    if (below === null) return { ...column, slip: null };
    if (column.unit !== null && column.unit !== below) return blocked(`one unit, got also ${below} below it`);
    const checked = readHeading(`${heading} (${below})`, proposed);
    if (column.unit === null && checked.expected !== null) return blocked(`${checked.expected}, got ${below} below it`);
    return { ...column, unit: column.unit ?? checked.unit, slip: null };
  });
}

/** The column that a mistyped heading stands for, where no other stands for it. */
function meantBy(
  heading: string,
  taken: ReadonlyMap<LogName, number>,
  units: KitchenUnits,
): { readonly name: string; readonly field: LogField; readonly unit: string | null } | null {
  if (heading.length > 60) return null;
  const ending = headingUnit(heading.slice(heading.lastIndexOf("_") + 1));
  const names = LOG_FIELDS.filter(({ name }) => !taken.has(name)).map((field) => {
    const own = field.kind !== null && ending !== null && readHeading(`${field.column} (${ending})`).unit === ending;
    return {
      field,
      name: own
        ? `${field.column}_${heading.slice(heading.lastIndexOf("_") + 1).toLowerCase()}`
        : logHeading(field, units),
    };
  });
  const nearest = nearestName(
    heading,
    names.map(({ name }) => name),
  );
  const meant = names.find(({ name }) => name === nearest);
  if (meant === undefined || Math.abs(meant.name.length - heading.length) > 2) return null;
  return { ...meant, unit: readHeading(meant.name).unit };
}

/** Lines with as many cells as there are headings; others are marked. */
function fitted(
  lines: readonly LogLine[],
  width: number,
  headingRow: number | null,
  slip: ColumnsOptions["slip"],
): readonly LogLine[] {
  const [first] = lines;
  const isOff = ({ cells, expected }: LogLine): boolean =>
    expected === undefined &&
    (cells.length < width || (cells.length > width && cells.slice(width).some((cell) => cell !== "")));
  if (lines.length > 1 && lines.every(({ cells }) => cells.length === first.cells.length) && lines.some(isOff)) {
    slip(headingRow, null, `as many headings as every row below has cells (${first.cells.length})`, String(width));
    return lines.map(({ row, cells, from, to }) => ({ row, cells, from, to, expected: "", got: "" }));
  }
  return lines.map((line): LogLine => {
    const { row, cells, from, to } = line;
    if (isOff(line)) return { row, cells, from, to, expected: `${width} cells`, got: String(cells.length) };
    return cells.length > width && line.expected === undefined ? { ...line, cells: cells.slice(0, width) } : line;
  });
}
