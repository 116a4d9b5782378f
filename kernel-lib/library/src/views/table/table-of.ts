import type { DataFrame } from "danfojs";
import type { Column, Table } from "./table";

/**
 * A danfojs frame as a table that `show` renders, after sorting, filtering or grouping it: the way back from `frameOf`.
 *
 * @param frame its column names become the headings
 * @param title printed above the table
 * @param columns how to print them, by heading; left out, numbers print with up to four significant digits
 */
export function tableOf(frame: DataFrame, title: string, columns: readonly Column[] = []): Table {
  return {
    kind: "table",
    title,
    columns: frame.columns.map((heading) => columns.find((column) => column.heading === heading) ?? { heading }),
    rows: (frame.values as (string | number | boolean | null | undefined)[][]).map((row) =>
      row.map((cell) =>
        typeof cell === "number" || typeof cell === "string" ? cell : cell == null ? null : String(cell),
      ),
    ),
    notes: [],
  };
}
