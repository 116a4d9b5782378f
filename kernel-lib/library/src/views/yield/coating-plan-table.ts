import { massText, ownMassText } from "../../units/mass-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { CoatingPlan } from "../../yield/coating-plan";
import type { Table } from "../table/table";
import { tableIn } from "../table/table-in";

/**
 * How much of each coating layer to put out.
 *
 * @param plan from `coatingPlan`
 * @param units the kitchen's own; default metric
 *
 * @example
 * const kitchen = loadKitchen();
 * const totals = formulaTotals(variantOf(kitchen, "beet-lentil").formula, kitchen.ingredients);
 * coatingPlanTable(coatingPlan({ totals, pieces: 60, pieceG: 24 })).rows.length; // → 1
 */
export function coatingPlanTable(plan: CoatingPlan, units: KitchenUnits = "metric"): Table {
  const table: Table = {
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
      layer.lines
        .map((line) => `${units === "us" ? massText(line.massG, units) : `${line.massG.toFixed(0)} g`} ${line.name}`)
        .join(", "),
    ]),
    notes: [`A coated piece weighs ${ownMassText(plan.coatedPieceG, units)}.`, ...plan.cautions],
  };
  return tableIn(table, units);
}
