import type { Influence } from "../../fit/doubt/influence";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE } from "../figure/palette";

/**
 * What each point does to the fit: studentised residual against leverage, marker area by Cook's distance. Points with a
 * Cook's distance above 1 (common practice, no source) have a marker of their own.
 *
 * @param measured from `influence`
 */
export function fitInfluenceFigure<X>(measured: Influence<string, X>): Figure {
  const { points } = measured;
  const strong = points.filter((point) => point.cooksDistance > 1);
  const rest = points.filter((point) => !(point.cooksDistance > 1));
  const series = (name: string, members: typeof points, at: number): object => ({
    type: "scatter",
    mode: "markers",
    name,
    x: members.map((point) => point.leverage),
    y: members.map((point) => point.studentised),
    text: members.map((point) => `point ${point.index + 1}, Cook's distance ${point.cooksDistance.toPrecision(2)}`),
    marker: {
      color: PALETTE[at],
      symbol: MARKERS[at],
      size: members.map((point) => 7 + 14 * Math.sqrt(Math.min(2, point.cooksDistance))),
      line: { color: "#222", width: 1 },
    },
    hovertemplate: "%{text}<br>leverage %{x:.2f}, residual %{y:.2f}<extra></extra>",
  });
  return {
    kind: "figure",
    data: [
      series("Cook's distance up to 1", rest, 0),
      ...(strong.length > 0 ? [series("Cook's distance above 1", strong, 1)] : []),
    ],
    layout: houseLayout({
      title: "What each point does to the fit",
      xTitle: "leverage (share of its own fitted value)",
      yTitle: "studentised residual (sd)",
    }),
    summary: measured.reading,
  };
}
