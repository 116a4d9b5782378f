import type { KitchenWindow } from "../../advice/window/crisp-window";
import { clocksOverTime } from "../../crisp/window/clocks-over-time";
import { sizeText } from "../../crisp/window/window-words";
import { limitCaution, limitText } from "../../safety/limit-text";
import { largestOf } from "../../statistics/extremes";
import { convertUnit } from "../../units/convert-unit";
import { ownSettingText } from "../../units/setting-text";
import { ownTemperatureText } from "../../units/temperature-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { PALETTE } from "../figure/palette";

const POINTS = 121;

/**
 * The clocks of one piece, edges included, each as a share of the way to its mark: the core to its limit, the crust to crisp, browning
 * and loss to too much. The window is open where core and crust have passed 100 % and the other two have not.
 *
 * @example
 * const window = crispWindow({ kitchen: loadKitchen(), variantId: "beet-lentil" });
 * clockFigure(window).data.length; // → 4
 */
export function clockFigure(window: KitchenWindow): Figure {
  const { setting, calibration, limit, recommended } = window;
  const lastMin =
    1.15 * Math.max(recommended.cardMin, largestOf([window.opens.min, window.closes.min].filter((min) => min < 120)));
  const timesMin = Array.from({ length: POINTS }, (_, at) => (at * lastMin) / (POINTS - 1));
  const clocks = clocksOverTime({ ...setting, calibration, timesMin });
  const line = (
    name: string,
    metric: readonly number[],
    metricFrom: number,
    metricMark: number,
    metricUnit: string,
    at: number,
    dash: string,
  ): object => {
    const { of, unit, digits } = inOwn(metricUnit, setting.units);
    const [from, mark] = [of(metricFrom), of(metricMark)];
    const values = metric.map(of);
    return {
      type: "scatter",
      mode: "lines",
      // a limit stands as its source prints it
      name: `${name} (100 % = ${name === "core" ? limitText(limit, setting.units) : `${mark.toFixed(mark < 10 ? digits : 0)} ${unit}`})`,
      x: timesMin,
      y: values.map((value) => (100 * (value - from)) / (mark - from)),
      customdata: values,
      line: { color: PALETTE[at], width: 2.5, dash },
      hovertemplate: `${name}: %{customdata:.${digits}f} ${unit} at %{x:.1f} min<extra></extra>`,
    };
  };
  return {
    kind: "figure",
    data: [
      line("core", clocks.coreC, setting.startC, limit.limitC, "°C", 3, "solid"),
      line("crust", clocks.crustMm, 0, clocks.crispFromMm, "mm", 0, "dash"),
      line("browning", clocks.brownScore, 0, setting.tooBrownScore, "of 9", 1, "dot"),
      line("loss", clocks.lossPercent, 0, setting.tooDryPercent, "% of mass", 2, "dashdot"),
    ],
    layout: houseLayout({
      title: `${window.variantName}: the clocks of a piece of ${sizeText(setting)} at ${ownSettingText(setting.setpointC, setting.units)}`,
      xTitle: "time in the appliance (min)",
      yTitle: "share of the way to its mark (%)",
      more: {
        yaxis: { title: { text: "share of the way to its mark (%)" }, range: [0, 200], automargin: true },
        shapes: [
          { type: "line", xref: "paper", yref: "y", x0: 0, x1: 1, y0: 100, y1: 100, line: { color: "#777", width: 1 } },
          {
            type: "line",
            xref: "x",
            yref: "paper",
            x0: recommended.cardMin,
            x1: recommended.cardMin,
            y0: 0,
            y1: 1,
            line: { color: "#777", width: 1, dash: "dash" },
          },
        ],
      },
    }),
    summary: `${window.sentence} At the card time: core ${ownTemperatureText(recommended.coreC, setting.units, 0)}, loss ${recommended.lossPercent.toFixed(1)} %. ${limitCaution(limit, setting.units)}`,
  };
}

/** A clock's own unit in a kitchen's: °C as °F, millimetres of crust as inches; scores and shares as they are. */
function inOwn(
  unit: string,
  units: KitchenUnits,
): { readonly of: (value: number) => number; readonly unit: string; readonly digits: number } {
  const to = units === "us" ? { "°C": "°F", mm: "in" }[unit] : undefined;
  if (to === undefined) return { of: (value) => value, unit, digits: 2 };
  return { of: (value) => convertUnit({ value, from: unit, to }), unit: to, digits: to === "in" ? 3 : 1 };
}
