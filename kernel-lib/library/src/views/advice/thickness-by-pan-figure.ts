import type { Decision } from "../../advice/window/decide";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE } from "../figure/palette";

/**
 * Slab thickness that each variant's whole batch makes on each pan, over a grey bar of the thicknesses that were tried:
 * a mark right of its bar is a slab nobody has reheated yet.
 *
 * @param decisions from `decide`
 *
 * @example
 * thicknessByPanFigure(decide({ kitchen: loadKitchen() })).data.length; // → 6
 */
export function thicknessByPanFigure(decisions: readonly Decision[]): Figure {
  const placed = decisions.filter((decision) => decision.outcome !== null);
  const variants = [
    ...new Map(placed.map((decision) => [decision.variantName, decision.triedMm ?? ([0, 0] as const)])),
  ];
  const pans = [...new Set(placed.map((decision) => decision.panName))];
  const tried = {
    type: "bar",
    orientation: "h",
    name: "thicknesses tried",
    y: variants.map(([name]) => name),
    base: variants.map(([, [thinnest]]) => thinnest),
    x: variants.map(([, [thinnest, thickest]]) => thickest - thinnest),
    width: 0.5,
    marker: { color: "#d9d9d9" },
    hovertemplate: "tried %{base:.1f} mm to %{x:.1f} mm<extra></extra>",
  };
  const marks = pans.map((pan, at) => {
    const on = placed.filter((decision) => decision.panName === pan);
    return {
      type: "scatter",
      mode: "markers",
      name: pan,
      x: on.map((decision) => decision.outcome?.slab.thicknessMm),
      y: on.map((decision) => decision.variantName),
      text: on.map((decision) => decision.verdict),
      marker: {
        color: PALETTE[at % PALETTE.length],
        symbol: MARKERS[at % MARKERS.length],
        size: 11,
        line: { width: 1, color: "#fff" },
      },
      hovertemplate: `${pan}: %{x:.1f} mm<br>%{text}<extra></extra>`,
    };
  });
  const outside = placed.filter(
    ({ outcome, triedMm }) => triedMm === null || (outcome?.slab.thicknessMm as number) > triedMm[1],
  );
  const figure: Figure = {
    kind: "figure",
    data: [tried, ...marks],
    layout: houseLayout({
      title: "Slab thickness of a whole batch, by variant and pan",
      xTitle: "slab thickness (mm)",
      yTitle: "",
      more: { barmode: "overlay", hovermode: "closest", height: 130 + 64 * variants.length },
    }),
    summary:
      `Slab thickness of a whole batch on ${pans.length} pans: ${outside.length} of ${placed.length} are thicker than what was tried` +
      `${outside.length === 0 ? "" : ` (${outside.map(({ variantName, panName }) => `${variantName} on ${panName}`).join("; ")})`}.`,
  };
  return figureIn(figure, decisions.some((decision) => decision.units === "us") ? "us" : "metric");
}
