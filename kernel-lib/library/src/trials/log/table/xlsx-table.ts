import type { CellObject, WorkBook, WorkSheet } from "xlsx";
import { clipped } from "../../../check/check";
import type { Notice } from "../../../check/notice";
import type { Slip } from "../../../check/slip";
import type { LogLine, LogTable } from "./log-table";
import { unpackedBytes } from "./unpacked-bytes";

/** What `xlsxTable` reads. */
export interface XlsxTableOptions {
  readonly bytes: Uint8Array;
  /** named in notices */
  readonly file: string;
  /** the first unless given */
  readonly sheet?: string;
}

/** How large a workbook may be unpacked (bytes): our judgement, many times what a log of 100,000 rows takes. */
const LARGEST = 600e6;
const MOST_ROWS = 300_000;
const MOST_COLUMNS = 500;

/**
 * Takes a sheet of a workbook (Office Open XML, ISO/IEC 29500) apart into lines of cells. Numbers keep all their digits,
 * formulas the value that was stored with them; days, in both date systems, become `2026-03-14`, and times stand as shown.
 * Merged cells, hidden rows and columns, and other sheets that hold something are named in notices.
 */
export function xlsxTable({ bytes, file, sheet }: XlsxTableOptions): LogTable {
  const slips: Slip[] = [];
  const notices: Notice[] = [];
  const told = (row: number | null, says: string, given: string | null = null): void => {
    notices.push({ file, row, at: null, kind: "read", given, taken: null, says });
  };
  const nothing = (expected: string, got: string | null): LogTable => {
    slips.push({ file, row: null, at: null, expected, got, nearest: null });
    return { lines: [], slips, notices, decimalSign: ".", usualSign: ".", delimiter: null, isFramed: false };
  };
  const size = unpackedBytes(bytes);
  if (size === null)
    return nothing("a workbook that ends in .xlsx", "another kind of file: save it as .xlsx or as CSV");
  if (size > LARGEST)
    return nothing(`a workbook of at most ${LARGEST / 1e6} MB unpacked`, `${Math.round(size / 1e6)} MB`);
  const book = bookOf(bytes);
  if (book === null) return nothing("a workbook that can be opened", "a damaged one");
  const name = sheet ?? book.SheetNames[0];
  const found = book.SheetNames.includes(name) ? book.Sheets[name] : undefined;
  if (found === undefined) return nothing(`one of the sheets ${book.SheetNames.join(", ")}`, JSON.stringify(name));
  for (const other of book.SheetNames)
    if (other !== name && book.Sheets[other]?.["!ref"] !== undefined)
      told(null, "has a sheet that was not read", JSON.stringify(other));
  const isHidden = book.Workbook?.Sheets?.find((one) => one.name === name)?.Hidden;
  if (isHidden !== undefined && isHidden !== 0) told(null, "has a hidden sheet, which was read", JSON.stringify(name));
  const is1904 = book.Workbook?.WBProps?.date1904 === true;
  const { lines, first } = linesOf(found, is1904);
  for (const { s, e } of found["!merges"] ?? [])
    told(s.r + 1, "has merged cells, of which the first alone holds the value", rangeText(s, e));
  for (const [row, info] of (found["!rows"] ?? []).entries())
    if (info?.hidden && lines.some((line) => line.row === row + 1))
      told(row + 1, "is hidden in the sheet, and was read");
  for (const [column, info] of (found["!cols"] ?? []).entries())
    if (info?.hidden && column >= first) told(null, "has a hidden column, which was read", columnLetters(column));
  return { lines, slips, notices, decimalSign: ".", usualSign: ".", delimiter: null, isFramed: false };
}

/** Errors of a sheet by the number that the reader gives for them: those of the older binary files, from memory. */
const ERRORS: ReadonlyMap<number, string> = new Map([
  [0x00, "#NULL!"],
  [0x07, "#DIV/0!"],
  [0x0f, "#VALUE!"],
  [0x17, "#REF!"],
  [0x1d, "#NAME?"],
  [0x24, "#NUM!"],
  [0x2a, "#N/A"],
]);

