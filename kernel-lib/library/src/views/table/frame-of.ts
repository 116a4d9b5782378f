import type { DataFrame } from "danfojs";
import type { Table } from "./table";

/**
 * The table as a danfojs frame, one column a heading, for sorting, grouping and describing. The table itself is not
 * changed. danfojs (half a second to load) is loaded at the first call.
 */
export function frameOf(table: Table): DataFrame {
  const danfo = require("danfojs") as typeof import("danfojs");
  return new danfo.DataFrame(
    table.rows.map((row) => [...row]),
    { columns: table.columns.map((column) => column.heading) },
  );
}
