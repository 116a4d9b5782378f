import type { CurveFit } from "../../fit/curve/fit-curve";
import { normalQuantile } from "../../statistics/distributions/normal-distribution";
import { largestOf } from "../../statistics/extremes";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE } from "../figure/palette";

/**
 * Standardised residuals against normal quantiles (places (i − 3/8)/(n + 1/4), Blom 1958): points near the line say that
 * the scatter is as good as normal.
 *
 * @param fit a curve fit
 */
export function fitNormalFigure<X>(fit: CurveFit<string, X>): Figure {
  const standardised = fit.residuals
    .map((residual, i) => ({
      i,
      value:
        (residual * Math.sqrt(fit.weights[i])) / (fit.residualSd * Math.sqrt(Math.max(1e-12, 1 - fit.leverage[i]))),
    }))
    .sort((one, other) => one.value - other.value);
  const places = standardised.map((_, rank) => normalQuantile((rank + 1 - 0.375) / (fit.n + 0.25)));
  const meanPlace = places.reduce((sum, value) => sum + value, 0) / fit.n;
  const mean = standardised.reduce((sum, { value }) => sum + value, 0) / fit.n;
  let top = 0;
  let left = 0;
  let right = 0;
  standardised.forEach(({ value }, k) => {
    top += (places[k] - meanPlace) * (value - mean);
    left += (places[k] - meanPlace) ** 2;
    right += (value - mean) ** 2;
  });
  const correlation = top / Math.sqrt(left * right);
  const reach = largestOf(places);
  return {
    kind: "figure",
    data: [
      {
        type: "scatter",
        mode: "lines",
        name: "normal",
        x: [-reach, reach],
        y: [-reach, reach],
        line: { color: PALETTE[6], dash: "dash", width: 1.5 },
        hoverinfo: "skip",
      },
      {
        type: "scatter",
        mode: "markers",
        name: "residuals",
        x: places,
        y: standardised.map(({ value }) => value),
        text: standardised.map(({ i }) => `point ${i + 1}`),
        marker: { color: PALETTE[0], symbol: MARKERS[0], size: 9 },
        hovertemplate: "%{text}: %{y:.2f} sd<extra></extra>",
      },
    ],
    layout: houseLayout({
      title: `Normal quantiles of the residuals of ${fit.model}`,
      xTitle: "normal quantile (sd)",
      yTitle: "standardised residual (sd)",
    }),
    summary: `Standardised residuals of ${fit.model} correlate ${correlation.toFixed(3)} with normal quantiles; the largest is point ${furthest(standardised) + 1}.`,
  };
}

function furthest(standardised: readonly { readonly i: number; readonly value: number }[]): number {
  return standardised.reduce((best, one) => (Math.abs(one.value) > Math.abs(best.value) ? one : best)).i;
}
