import { clipped } from "./check";
import { type CsvLineOptions, eachCsvLine } from "./each-csv-line";

/** One data row of a CSV file. */
export interface CsvRow {
  /** row in the file as an editor or a spreadsheet counts it: the heading is row 1 */
  readonly row: number;
  /** heading to cell, cells trimmed; an empty cell is `""` */
  readonly cells: Readonly<Record<string, string>>;
}

/** The headings and rows of a CSV file, with every problem of its shape. */
export interface CsvText {
  readonly headings: readonly string[];
  readonly rows: readonly CsvRow[];
  /** one sentence a problem, naming file, row and column */
  readonly problems: readonly string[];
}

/** The most columns that a file may have: our judgement, ten times what any file of a kitchen needs. */
export const MOST_COLUMNS = 500;

/** The most problems that one error lists: our judgement; the others are counted. */
const MOST_LISTED = 1000;

/**
 * Reads CSV text (RFC 4180, with or without a byte-order mark) into rows of named cells. Lines that are empty or start
 * with `#` are skipped. Rows with too few or too many cells, repeated headings and empty headings are listed in
 * `problems` and never repaired.
 */
export function readCsv(text: string, file: string): CsvText {
  const { headings, rows, problems } = csvTable(text, file, { comment: "#" });
  const ofHeadings: string[] = [];
  const seen = new Set<string>();
  headings.forEach((heading, at) => {
    if (heading === "") ofHeadings.push(`${file} row 1, column ${at + 1}: expected a heading, got an empty cell`);
    else if (seen.has(heading))
      ofHeadings.push(`${file} row 1, column ${clipped(heading)}: expected each heading once, got it twice`);
    seen.add(heading);
  });
  return { headings, rows, problems: ofHeadings.concat(problems) };
}

/** As `readCsv`, by other conventions, and with headings taken as they are: of equal ones the last names its cells. */
export function csvTable(text: string, file: string, conventions: Omit<CsvLineOptions, "take">): CsvText {
  let headings: readonly string[] | null = null;
  const rows: CsvRow[] = [];
  const problems: string[] = [];
  const take = (cells: readonly string[], row: number): void => {
    if (headings === null) {
      headings = cells.slice(0, MOST_COLUMNS);
      if (cells.length > MOST_COLUMNS)
        problems.push(`${file} row ${row}: expected at most ${MOST_COLUMNS} columns, got ${cells.length}`);
    } else if (cells.length !== headings.length)
      problems.push(`${file} row ${row}: expected ${headings.length} cells, got ${cells.length}`);
    else rows.push({ row, cells: Object.fromEntries(headings.map((heading, at) => [heading, cells[at]])) });
  };
  const stop = eachCsvLine(text, { ...conventions, take });
  if (stop) problems.push(`${file} row ${stop.row}: expected ${stop.expected}`);
  else if (headings === null) problems.push(`${file}: expected a heading row, got an empty file`);
  return { headings: headings ?? [], rows, problems };
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
