import type { ToTell, TrialsToTell } from "../../advice/tell/trials-to-tell";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE, translucent } from "../figure/palette";

/**
 * Chance of seeing a difference against trials of each variant, side by side, a line a quantity with what the doubt of its scatter
 * leaves; the chance that was asked for is dotted.
 *
 * @example
 * trialsToTellFigure(trialsToTell({ kitchen: loadKitchen(), variantId: "beet-lentil" })).data.length; // → 8
 */
export function trialsToTellFigure({ variantName, chance, quantities, sentence }: TrialsToTell): Figure {
  return {
    kind: "figure",
    data: quantities.flatMap(tracesOf),
    layout: houseLayout({
      title: `${variantName}: how many trials tell a difference?`,
      xTitle: "trials of each variant, side by side",
      yTitle: "chance of seeing it (%)",
      more: {
        shapes: [
          {
            type: "line",
            xref: "paper",
            yref: "y",
            x0: 0,
            x1: 1,
            y0: 100 * chance,
            y1: 100 * chance,
            line: { color: "#666", width: 1, dash: "dot" },
          },
        ],
      },
    }),
    summary: sentence.replaceAll("\n", " "),
  };
}

function tracesOf({ label, differs, chances }: ToTell, at: number): readonly object[] {
  const colour = PALETTE[at % PALETTE.length];
  const name = `${label}, ${differs}`;
  const x = chances.map(({ trials }) => trials);
  return [
    {
      type: "scatter",
      mode: "lines",
      name: `${name}: range`,
      showlegend: false,
      x: [...x, ...x.toReversed()],
      y: [
        ...chances.map(({ sideBySide95: [low] }) => 100 * low),
        ...chances.map(({ sideBySide95: [, high] }) => 100 * high).reverse(),
      ],
      fill: "toself",
      fillcolor: translucent(colour, 0.1),
      line: { width: 0 },
      hoverinfo: "skip",
    },
    {
      type: "scatter",
      mode: "lines+markers",
      name,
      x,
      y: chances.map(({ sideBySide }) => 100 * sideBySide),
      line: { color: colour, width: 2 },
      marker: { color: colour, size: 7, symbol: MARKERS[at % MARKERS.length] },
      hovertemplate: `${name}: %{y:.0f} % with %{x} trials of each<extra></extra>`,
    },
  ];
}
