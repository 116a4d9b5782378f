import { type DecimalSign, decimalSign } from "../../units/typed/decimal-sign";
import { type LogColumn, layOut } from "./table/lay-out";
import { type LogFormat, type LogLine, logFormat } from "./table/log-table";
import { readTable } from "./table/read-table";

/** How a log that is kept as text is laid out: what a new line must know to be one of its lines. */
export interface LogShape {
  readonly file: string;
  readonly format: Exclude<LogFormat, "xlsx">;
  /** in their order; none of JSON Lines, which name each value */
  readonly columns: readonly LogColumn[];
  readonly headingRow: number | null;
  readonly delimiter: "," | ";" | "\t";
  readonly sign: DecimalSign;
  /** rows of cells below the headings, with what row of the file each ends in */
  readonly lines: readonly LogLine[];
}

/**
 * The shape of a log, from its text. Throws, in a sentence, for a workbook, to whose end no line can be put.
 */
export function logShape(text: string, file: string): LogShape {
  const format = logFormat(file) ?? "csv";
  if (format === "xlsx")
    throw new RangeError(
      `${file} is a workbook, which is read and not written: save it as CSV, or log into another file`,
    );
  const table = readTable(text, { file, format });
  const { columns, headingRow, lines } = layOut(table, file);
  const numbers = columns.filter(
    ({ field }) => field !== null && (field.kind !== null || field.holds === "scores" || field.holds === "share"),
  );
  const told =
    table.decimalSign ??
    decimalSign(
      lines,
      numbers.map(({ at }) => at),
    );
  return Object.freeze({
    file,
    format,
    columns: format === "jsonl" ? [] : columns,
    headingRow,
    delimiter: (table.delimiter ?? ",") as LogShape["delimiter"],
    sign: told ?? table.usualSign ?? ".",
    lines,
  });
}
