import type { CoatingPlan } from "../../yield/coating-plan";
import type { Table } from "../table/table";

/** How much of each coating layer to put out. */
export function coatingPlanTable(plan: CoatingPlan): Table {
  return {
    kind: "table",
    title: `Coating for ${plan.pieces} pieces of ${plan.formulaId}`,
    columns: [
      { heading: "layer" },
      { heading: "on the pieces (g)", decimals: 0 },
      { heading: "± (g)", decimals: 0 },
      { heading: "drains off (g)", decimals: 0 },
      { heading: "put out (g)", decimals: 0 },
      { heading: "left (g)", decimals: 0 },
      { heading: "made of" },
    ],
    rows: plan.layers.map((layer) => [
      layer.layer,
      layer.onPiecesG,
      layer.onPiecesSeG,
      layer.drainedG,
      layer.putOutG,
      layer.leftG,
      layer.lines.map((line) => `${line.massG.toFixed(0)} g ${line.name}`).join(", "),
    ]),
    notes: [`A coated piece weighs ${plan.coatedPieceG.toFixed(1)} g.`, ...plan.cautions],
  };
}
