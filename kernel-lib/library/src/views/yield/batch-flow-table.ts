import type { BatchFlow } from "../../yield/batch-flow";
import type { Table } from "../table/table";

/** A batch from bowl to plate, a row a stage. */
export function batchFlowTable(flow: BatchFlow): Table {
  return {
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
}
