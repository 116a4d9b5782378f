import { clipped } from "./check";
import { type CsvLineOptions, eachCsvLine } from "./each-csv-line";
import type { Notice } from "./notice";
import type { Slip } from "./slip";

/** One data row of a CSV file. */
export interface CsvRow {
  /** row in the file as an editor or a spreadsheet counts it */
  readonly row: number;
  /** heading to cell, cells trimmed; an empty cell is `""` */
  readonly cells: Readonly<Record<string, string>>;
}

/** The headings and rows of a CSV file, with every slip of its shape. */
export interface CsvText {
  /** none when the file could not be taken apart into columns */
  readonly headings: readonly string[];
  /** row that the headings stand in: 1, unless lines that are skipped stand above */
  readonly headingRow: number;
  readonly rows: readonly CsvRow[];
  readonly slips: readonly Slip[];
  /** whether every row that holds something is among `rows` */
  readonly whole: boolean;
  /** rows that end before the last heading */
  readonly notices: readonly Notice[];
}

/** The most columns that a file may have: our judgement, ten times what any file of a kitchen needs. */
export const MOST_COLUMNS = 500;

/** How many rows may end before the last heading: our judgement, many more than anybody types. */
const MOST_SHORT = 2000;

/** The most problems that one error lists: our judgement; the others are counted. */
const MOST_LISTED = 1000;

/**
 * Reads CSV text (RFC 4180, with or without a byte-order mark) into rows of named cells. Lines that are empty or start
 * with `#` are skipped. What is wrong with the file's shape is listed in `slips`, one slip of the writer's once, and never
 * repaired: cells too many, headings that are empty above cells that are not or stand twice, another separator, quotes that do
 * not fit. A row that ends before the last heading is read, the rest of it empty, with a notice; rows of empty cells are skipped.
 */
export function readCsv(text: string, file: string): CsvText {
  const table = csvTable(text, file, { comment: "#", takesShort: true });
  const { headings, headingRow, rows } = table;
  const slips = [...table.slips];
  // a spreadsheet program saves columns that were touched once
  const isFilled = rows.some(({ cells }) => (cells[""] ?? "") !== "");
  const empty = isFilled ? headings.flatMap((name, at) => (name === "" ? [at + 1] : [])) : [];
  if (empty.length > 0) {
    const isRun = empty.length > 1 && empty.length === empty[empty.length - 1] - empty[0] + 1;
    const at = isRun ? `columns ${empty[0]} to ${empty.at(-1)}` : `column ${empty.join(", ")}`;
    slips.push({ file, row: headingRow, at, expected: "a heading", got: "an empty cell", nearest: null });
  }
  const seen = new Set<string>();
  for (const name of headings) {
    const at = `column ${clipped(name)}`;
    if (name !== "" && seen.has(name))
      slips.push({ file, row: headingRow, at, expected: "each heading once", got: "it twice", nearest: null });
    seen.add(name);
  }
  return { ...table, slips };
}

/** How `csvTable` reads. */
export interface CsvTableOptions extends Omit<CsvLineOptions, "take"> {
  /** whether a row that ends before the last heading is read, the rest of it empty; no unless given */
  readonly takesShort?: boolean;
}

/** As `readCsv`, by other conventions, and with headings taken as they are: of equal ones the last names its cells. */
export function csvTable(text: string, file: string, options: CsvTableOptions): CsvText {
  const { takesShort = false, ...conventions } = options;
  const slips: Slip[] = [];
  const slip = (row: number | null, expected: string, got: string | null): void => {
    slips.push({ file, row, at: null, expected, got, nearest: null });
  };
  const unreadable = (): CsvText => ({ headings: [], headingRow: 1, rows: [], slips, whole: false, notices: [] });
  text.split("\n").forEach((line, at) => {
    if (/[\ufffd\0]/.test(line)) slip(at + 1, "UTF-8 text", "another encoding: save the file as CSV in UTF-8");
  });
  if (text.includes("\0")) return unreadable();
  const lines: { readonly cells: readonly string[]; readonly row: number }[] = [];
  const take = (cells: readonly string[], row: number): void => {
    if (cells.some((cell) => cell !== "")) lines.push({ cells, row });
  };
  const stop = eachCsvLine(text, { ...conventions, take });
  if (stop) slip(stop.row, stop.expected, null);
  if (lines.length === 0) {
    if (slips.length === 0) slip(null, "a heading row", "an empty file");
    return unreadable();
  }
  const [{ cells: headings, row: headingRow }, ...below] = lines;
  const separator = headings.length > 1 ? null : (/[;\t]/.exec(headings[0])?.[0] ?? null);
  if (separator !== null && (conventions.delimiter ?? ",") === ",") {
    const name = separator === ";" ? "semicolons" : "tabs";
    slip(headingRow, "headings and cells parted by commas", `${name}: save the file as CSV with commas`);
    return unreadable();
  }
  if (headings.length > MOST_COLUMNS) {
    slip(headingRow, `at most ${MOST_COLUMNS} columns`, String(headings.length));
    return unreadable();
  }
  const counts = new Set(below.map(({ cells }) => cells.length));
  const [count] = counts;
  if (below.length > 1 && counts.size === 1 && count !== headings.length && !(takesShort && count < headings.length)) {
    slip(headingRow, `as many headings as every row below has cells (${count})`, String(headings.length));
    return unreadable();
  }
  const rows: CsvRow[] = [];
  const notices: Notice[] = [];
  for (const { cells, row } of below) {
    const isShort = takesShort && cells.length < headings.length && cells.length > 1 && notices.length < MOST_SHORT;
    if (isShort) {
      const says = `ends after ${cells.length} of ${headings.length} cells; the others were taken as empty`;
      notices.push({ file, row, at: null, kind: "read", given: null, taken: null, says });
    }
    if (cells.length !== headings.length && !isShort) slip(row, `${headings.length} cells`, String(cells.length));
    else rows.push({ row, cells: Object.fromEntries(headings.map((name, at) => [name, cells[at] ?? ""])) });
  }
  return { headings, headingRow, rows, slips, whole: stop === null && rows.length === below.length, notices };
}

/**
 * Reads a cell as a number: digits with a decimal point and an optional sign, nothing else. A decimal comma, a unit or
 * a stray letter is not a number.
 */
export function numberOf(cell: string): number | null {
  return /^[+-]?(\d+(\.\d*)?|\.\d+)(e[+-]?\d+)?$/i.test(cell) ? Number(cell) : null;
}

/** Throws one error that lists every problem, when there are any; of many thousands the first and how many more. */
export function failAll(problems: readonly string[]): void {
  if (problems.length === 0) return;
  const more = problems.length - MOST_LISTED;
  const listed = more > 0 ? [...problems.slice(0, MOST_LISTED), `and ${more} problems more`] : problems;
  throw new RangeError(listed.join("\n"));
}
