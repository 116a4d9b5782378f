import type { Notice } from "../../../check/notice";
import { csvTable } from "./csv-table";
import { jsonlTable } from "./jsonl-table";
import type { LogFormat, LogTable } from "./log-table";
import { xlsxTable } from "./xlsx-table";

/** What `readTable` reads by. */
export interface ReadTableOptions {
  readonly file: string;
  readonly format: LogFormat;
  /** sheet of a workbook; the first unless given */
  readonly sheet?: string;
}

/** Takes a log apart into lines of cells, by its format. */
export function readTable(content: string | Uint8Array, options: ReadTableOptions): LogTable {
  const { file, format, sheet } = options;
  if (format === "xlsx") {
    const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
    return xlsxTable({ bytes, file, sheet });
  }
  const notices: Notice[] = [];
  const text = typeof content === "string" ? content : textOf(content, file, notices);
  const table = format === "jsonl" ? jsonlTable(text) : csvTable({ text, file });
  return { ...table, notices: [...notices, ...table.notices] };
}

/** The text of a file: UTF-8, UTF-16 with its mark, or else what a spreadsheet program on Windows writes. */
function textOf(bytes: Uint8Array, file: string, notices: Notice[]): string {
  const mark =
    bytes[0] === 0xff && bytes[1] === 0xfe ? "utf-16le" : bytes[0] === 0xfe && bytes[1] === 0xff ? "utf-16be" : null;
  if (mark !== null) return new TextDecoder(mark).decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    const says = "is no UTF-8 text, and was read as windows-1252";
    notices.push({ file, row: null, at: null, kind: "read", given: null, taken: null, says });
    return new TextDecoder("windows-1252").decode(bytes);
  }
}
