import type { ReadingRow } from "../../trials/questions/reading-rows";
import type { KitchenUnits } from "../../units/unit-table";
import type { Table } from "../table/table";
import { ownNumber } from "./own-number";

/**
 * Readings in the log's long form, a row each: what a pivot table or another program takes.
 *
 * @param rows from `readingRows`, or some of them
 * @param units the kitchen's own
 */
export function readingsTable(rows: readonly ReadingRow[], units: KitchenUnits): Table {
  return {
    kind: "table",
    title: "Readings, one a row",
    columns: [
      { heading: "trial" },
      { heading: "product" },
      { heading: "session" },
      { heading: "reading" },
      { heading: "number", decimals: 0 },
      { heading: "value" },
      { heading: "unit" },
      { heading: "taster" },
    ],
    rows: rows.map(({ trialId, variantId, session, what, unit, number, value, taster }) => {
      const own = ownNumber(unit, units);
      return [trialId, variantId, session, what, number, own.of(value), own.unit, taster];
    }),
    notes: [],
  };
}
