import type { ForecastRecord } from "../../advice/trial/forecast-record";
import { tooLittle } from "../../check/too-little";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE } from "../figure/palette";

/**
 * Every forecast against what came: the logged value less the forecast, over the half width of its 90 % interval, in the
 * order of the log, one mark a measurement. Between −1 and 1 the interval held; one in ten may lie outside. Throws `TooLittle`
 * while nothing could be forecast.
 *
 * @param record from `forecastRecord`
 */
export function forecastFigure(record: ForecastRecord): Figure {
  if (record.made === 0) tooLittle("forecastFigure", record.sentence);
  const kinds = ["crisp time (min)", "core (°C)", "loss (%)"] as const;
  const us = record.units === "us";
  const marks = kinds.map((of, at) => {
    const own = record.forecasts.filter((forecast) => forecast.of === of);
    return {
      type: "scatter",
      mode: "markers",
      name: us && of === "core (°C)" ? "core (°F)" : of,
      x: own.map((forecast) => record.forecasts.indexOf(forecast) + 1),
      y: own.map(missOf),
      text: own.map(({ variantId, trialId, kind, expected, interval90: [low, high] }) => {
        const said = (value: number): string => (us && of === "core (°C)" ? 1.8 * value + 32 : value).toFixed(1);
        return `${variantId}, ${trialId}, ${kind}: forecast ${said(expected)} (${said(low)} to ${said(high)})`;
      }),
      marker: { color: PALETTE[at], symbol: MARKERS[at], size: 8 },
      hovertemplate: "%{text}<extra></extra>",
    };
  });
  return {
    kind: "figure",
    data: marks,
    layout: houseLayout({
      title: "Forecasts from earlier mornings against what came",
      xTitle: "forecast, in the order of the log",
      yTitle: "miss, in half widths of the 90 % interval",
      more: {
        shapes: [-1, 1].map((y) => ({
          type: "line",
          xref: "paper",
          x0: 0,
          x1: 1,
          yref: "y",
          y0: y,
          y1: y,
          line: { color: "#777", dash: "dash", width: 1.5 },
        })),
      },
    }),
    summary: record.sentence,
  };
}

/** How far what was logged lies from the forecast; a crisp time from the nearer end of its gap, 0 inside. */
function missOf({ expected, interval90: [low, high], seen: [from, to] }: ForecastRecord["forecasts"][number]): number {
  const nearest = Math.min(Math.max(expected, from), to);
  const half = nearest >= expected ? high - expected : expected - low;
  return half <= 0 ? 0 : (nearest - expected) / half;
}
