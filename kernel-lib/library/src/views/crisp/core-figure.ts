import type { KitchenWindow } from "../../advice/window/crisp-window";
import { clocksOverTime } from "../../crisp/window/clocks-over-time";
import { limitCaution, limitText } from "../../safety/limit-text";
import { largestOf } from "../../statistics/extremes";
import type { KitchenTrial } from "../../trials/kitchen";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { PALETTE } from "../figure/palette";
import { unsafeTime } from "./unsafe-time";

const POINTS = 81;
/** A slab counts as alike within this share of the thickness. */
const ALIKE = 0.1;
/** and a setpoint within this difference (K). */
const SAME_K = 5;

/**
 * The core of a typical piece over time, as the trials have set its clock, with its limit, the time from which every piece of 99
 * of 100 loads is safe, and the cores that were logged on slabs alike (within a tenth of the thickness and 5 K, in the same
 * appliance). The highest core of a trial is drawn where it was taken out.
 *
 * @param window from `crispWindow`
 * @param trials all of the kitchen's
 */
export function coreFigure(window: KitchenWindow, trials: readonly KitchenTrial[]): Figure {
  const { setting, calibration, limit, chances, core } = window;
  const logged = trials.filter(
    (trial) =>
      trial.variantId === window.variantId &&
      trial.applianceId === setting.applianceId &&
      trial.coreC !== null &&
      Math.abs(trial.setpointC - setting.setpointC) <= SAME_K &&
      Math.abs(trial.thicknessMm / setting.thicknessMm - 1) <= ALIKE,
  );
  const lastMin = 1.1 * Math.max(chances.safeFromMin, largestOf([0, ...logged.map((trial) => trial.timeMin)]));
  const timesMin = Array.from({ length: POINTS }, (_, at) => (at * lastMin) / (POINTS - 1));
  const { coreC } = clocksOverTime({ ...setting, calibration, timesMin });
  const figure: Figure = {
    kind: "figure",
    data: [
      {
        type: "scatter",
        mode: "lines",
        name: "core of a typical piece",
        x: timesMin,
        y: coreC,
        line: { color: PALETTE[0], width: 2.5 },
        hovertemplate: "%{y:.0f} °C at %{x:.1f} min<extra></extra>",
      },
      {
        type: "scatter",
        mode: "lines",
        name: "core limit",
        x: [0, lastMin],
        y: [limit.limitC, limit.limitC],
        line: { color: PALETTE[1], width: 1.5, dash: "dash" },
        hovertemplate: `limit: ${limitText(limit, setting.units)}<extra></extra>`,
      },
      {
        type: "scatter",
        mode: "markers",
        name: "logged, on a slab alike",
        x: logged.map((trial) => trial.timeMin),
        y: logged.map((trial) => trial.coreC),
        text: logged.map((trial) => trial.trialId),
        marker: { color: PALETTE[6], symbol: "circle", size: 7 },
        hovertemplate: "%{text}: %{y:.0f} °C at %{x:.1f} min<extra></extra>",
      },
    ],
    layout: houseLayout({
      title: `${window.variantName}: the core over time`,
      xTitle: "time in the appliance (min)",
      yTitle: "core (°C)",
      more: unsafeTime(chances.safeFromMin),
    }),
    summary:
      `A typical piece reaches ${limitText(limit, setting.units)} at ${core.min.toFixed(1)} min (${core.interval95[0].toFixed(1)} to ${core.interval95[1].toFixed(1)}, 95 %); ` +
      `every piece of 99 of 100 loads from ${chances.safeFromMin.toFixed(1)} min, where the grey ends; ${logged.length} cores logged on slabs alike. ${limitCaution(limit, setting.units)}`,
  };
  return figureIn(figure, setting.units);
}
