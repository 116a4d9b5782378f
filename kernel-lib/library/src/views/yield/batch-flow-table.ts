import type { KitchenUnits } from "../../units/unit-table";
import type { BatchFlow } from "../../yield/batch-flow";
import type { Table } from "../table/table";
import { tableIn } from "../table/table-in";

/**
 * A batch from bowl to plate, a row a stage.
 *
 * @param flow from `batchFlow`
 * @param units the kitchen's own; default metric
 */
export function batchFlowTable(flow: BatchFlow, units: KitchenUnits = "metric"): Table {
  const table: Table = {
    kind: "table",
    title: `From bowl to plate, ${flow.pieces} pieces`,
    columns: [
      { heading: "stage" },
      { heading: "batch (g)", decimals: 0 },
      { heading: "± (g)", decimals: 0 },
      { heading: "change (g)", decimals: 0 },
      { heading: "a piece (g)", decimals: 1 },
      { heading: "of the mix (%)", decimals: 1 },
    ],
    rows: flow.stages.map((one) => [one.stage, one.massG, one.seG, one.changeG, one.pieceG, one.ofMixPercent]),
    notes: ["±: standard uncertainty, from pickups and yields; weighing and cutting are taken as exact here."],
  };
  return tableIn(table, units);
}
