import type { BenchSheet } from "../../advice/trial/bench-sheet";
import { tableText } from "../table/table-text";

/** A bench sheet as plain text: what is printed, and blanks with their plan. */
export function benchSheetText({ kitchenName, trialIds, rows, cautions }: BenchSheet): string {
  return tableText({
    kind: "table",
    title: `${kitchenName}, bench sheet`,
    columns: [{ heading: "write" }, { heading: "which is" }, ...trialIds.map((heading) => ({ heading }))],
    rows: rows.map(({ heading, hint, cells }) => [
      heading,
      hint,
      ...cells.map(({ printed, plan }) => printed ?? (plan === null ? "________" : `________ (${plan})`)),
    ]),
    notes: cautions,
  });
}
