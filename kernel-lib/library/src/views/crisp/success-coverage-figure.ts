import type { WindowCoverage } from "../../crisp/window/window-coverage";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { PALETTE } from "../figure/palette";

const BINS: readonly number[] = [0, 0.2, 0.4, 0.6, 0.8, 0.9, 0.97, 1.0001];

/**
 * What a stated chance is worth: for simulated kitchens, the share of pieces that truly succeed at the card time
 * against the chance that was stated, each kitchen a dot and the mean of each range a square, over the diagonal.
 */
export function successCoverageFigure(coverage: WindowCoverage): Figure {
  const { stated, realised } = coverage;
  const means = BINS.slice(1).flatMap((high, at) => {
    const inside = stated
      .map((_, kitchen) => kitchen)
      .filter((kitchen) => stated[kitchen] >= BINS[at] && stated[kitchen] < high);
    if (inside.length === 0) return [];
    const mean = (values: readonly number[]): number =>
      inside.reduce((sum, kitchen) => sum + values[kitchen], 0) / inside.length;
    return [{ stated: mean(stated), realised: mean(realised), kitchens: inside.length }];
  });
  const percent = (values: readonly number[]): number[] => values.map((value) => 100 * value);
  return {
    kind: "figure",
    data: [
      {
        type: "scatter",
        mode: "lines",
        name: "as stated",
        x: [0, 100],
        y: [0, 100],
        line: { color: "#777", dash: "dash", width: 1.5 },
        hoverinfo: "skip",
      },
      {
        type: "scatter",
        mode: "markers",
        name: "one kitchen",
        x: percent(stated),
        y: percent(realised),
        marker: { symbol: "circle", size: 6, color: PALETTE[5], opacity: 0.6 },
        hovertemplate: "stated %{x:.0f} %, true %{y:.0f} %<extra></extra>",
      },
      {
        type: "scatter",
        mode: "markers",
        name: "mean of a range",
        x: percent(means.map((mean) => mean.stated)),
        y: percent(means.map((mean) => mean.realised)),
        text: means.map((mean) => `${mean.kitchens} kitchens`),
        marker: { symbol: "square", size: 11, color: PALETTE[0] },
        hovertemplate: "%{text}: stated %{x:.0f} %, true %{y:.0f} %<extra></extra>",
      },
    ],
    layout: houseLayout({
      title: `What a stated chance of success is worth, ${coverage.kitchens} simulated kitchens`,
      xTitle: "chance stated at the card time (%)",
      yTitle: "pieces that succeed (%)",
    }),
    summary:
      `${coverage.kitchens} simulated kitchens: 95 % intervals held the truth in ${(100 * coverage.held95).toFixed(1)} %; ` +
      `${means.map((mean) => `stated ${(100 * mean.stated).toFixed(0)} %, true ${(100 * mean.realised).toFixed(0)} % (${mean.kitchens})`).join("; ")}.`,
  };
}
