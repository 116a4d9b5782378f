import type { Notice } from "../../../check/notice";
import type { Slip } from "../../../check/slip";

/** The formats that a log may be kept in. */
export type LogFormat = "csv" | "tsv" | "xlsx" | "jsonl";

/** One line of a log, taken apart into cells but not yet understood. */
export interface LogLine {
  /** row or line in the file, as an editor or a spreadsheet counts it */
  readonly row: number;
  readonly cells: readonly string[];
  /** where it stands in the text, from and to, without its line end; for lines of a text alone */
  readonly from?: number;
  readonly to?: number;
  /** what is wrong with the line as a whole, so that its cells cannot be trusted */
  readonly expected?: string;
  readonly got?: string;
}

/** A log as lines of cells, whatever format it came in. */
export interface LogTable {
  readonly lines: readonly LogLine[];
  /** what no line can be blamed for */
  readonly slips: readonly Slip[];
  readonly notices: readonly Notice[];
  /** the decimal sign that the format itself has; `null` where the cells tell */
  readonly decimalSign: "." | null;
  /** what is taken where no cell tells */
  readonly usualSign: "." | null;
  /** what parts its cells; `null` in a workbook and in JSON Lines */
  readonly delimiter: string | null;
  /** whether the headings stand in the first line and every line has their width */
  readonly isFramed: boolean;
}

/** The format of a log by the ending of its name, whatever its capitals; `null` for a name that ends otherwise. */
export function logFormat(file: string): LogFormat | null {
  const ending = /\.(csv|tsv|xlsx|jsonl)$/i.exec(file)?.[1].toLowerCase();
  return (ending as LogFormat | undefined) ?? null;
}
