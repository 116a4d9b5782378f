import { ownMassText } from "../../units/mass-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { BatchFlow } from "../../yield/batch-flow";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { PALETTE } from "../figure/palette";

/**
 * A batch from bowl to plate: a step up for what is put on, a step down for what is lost, and the mass after each stage
 * as a point with ± two standard uncertainties.
 *
 * @param flow from `batchFlow`
 * @param units the kitchen's own; default metric
 */
export function batchFlowFigure(flow: BatchFlow, units: KitchenUnits = "metric"): Figure {
  const { stages } = flow;
  const names = stages.map((one, at) =>
    at === 0 ? one.stage : `${one.stage.replace(/^with /, "")} ${signed(one.changeG, units)}`,
  );
  const first = stages[0];
  const last = stages[stages.length - 1];
  const figure: Figure = {
    kind: "figure",
    data: [
      {
        type: "waterfall",
        name: "change",
        x: names,
        y: stages.map((one, at) => (at === 0 ? one.massG : one.changeG)),
        measure: stages.map((_, at) => (at === 0 ? "absolute" : "relative")),
        increasing: { marker: { color: PALETTE[2] } },
        decreasing: { marker: { color: PALETTE[1] } },
        totals: { marker: { color: PALETTE[0] } },
        connector: { line: { color: "#888", width: 1 } },
        hovertemplate: "%{x}<extra></extra>",
      },
      {
        type: "scatter",
        mode: "markers",
        name: "mass after the stage, ± 2 standard uncertainties",
        x: names,
        y: stages.map((one) => one.massG),
        error_y: { type: "data", array: stages.map((one) => 2 * one.seG), thickness: 1.5, width: 5, color: "#000" },
        marker: { color: "#000", symbol: "diamond", size: 8 },
        hovertemplate: "%{x}: %{y:.0f} g<extra></extra>",
      },
    ],
    layout: houseLayout({
      title: "From bowl to plate",
      xTitle: "stage and what it adds or takes",
      yTitle: "mass of the batch (g)",
      more: {
        yaxis: {
          title: { text: "mass of the batch (g)" },
          rangemode: "tozero",
          automargin: true,
          gridcolor: "#e5e5e5",
        },
      },
    }),
    summary: `${ownMassText(first.massG, units)} of mix gives ${flow.pieces} pieces and ${ownMassText(last.massG, units)} ± ${ownMassText(last.seG, units)} ${last.stage} (${flow.plateOfMixPercent.toFixed(0)} % of the mix): ${stages
      .slice(1)
      .map((one) => `${one.stage} ${signed(one.changeG, units)}`)
      .join(", ")}.`,
  };
  return figureIn(figure, units);
}

function signed(massG: number, units: KitchenUnits): string {
  return `${massG < 0 ? "−" : "+"}${ownMassText(Math.abs(massG), units)}`;
}
