import { fail } from "../../check/check";
import type { HeatRun } from "../../heat/solver/heat-run";
import { largestOf, smallestOf } from "../../statistics/extremes";
import { rangeText } from "../../units/range-text";
import { ownTemperatureText } from "../../units/temperature-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE } from "../figure/palette";

/** Which profiles of a run to draw. */
export interface ProfileFigureOptions {
  readonly title: string;
  /** at these times, at most eight [min]; each is drawn at the nearest step of the run */
  readonly timesMin: readonly number[];
  /** the kitchen's own; default metric */
  readonly units?: KitchenUnits;
}

/**
 * Temperature through the thickness, bottom to top, at a few times of a run: where it is still frozen, where it is hot.
 * The points are the cells that were solved; where a crust has grown, the line covers the part that is still wet.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const run = simulateSlab({ food, thicknessMm: 12.7, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 15 });
 * profileFigure(run, { title: "12.7 mm slab", timesMin: [2, 5, 10] }).data.length; // → 3
 */
export function profileFigure(run: HeatRun, options: ProfileFigureOptions): Figure {
  const { title, timesMin, units = "metric" } = options;
  if (timesMin.length < 1 || timesMin.length > 8)
    fail("profileFigure: timesMin", "must hold one to eight times", timesMin.length);
  const lastMin = run.timeMin[run.timeMin.length - 1];
  const rows = timesMin.map((timeMin) => {
    if (!(timeMin >= 0 && timeMin <= lastMin + 1e-9))
      fail("profileFigure: timesMin", `must lie within the run, 0 to ${lastMin.toFixed(2)} min`, timeMin);
    let nearest = 0;
    for (let row = 1; row < run.timeMin.length; row++)
      if (Math.abs(run.timeMin[row] - timeMin) < Math.abs(run.timeMin[nearest] - timeMin)) nearest = row;
    return nearest;
  });
  const spreads = rows.map((row) => {
    const temperatures = run.profile.temperatureC[row];
    return `${run.timeMin[row].toFixed(1)} min: ${rangeText([smallestOf(temperatures), largestOf(temperatures)], (celsius) => ownTemperatureText(celsius, units, 0))}`;
  });
  const figure: Figure = {
    kind: "figure",
    data: rows.map((row, at) => ({
      type: "scatter",
      mode: "lines+markers",
      name: `${run.timeMin[row].toFixed(1)} min`,
      x: run.profile.temperatureC[row],
      y: run.profile.heightMm[row],
      line: { color: PALETTE[at], width: 2 },
      marker: { color: PALETTE[at], symbol: MARKERS[at], size: 5 },
      hovertemplate: "%{x:.1f} °C at %{y:.1f} mm<extra></extra>",
    })),
    layout: houseLayout({
      title,
      xTitle: "temperature (°C)",
      yTitle: "height above the underside (mm)",
      more: {
        yaxis: { title: { text: "height above the underside (mm)" }, range: [0, run.thicknessMm], automargin: true },
      },
    }),
    summary: `${title}, coldest to hottest through the thickness: ${spreads.join("; ")}.`,
  };
  return figureIn(figure, units);
}
