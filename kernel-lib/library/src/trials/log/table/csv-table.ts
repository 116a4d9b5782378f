import type { Notice } from "../../../check/notice";
import type { LogLine, LogTable } from "./log-table";
import { readHeading } from "./read-heading";

/** What `csvTable` reads. */
export interface CsvTableOptions {
  readonly text: string;
  /** named in notices */
  readonly file: string;
  /** the character that parts cells; found from the headings unless given */
  readonly delimiter?: string;
}

const QUOTE = 34;
/** Among how many lines the headings are looked for: our judgement. */
const MOST_ABOVE = 40;

/**
 * Takes the text of a log apart into lines of cells: parted by commas, semicolons or tabs, whichever shows most headings
 * that are known; any line ends, a byte-order mark or none, cells in quotes as RFC 4180 has them. Lines that are blank or
 * begin with `#` are left out. A quote that stands elsewhere is a character like others: after `9"` reading goes on, and a
 * quote that is opened and never closed ends with its line, which is marked.
 */
export function csvTable(options: CsvTableOptions): LogTable {
  const { file } = options;
  const text = options.text.includes("\n") ? options.text : options.text.replaceAll("\r", "\n");
  const notices: Notice[] = [];
  let from = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  let firstRow = 1;
  const named = /^sep=(.)\r?\n/.exec(text.slice(from, from + 8));
  if (named !== null) {
    from += named[0].length;
    firstRow = 2;
  }
  const delimiter = options.delimiter ?? named?.[1] ?? delimiterOf(text, from);
  const stray = (row: number, cell: number): void => {
    const says = "a quote that encloses no whole cell was taken as a character";
    notices.push({ file, row, at: null, kind: "read", given: `cell ${cell}`, taken: null, says });
  };
  return {
    lines: linesOf({ text, from, firstRow, delimiter, most: Number.POSITIVE_INFINITY, stray }),
    slips: [],
    notices,
    decimalSign: null,
    usualSign: delimiter === "," ? "." : null,
    delimiter,
    isFramed: false,
  };
}

interface ScanOptions {
  readonly text: string;
  readonly from: number;
  readonly firstRow: number;
  readonly delimiter: string;
  /** after how many lines to stop */
  readonly most: number;
  /** is told of each cell, counted from 1, with a quote that is only a character */
  readonly stray?: (row: number, cell: number) => void;
}

function linesOf({ text, from, firstRow, delimiter, most, stray }: ScanOptions): readonly LogLine[] {
  const parting = delimiter.charCodeAt(0);
  const lines: LogLine[] = [];
  let at = from;
  let row = firstRow;
  // each look for a closing quote that finds none costs what it read; together they may cost a few times the text
  let budget = 4 * text.length + 1000;
  let nextParting = -1;
  while (at < text.length && lines.length < most) {
    let lineEnd = indexOrEnd(text, "\n", at);
    const startRow = row;
    const lineStart = at;
    const cells: string[] = [];
    let odd: number[] | null = null;
    let open: string | null = null;
    let bad: string | null = null;
    const begin = skipBlanks(text, at, lineEnd, parting);
    if (text.charCodeAt(begin) === 35 || begin >= lineEnd) {
      at = lineEnd + 1;
      row++;
      continue;
    }
    for (;;) {
      const start = skipBlanks(text, at, lineEnd, parting);
      let isQuoted = false;
      if (start < lineEnd && text.charCodeAt(start) === QUOTE) {
        const cell: QuotedCell | null = budget > 0 ? quotedCell(text, start, parting) : null;
        budget -= cell === null || cell.value === null ? (cell?.looked ?? 0) : 0;
        if (cell !== null && cell.value !== null) {
          isQuoted = true;
          cells.push(cell.value);
          if (cell.end > lineEnd) {
            row += countOf("\n", text, start, cell.end);
            lineEnd = indexOrEnd(text, "\n", cell.end);
          }
          at = cell.end;
        } else if (cell === null || cell.isOpen) open ??= text.slice(start, Math.min(lineEnd, start + 40));
      }
      if (!isQuoted) {
        if (nextParting < at) nextParting = indexOrEnd(text, delimiter, at);
        const end = Math.min(nextParting, lineEnd);
        const cell = text.slice(at, end).trim();
        if (cell.includes('"')) {
          odd ??= [];
          odd.push(cells.length + 1);
        }
        cells.push(cell);
        at = end;
      }
      const value = cells[cells.length - 1];
      if (value.includes("\ufffd") || value.includes("\0")) bad ??= value;
      if (at >= lineEnd) break;
      at++;
      if (at >= lineEnd) {
        cells.push("");
        break;
      }
    }
    const to = text.charCodeAt(lineEnd - 1) === 13 ? lineEnd - 1 : lineEnd;
    const where = { row: startRow, cells, from: lineStart, to };
    if (bad !== null)
      lines.push({
        ...where,
        expected: "UTF-8 text",
        got: "another encoding: save the file as CSV in UTF-8",
      });
    else if (open !== null) {
      const expected = "a quote that ends the cell it begins";
      lines.push({ ...where, expected, got: JSON.stringify(open.trim()) });
    } else {
      lines.push(where);
      for (const cell of odd ?? []) stray?.(startRow, cell);
    }
    at = lineEnd + 1;
    row++;
  }
  return lines;
}

