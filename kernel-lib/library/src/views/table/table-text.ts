import { largestOf } from "../../statistics/extremes";
import { formatCell } from "./format-cell";
import type { Table } from "./table";

/** A table as aligned plain text, for a terminal: numbers to the right, words to the left, notes below. */
export function tableText(table: Table): string {
  const cells = table.rows.map((row) => row.map((cell, at) => formatCell(cell, table.columns[at])));
  const headings = table.columns.map((column) => column.heading);
  const widths = headings.map((heading, at) => Math.max(heading.length, largestOf(cells.map((row) => row[at].length))));
  const toRight = headings.map((_, at) => table.rows.some((row) => typeof row[at] === "number"));
  const line = (row: readonly string[]): string =>
    row
      .map((cell, at) => (toRight[at] ? cell.padStart(widths[at]) : cell.padEnd(widths[at])))
      .join("  ")
      .trimEnd();
  return [
    table.title,
    "",
    line(headings),
    widths.map((width) => "-".repeat(width)).join("  "),
    ...cells.map(line),
    ...(table.notes.length > 0 ? ["", ...table.notes] : []),
  ].join("\n");
}
