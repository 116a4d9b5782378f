import { parse } from "csv-parse/sync";

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

/**
 * Reads CSV text (RFC 4180, with or without a byte-order mark) into rows of named cells. Lines that are empty or start
 * with `#` are skipped. Rows with too few or too many cells, repeated headings and empty headings are listed in
 * `problems` and never repaired.
 */
export function readCsv(text: string, file: string): CsvText {
  const lines = parse(text, {
    bom: true,
    comment: "#",
    comment_no_infix: true,
    trim: true,
    info: true,
    relax_column_count: true,
    skip_empty_lines: true,
  }) as unknown as {
    record: string[];
    info: { lines: number };
  }[];
  if (lines.length === 0)
    return { headings: [], rows: [], problems: [`${file}: expected a heading row, got an empty file`] };
  const headings = lines[0].record;
  const problems: string[] = [];
  headings.forEach((heading, at) => {
    if (heading === "") problems.push(`${file} row 1, column ${at + 1}: expected a heading, got an empty cell`);
    else if (headings.indexOf(heading) < at)
      problems.push(`${file} row 1, column ${heading}: expected each heading once, got it twice`);
  });
  const rows: CsvRow[] = [];
  for (const { record, info } of lines.slice(1)) {
    if (record.length !== headings.length) {
      problems.push(`${file} row ${info.lines}: expected ${headings.length} cells, got ${record.length}`);
      continue;
    }
    rows.push({ row: info.lines, cells: Object.fromEntries(headings.map((heading, at) => [heading, record[at]])) });
  }
  return { headings, rows, problems };
}

/**
 * Reads a cell as a number: digits with a decimal point and an optional sign, nothing else. A decimal comma, a unit or
 * a stray letter is not a number.
 */
export function numberOf(cell: string): number | null {
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(cell) ? Number(cell) : null;
}

/** Throws one error that lists every problem, when there are any. */
export function failAll(problems: readonly string[]): void {
  if (problems.length > 0) throw new RangeError(problems.join("\n"));
}