interface QuotedCell {
  /** `null` when the quote encloses no whole cell */
  readonly value: string | null;
  readonly end: number;
  /** whether no quote closes it at all, or only one in a later line */
  readonly isOpen: boolean;
  readonly looked: number;
}

/** The cell whose opening quote stands at `from`: it ends with a quote before a delimiter or the end of a line. */
function quotedCell(text: string, from: number, parting: number): QuotedCell {
  let value = "";
  for (let at = from + 1; ; ) {
    const quote = text.indexOf('"', at);
    if (quote < 0) return { value: null, end: from, isOpen: true, looked: text.length - from };
    value += text.slice(at, quote);
    if (text.charCodeAt(quote + 1) === QUOTE) {
      value += '"';
      at = quote + 2;
      continue;
    }
    let after = quote + 1;
    while (after < text.length && isBlank(text.charCodeAt(after)) && text.charCodeAt(after) !== parting) after++;
    const next = text.charCodeAt(after);
    if (after >= text.length || next === parting || next === 10)
      return { value, end: Math.min(after, text.length), isOpen: false, looked: 0 };
    return { value: null, end: from, isOpen: value.includes("\n"), looked: after - from };
  }
}

function indexOrEnd(text: string, mark: string, from: number): number {
  const at = text.indexOf(mark, from);
  return at < 0 ? text.length : at;
}

function skipBlanks(text: string, from: number, end: number, parting: number): number {
  let at = from;
  while (at < end && text.charCodeAt(at) !== parting && isBlank(text.charCodeAt(at))) at++;
  return at;
}

/** Blanks within a line. */
function isBlank(code: number): boolean {
  return code === 32 || code === 9 || code === 13 || code === 160 || code === 0xfeff;
}

function countOf(mark: string, text: string, from: number, to: number): number {
  let count = 0;
  for (let at = text.indexOf(mark, from); at >= 0 && at < to; at = text.indexOf(mark, at + 1)) count++;
  return count;
}

/** The character that parts the headings: the one by which most of them are known, a comma of equals. */
function delimiterOf(text: string, from: number): string {
  let best = { delimiter: ",", known: 0 };
  const head = text.slice(from, from + 100_000);
  for (const delimiter of [",", ";", "\t"]) {
    const lines = linesOf({ text: head, from: 0, firstRow: 1, delimiter, most: MOST_ABOVE });
    for (const { cells } of lines) {
      const known = knownHeadings(cells);
      if (known > best.known) best = { delimiter, known };
    }
  }
  return best.delimiter;
}

/** How many of the cells are headings that are known. */
export function knownHeadings(cells: readonly string[]): number {
  const fields = new Set(cells.slice(0, 500).map((cell) => readHeading(cell).field?.name));
  fields.delete(undefined);
  return fields.size;
}