/** Loaded when the first workbook is read: a tenth of a second. */
function spreadsheets(): typeof import("xlsx") {
  return require("xlsx") as typeof import("xlsx");
}

function bookOf(bytes: Uint8Array): WorkBook | null {
  try {
    return spreadsheets().read(bytes, {
      type: "array",
      dense: true,
      cellNF: true,
      cellText: false,
      cellHTML: false,
      cellStyles: true,
      cellFormula: true,
      sheetRows: MOST_ROWS,
    });
  } catch {
    return null;
  }
}

function linesOf(sheet: WorkSheet, is1904: boolean): { readonly lines: readonly LogLine[]; readonly first: number } {
  const data = (sheet["!data"] ?? []) as readonly (readonly (CellObject | undefined)[] | undefined)[];
  let first = MOST_COLUMNS;
  let width = 0;
  const filled: { readonly row: number; readonly texts: readonly string[] }[] = [];
  for (const [row, cells] of data.entries()) {
    const texts: string[] = [];
    for (const [column, cell] of (cells ?? []).entries()) {
      if (column > MOST_COLUMNS + 1) break;
      const text = cell === undefined || cell === null ? "" : cellText(cell, is1904);
      texts.push(text);
      if (text === "") continue;
      if (column < first) first = column;
      if (column >= width) width = column + 1;
    }
    if (texts.some((text) => text !== "")) filled.push({ row: row + 1, texts });
  }
  const lines = filled.map(({ row, texts }) => {
    const cells = texts.slice(first, width);
    while (cells.length < width - first) cells.push("");
    return { row, cells };
  });
  return { lines, first };
}

function cellText({ t, v, z, f, w }: CellObject, is1904: boolean): string {
  if (v === undefined) return f === undefined ? "" : `=${f}`;
  if (t === "s") return String(v);
  if (t === "b") return v ? "yes" : "no";
  if (t === "e") return ERRORS.get(Number(v)) ?? w ?? "an error of the sheet";
  if (typeof v !== "number") return v instanceof Date ? v.toISOString().slice(0, 10) : String(v);
  const format = typeof z === "string" ? z : "General";
  if (format === "General") return String(v);
  const { SSF } = spreadsheets();
  if (SSF.is_date(format)) return timeText(v, format, is1904);
  if (format.includes("%") && !format.includes('"')) return `${Number((100 * v).toPrecision(12))} %`;
  return String(v);
}

/** A day as `2026-03-14`; a time of a day, or a length of time, as `0:12:30` or `12:30`, the way the sheet shows it. */
function timeText(serial: number, format: string, is1904: boolean): string {
  const plain = format.replace(/"[^"]*"|\\./g, "").toLowerCase();
  const code = spreadsheets().SSF.parse_date_code(serial, { date1904: is1904 });
  const two = (value: number): string => String(value).padStart(2, "0");
  if (!code) return String(serial);
  if (/[yd]/.test(plain)) {
    const day = `${String(code.y).padStart(4, "0")}-${two(code.m)}-${two(code.d)}`;
    return code.H + code.M + code.S > 0 ? `${day} ${two(code.H)}:${two(code.M)}` : day;
  }
  const seconds = Math.round(serial * 86_400);
  const hasHours = plain.includes("h");
  const minutes = Math.floor(seconds / 60);
  if (hasHours && !plain.includes("s") && seconds % 60 === 0) return `${Math.floor(minutes / 60)}:${two(minutes % 60)}`;
  if (hasHours) return `${Math.floor(minutes / 60)}:${two(minutes % 60)}:${two(seconds % 60)}`;
  return `${minutes}:${two(seconds % 60)}`;
}

function rangeText(start: { r: number; c: number }, end: { r: number; c: number }): string {
  return clipped(`${columnLetters(start.c)}${start.r + 1}:${columnLetters(end.c)}${end.r + 1}`);
}

/** A column as spreadsheets name it: `A`, `AB`. */
function columnLetters(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : `${columnLetters(Math.floor(column / 26) - 1)}${last}`;
}
