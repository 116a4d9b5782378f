import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE, translucent } from "../figure/palette";
import type { RidgeViewOptions } from "./ridge-table";

/**
 * A ridge: the height at each distance from the middle of the plan with its 95 % band; points beyond the trials are ringed.
 *
 * @example
 * const points = [[-1, -1], [1, -1], [-1, 1], [1, 1], [-1, 0], [1, 0], [0, -1], [0, 1], [0, 0], [0, 0]];
 * const y = points.map(([a, b], at) => 5 + a - a * a - 2 * b * b + 0.02 * (at % 3));
 * const fit = fitSurface({ factors: ["air", "time"], points, y });
 * ridgeFigure({ fit, ridge: ridgePath({ fit }), measured: "crispness" }).data.length; // → 3
 */
export function ridgeFigure({ ridge, measured }: RidgeViewOptions): Figure {
  const x = ridge.map(({ radius }) => radius);
  const beyond = ridge.filter(({ extrapolated }) => extrapolated);
  const best = ridge.reduce((most, one) => (one.value > most.value ? one : most));
  return {
    kind: "figure",
    data: [
      {
        type: "scatter",
        mode: "lines",
        name: "95 % for the surface",
        x: [...x, ...x.toReversed()],
        y: [
          ...ridge.map(({ confidence95: [low] }) => low),
          ...ridge.map(({ confidence95: [, high] }) => high).toReversed(),
        ],
        fill: "toself",
        fillcolor: translucent(PALETTE[0], 0.15),
        line: { width: 0 },
        hoverinfo: "skip",
      },
      {
        type: "scatter",
        mode: "lines+markers",
        name: "ridge",
        x,
        y: ridge.map(({ value }) => value),
        line: { color: PALETTE[0], width: 2 },
        marker: { color: PALETTE[0], size: 9, symbol: MARKERS[0] },
        hovertemplate: "%{y:.2f} at distance %{x:.2f}<extra></extra>",
      },
      ...(beyond.length === 0
        ? []
        : [
            {
              type: "scatter",
              mode: "markers",
              name: "beyond the trials",
              x: beyond.map(({ radius }) => radius),
              y: beyond.map(({ value }) => value),
              marker: { color: PALETTE[1], size: 13, symbol: `${MARKERS[0]}-open` },
              hoverinfo: "skip",
            },
          ]),
    ],
    layout: houseLayout({
      title: `${measured} along its ridge`,
      xTitle: "distance from the middle of the plan (coded)",
      yTitle: measured,
    }),
    summary: `${measured} along its ridge: ${best.value.toPrecision(4)} at most, at distance ${best.radius}; ${ridge[0].value.toPrecision(4)} at distance ${ridge[0].radius}. ${best.extrapolated ? "That lies beyond the trials." : "That lies among the trials."}`,
  };
}
