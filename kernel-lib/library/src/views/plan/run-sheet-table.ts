import type { RunSheet } from "../../advice/run-sheet/run-sheet";
import type { Table } from "../table/table";

/**
 * The trials of a run sheet in their turn.
 *
 * @param session one morning alone; all of them unless given
 */
export function runSheetTable({ name, kitchenName, lines, cautions }: RunSheet, session?: number): Table {
  const mornings = new Set(lines.map((line) => line.session));
  const shown = lines.filter((line) => session === undefined || line.session === session);
  return {
    kind: "table",
    title: `${kitchenName}, plan ${name}${session === undefined || mornings.size === 1 ? "" : `, morning ${session}`}`,
    columns: [
      { heading: "turn", decimals: 0 },
      { heading: "morning", decimals: 0 },
      { heading: "trial" },
      { heading: "product" },
      { heading: "batch" },
      { heading: "slab and cut" },
      { heading: "setting" },
      { heading: "when" },
      { heading: "what for" },
    ],
    rows: shown.map((line) => [
      line.run,
      line.session,
      line.trialId,
      line.variantName,
      line.batch,
      line.cut === "" ? null : line.cut,
      line.setting,
      line.times === "" ? null : line.times,
      line.purpose === "" ? null : line.purpose,
    ]),
    notes: cautions,
  };
}
