import { fail } from "../../check/check";
import { type HeatRun, timeWhen } from "../../heat/solver/heat-run";
import { rangeText } from "../../units/range-text";
import { ownTemperatureText } from "../../units/temperature-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE } from "../figure/palette";

/** A temperature that matters to a run, drawn as a level line. */
export interface TemperatureMark {
  /** in words: `"core limit"` */
  readonly label: string;
  readonly temperatureC: number;
}

/** Logged readings to lay over a run. */
export interface LoggedReadings {
  /** in words: `"probe in the middle"` */
  readonly label: string;
  readonly timeMin: readonly number[];
  readonly temperatureC: readonly number[];
}

/** What `temperatureTimeFigure` draws beside the run. */
export interface TemperatureTimeOptions {
  readonly title: string;
  readonly marks?: readonly TemperatureMark[];
  readonly logged?: readonly LoggedReadings[];
  /** the kitchen's own; default metric */
  readonly units?: KitchenUnits;
}

/**
 * Core, surface and mean temperature of a run over time, with the temperatures that matter as level lines and logged
 * readings as points; where the faces differ, the bottom face and the mid-plane too. The summary says when the core
 * passes each mark.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const run = simulateSlab({ food, thicknessMm: 12.7, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 15 });
 * temperatureTimeFigure(run, { title: "12.7 mm slab", marks: [{ label: "core limit", temperatureC: 74 }] }).summary; // → "12.7 mm slab: the core goes from -18 to 98 °C in 15 min; it passes the core limit (74 °C) at 9.8 min."
 */
export function temperatureTimeFigure(run: HeatRun, options: TemperatureTimeOptions): Figure {
  const { title, marks = [], logged = [], units = "metric" } = options;
  const own = (celsius: number): string => ownTemperatureText(celsius, units);
  const line = (name: string, values: readonly number[], at: number, dash: string): object => ({
    type: "scatter",
    mode: "lines",
    name,
    x: run.timeMin,
    y: values,
    line: { color: PALETTE[at], width: 2.5, dash },
    hovertemplate: `${name}: %{y:.1f} °C at %{x:.1f} min<extra></extra>`,
  });
  const points = logged.map(({ label, timeMin, temperatureC }, at) => {
    if (timeMin.length !== temperatureC.length)
      fail(`temperatureTimeFigure: logged[${at}]`, "must hold as many temperatures as times", [
        timeMin.length,
        temperatureC.length,
      ]);
    return {
      type: "scatter",
      mode: "markers",
      name: label,
      x: timeMin,
      y: temperatureC,
      marker: { color: PALETTE[6 - at], symbol: MARKERS[at], size: 6 },
      hovertemplate: `${label}: %{y:.1f} °C at %{x:.1f} min<extra></extra>`,
    };
  });
  const lastMin = run.timeMin[run.timeMin.length - 1];
  const levels = marks.map(({ label, temperatureC }) => ({
    type: "scatter",
    mode: "lines",
    name: `${label}, ${own(temperatureC)}`,
    x: [0, lastMin],
    y: [temperatureC, temperatureC],
    line: { color: "#777", width: 1.5, dash: "longdash" },
    hoverinfo: "name",
  }));
  const passes = marks.map(({ label, temperatureC }) => {
    const passing = whenCore(run, temperatureC);
    return passing === null
      ? `it does not pass the ${label} (${own(temperatureC)})`
      : `it passes the ${label} (${own(temperatureC)}) at ${passing.toFixed(1)} min`;
  });
  const last = run.coreC.length - 1;
  const facesDiffer = run.surfaceC.some((surfaceC, row) => Math.abs(surfaceC - run.surfaceBelowC[row]) > 0.1);
  const ends = [run.coreC[0], run.coreC[last]] as const;
  const course = rangeText(ends, (celsius) => ownTemperatureText(celsius, units, 0));
  const figure: Figure = {
    kind: "figure",
    data: [
      line(facesDiffer ? "top face" : "surface", run.surfaceC, 1, "dot"),
      ...(facesDiffer
        ? [line("bottom face", run.surfaceBelowC, 3, "longdashdot"), line("mid-plane", run.midPlaneC, 4, "dashdot")]
        : []),
      line("mean", run.meanC, 2, "dash"),
      line("core", run.coreC, 0, "solid"),
      ...levels,
      ...points,
    ],
    layout: houseLayout({ title, xTitle: "time (min)", yTitle: "temperature (°C)" }),
    summary: `${[`${title}: the core goes from ${course} in ${lastMin.toFixed(0)} min`, ...passes].join("; ")}.`,
  };
  return figureIn(figure, units);
}

function whenCore(run: HeatRun, temperatureC: number): number | null {
  const last = run.coreC.length - 1;
  const passed =
    Math.min(run.coreC[0], run.coreC[last]) <= temperatureC && Math.max(run.coreC[0], run.coreC[last]) >= temperatureC;
  return passed ? timeWhen(run, { column: "coreC", value: temperatureC }) : null;
}
