import { type HeatRun, timeWhen, valueAt } from "../solver/heat-run";
import { type CounterOptions, counterRuns } from "./counter-runs";
import type { TimeRange } from "./runs-over-doubt";

/** How long frozen food stays workable on the counter. */
export interface WorkableTime extends TimeRange {
  readonly kind: "workable time";
  /** the surface that ends it [°C] */
  readonly surfaceLimitC: number;
  /** mean of the food by then [°C] */
  readonly meanC: number;
  readonly run: HeatRun;
  readonly notes: readonly string[];
}

/**
 * How long a pan or pieces out of the freezer stay workable for coating before the surface thaws.
 *
 * The time until the surface in the middle of the top face passes its limit, by default the mix's freezing point.
 *
 * @returns time [min] with its range, and the mean temperature by then
 *
 * Range: as `simulateSlab`; even at the start, frost left out. Thawed coating slides; it is also when the cold chain
 * starts to count: put it back in time.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * workableTime({ food, thicknessMm: 10, widthMm: 30, lengthMm: 30 }).timeMin; // → 51
 *
 * Reference: this library's enthalpy solver.
 */
export function workableTime(
  options: CounterOptions & {
    /** surface that ends the work [°C]; default the food's freezing point */
    readonly surfaceLimitC?: number;
  },
): WorkableTime {
  const surfaceLimitC = options.surfaceLimitC ?? options.food.freezingPointC;
  const { runs, range } = counterRuns(options, options.food.freezingPointC + 1, "workableTime");
  const times = range((run) => timeWhen(run, { column: "surfaceC", value: surfaceLimitC }));
  return Object.freeze({
    kind: "workable time" as const,
    ...times,
    surfaceLimitC,
    meanC: valueAt(runs[0], "meanC", times.timeMin),
    run: runs[0],
    notes: [`${runs[0].body === "piece" ? "Edges and corners" : "Edges"} thaw before the middle of the face.`],
  });
}
