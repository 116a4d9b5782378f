import type { CurveFit } from "../../fit/curve/fit-curve";
import { largestOf, smallestOf } from "../../statistics/extremes";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE, translucent } from "../figure/palette";

/**
 * Residuals against fitted values: a curve that suits its data leaves an even band about zero. The band is ± 2 residual
 * standard deviations; points outside it are marked. With uneven weights residuals are counted in standard deviations.
 *
 * @param fit a curve fit
 * @param unit of y, for the axes: `"min"`
 */
export function fitResidualFigure<X>(fit: CurveFit<string, X>, unit: string): Figure {
  const even = fit.weights.every((weight) => weight === fit.weights[0]);
  const scaled = fit.residuals.map((residual, i) =>
    even ? residual : (residual * Math.sqrt(fit.weights[i])) / fit.residualSd,
  );
  const limit = even ? (2 * fit.residualSd) / Math.sqrt(fit.weights[0]) : 2;
  const outside = fit.y.map((_, i) => i).filter((i) => Math.abs(scaled[i]) > limit);
  const inside = fit.y.map((_, i) => i).filter((i) => Math.abs(scaled[i]) <= limit);
  const ends = [smallestOf(fit.fitted), largestOf(fit.fitted)];
  const points = (name: string, at: readonly number[], series: number): object => ({
    type: "scatter",
    mode: "markers",
    name,
    x: at.map((i) => fit.fitted[i]),
    y: at.map((i) => scaled[i]),
    text: at.map((i) => `point ${i + 1}`),
    marker: { color: PALETTE[series], symbol: MARKERS[series], size: 9 },
    hovertemplate: "%{text}: fitted %{x:.4g}, residual %{y:.3g}<extra></extra>",
  });
  return {
    kind: "figure",
    data: [
      {
        type: "scatter",
        mode: "lines",
        name: "± 2 residual sd",
        x: [ends[0], ends[1], ends[1], ends[0]],
        y: [limit, limit, -limit, -limit],
        fill: "toself",
        fillcolor: translucent(PALETTE[0], 0.12),
        line: { width: 0 },
        hoverinfo: "skip",
      },
      points("inside the band", inside, 0),
      ...(outside.length > 0 ? [points("outside the band", outside, 1)] : []),
    ],
    layout: houseLayout({
      title: `Residuals of ${fit.model}`,
      xTitle: `fitted (${unit})`,
      yTitle: even ? `observed − fitted (${unit})` : "observed − fitted (standard deviations)",
    }),
    summary: `${outside.length} of ${fit.n} residuals of ${fit.model} lie beyond 2 standard deviations${even ? ` (${limit.toPrecision(3)} ${unit})` : ""}${outside.length > 0 ? `: point ${outside.map((i) => i + 1).join(", ")}` : ""}.`,
  };
}
