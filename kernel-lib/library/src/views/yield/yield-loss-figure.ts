import { fail, positive } from "../../check/check";
import { largestOf, smallestOf } from "../../statistics/extremes";
import { ownSettingText } from "../../units/setting-text";
import { thicknessWords } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import { type LossFit, predictLoss } from "../../yield/fit-loss";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { PALETTE, translucent } from "../figure/palette";

/** The setting at which `yieldLossFigure` draws its line. */
export interface YieldLossFigureOptions {
  /** time in the appliance (min) */
  readonly timeMin: number;
  /** air temperature set (°C) */
  readonly setpointC: number;
  /** the kitchen's own; default metric */
  readonly units?: KitchenUnits;
}

const POINTS = 41;

/**
 * Loss against slab thickness at one time and setpoint: the regression line (dotted where nothing near was tried), its
 * 95 % band, the band for one further trial, and every trial moved to that time and setpoint along the fit (so that points and line can be compared).
 *
 * @param loss from `fitLoss`
 * @param at time and setpoint
 */
export function yieldLossFigure(loss: LossFit, at: YieldLossFigureOptions): Figure {
  const timeMin = positive(at.timeMin, "yieldLossFigure: timeMin", "min");
  const { setpointC, units = "metric" } = at;
  if (!loss.predictors.includes("thicknessMm")) {
    fail("yieldLossFigure: loss", "must come from trials of two thicknesses or more", loss.leftOut.join(", "));
  }
  const thicknesses = loss.trials.map((trial) => trial.thicknessMm);
  const thinnest = smallestOf(thicknesses);
  const thickest = largestOf(thicknesses);
  const curve = Array.from({ length: POINTS }, (_, step) => {
    const thicknessMm = thinnest + (step * (thickest - thinnest)) / (POINTS - 1);
    return { thicknessMm, ...predictLoss(loss, { thicknessMm, timeMin, setpointC }) };
  });
  const band = (which: "confidence95" | "prediction95", name: string, opacity: number): object => ({
    type: "scatter",
    mode: "lines",
    name,
    x: [...curve.map((point) => point.thicknessMm), ...curve.map((point) => point.thicknessMm).reverse()],
    y: [...curve.map((point) => point[which][1]), ...curve.map((point) => point[which][0]).reverse()],
    fill: "toself",
    fillcolor: translucent(PALETTE[0], opacity),
    line: { width: 0 },
    hoverinfo: "skip",
  });
  const line = (name: string, dash: string, shown: (point: (typeof curve)[number]) => boolean): object => ({
    type: "scatter",
    mode: "lines",
    name,
    x: curve.map((point) => point.thicknessMm),
    y: curve.map((point) => (shown(point) ? point.lossPercent : null)),
    line: { color: PALETTE[0], width: 2.5, dash },
    hovertemplate: "%{x:.1f} mm: %{y:.1f} %<extra></extra>",
  });
  const moved = loss.trials.map(
    (trial, row) => predictLoss(loss, { ...trial, timeMin, setpointC }).lossPercent + loss.fit.residuals[row],
  );
  const middle = curve[(POINTS - 1) / 2];
  const where = `${timeMin.toFixed(1)} min and ${ownSettingText(setpointC, units)}`;
  const figure: Figure = {
    kind: "figure",
    data: [
      band("prediction95", "95 % band, one more trial", 0.12),
      band("confidence95", "95 % band, the mean", 0.25),
      line(`loss at ${where}`, "solid", (point) => !point.extrapolated),
      line("beyond what was tried", "dot", (point) => point.extrapolated),
      {
        type: "scatter",
        mode: "markers",
        name: `trial, moved to ${where}`,
        x: thicknesses,
        y: moved,
        marker: { color: PALETTE[1], symbol: "circle", size: 8 },
        hovertemplate: "%{x:.1f} mm: %{y:.1f} %<extra></extra>",
      },
    ],
    layout: houseLayout({
      title: "Loss against slab thickness",
      xTitle: "slab thickness (mm)",
      yTitle: "loss (% of the mass before)",
    }),
    summary:
      `Loss at ${where}, ${loss.trials.length} trials from ${thicknessWords([thinnest, thickest], units)}: ` +
      `${middle.lossPercent.toFixed(1)} % at ${thicknessWords(middle.thicknessMm, units)} ` +
      `(mean ${middle.confidence95[0].toFixed(1)} to ${middle.confidence95[1].toFixed(1)} %, ` +
      `one more trial ${middle.prediction95[0].toFixed(1)} to ${middle.prediction95[1].toFixed(1)} %, 95 %); ` +
      `${curve[0].lossPercent.toFixed(1)} % at the thinnest, ${curve[POINTS - 1].lossPercent.toFixed(1)} % at the thickest` +
      `${curve.some((point) => point.extrapolated) ? "; dotted: beyond what was tried" : ""}.`,
  };
  return figureIn(figure, units);
}
