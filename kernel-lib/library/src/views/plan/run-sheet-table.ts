import type { RunSheet } from "../../advice/run-sheet/run-sheet";
import type { Table } from "../table/table";

/**
 * The trials of a run sheet in their turn.
 *
 * @param session one morning alone; all of them unless given
 */
export function runSheetTable({ name, kitchenName, lines, cautions }: RunSheet, session?: number): Table {
  const mornings = new Set(lines.map((line) => line.session));
  const isWhole = session === undefined;
  const shown = lines.filter((line) => isWhole || line.session === session);
  const orNone = (text: string): string | null => (text === "" ? null : text);
  return {
    kind: "table",
    title: `${kitchenName}, plan ${name}${isWhole || mornings.size === 1 ? "" : `, morning ${session}`}`,
    columns: [
      { heading: "turn", decimals: 0 },
      ...(isWhole ? [{ heading: "morning", decimals: 0 }] : []),
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
      ...(isWhole ? [line.session] : []),
      line.trialId,
      line.variantName,
      line.batch,
      orNone(line.cut),
      line.setting,
      orNone(line.times),
      orNone(line.purpose),
    ]),
    notes: cautions,
  };
}
