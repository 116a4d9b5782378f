import { fail, positive, within } from "../../check/check";
import { enthalpyAt } from "../../food/thermal/enthalpy";
import { checkThermalModel, type ThermalModel } from "../../food/thermal/thermal-properties";
import { largestOf } from "../../statistics/extremes";
import type { DryingLaw } from "../box/surface-balance";
import { type CoreTarget, coreTarget } from "./core-target";
import { type HeatRun, timeWhen, valueAt } from "./heat-run";
import { simulateEdgesIfTheyCount } from "./simulate-edges-if-they-count";
import type { Drying, Surroundings } from "./surroundings";

/** A slab or piece that is heated until its core is hot enough. */
export interface CoreTimeOptions extends Surroundings {
  readonly food: ThermalModel;
  readonly thicknessMm: number;
  /** leave both sides out for a whole slab */
  readonly lengthMm?: number;
  readonly widthMm?: number;
  /** at the four sides of a piece [W/(m²·K)]; default as above */
  readonly coefficientSidesWm2K?: number;
  /** food at the start [°C]; default −18 */
  readonly startC?: number;
  /** core to reach [°C]; default 74 (165 °F), at once */
  readonly limitC?: number;
  /** how the faces dry; default `"receding-front"` at 100 °C */
  readonly drying?: DryingLaw | Drying;
}

/** When the core is hot enough, and what the rest of the food is like then. */
export interface CoreTime extends CoreTarget {
  readonly kind: "core time";
  /** [min]; the solver errs on the late side */
  readonly timeMin: number;
  /** ever finer grids end between these [min]: the solver's own error, not that of food or coefficient */
  readonly gridRangeMin: readonly [number, number];
  /** the same with a surface that stays wet and cool until it has dried: the slow end for bare, moist food [min]; null when it does not get there within ten times timeMin */
  readonly wetSurfaceMin: number | null;
  /** `"slab"`: the edges shorten this time by less than 0.5 %; `"piece"`: all six faces */
  readonly body: "slab" | "piece";
  /** core thawed [min]; 0 when it starts thawed, null when the limit is reached before */
  readonly thawedMin: number | null;
  /** outer surface at timeMin [°C] */
  readonly surfaceC: number;
  /** mean of the wet part at timeMin [°C] */
  readonly meanC: number;
  /** evaporated by timeMin, of the mass at the start [%] */
  readonly waterLostPercent: number;
  /** at the top, at timeMin [mm] */
  readonly crustMm: number;
  /** the run behind it, to draw */
  readonly run: HeatRun;
}

/** Cells of the second grid, from which the error of the first is told, over those of the first [-]. */
const COARSER = 0.625;
/** How late and how early core times of the default grid are at most beside fine even grids [-]. */
const MOST_LATE = 5e-3;
const MOST_EARLY = 2e-3;

/**
 * Time for the core of a slab or piece to reach its limit, from frozen or chilled, by the enthalpy solver.
 *
 * @returns time [min] with the range that ever finer grids may end in, the same for a wet surface, the state of the
 * food then, the limit with its caution and source
 *
 * Range: as `simulateSlab` and `simulatePiece`; timeMin within 0.5 % of fine grids, thawedMin too, or within 1 % where
 * thickness × coefficient is above 1000 W/(m²·K)·mm. The coefficient decides: the time goes nearly as 1/h, so take h from
 * a metal block or a probe trace of your own appliance and load, not from a range.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const slab = coreTime({ food, thicknessMm: 12.7, airC: 204, coefficientWm2K: 40 });
 * slab.timeMin; // → 9.77
 * slab.limitC; // → 74
 * coreTime({ food, thicknessMm: 12.7, airC: 60, coefficientWm2K: 40 }); // throws "must be above the core limit of 74 °C; the core tends to 60 °C"
 *
 * Reference: this library's enthalpy solver.
 */
export function coreTime(options: CoreTimeOptions): CoreTime {
  const { food, startC = -18 } = options;
  const target = coreTarget(options.limitC);
  const { limitC } = target;
  checkThermalModel(food, "coreTime: food");
  positive(options.thicknessMm, "coreTime: thicknessMm", "mm");
  within(startC, -60, 100, "coreTime: startC", "°C");
  if (!(limitC > startC && limitC < 100))
    fail("coreTime: limitC", `must be above the start of ${startC} °C and below 100 °C`, limitC);
  const air = (given: Surroundings["airC"]): number[] =>
    typeof given === "number" ? [given] : given.map((point) => point.airC);
  const warmestC = Math.max(
    largestOf(air(options.airC)),
    largestOf(options.airBelowC === undefined ? [] : air(options.airBelowC)),
  );
  if (!(warmestC > limitC))
    fail("coreTime: airC", `must be above the core limit of ${limitC} °C; the core tends to ${warmestC} °C`, warmestC);
  const coefficientWm2K = positive(options.coefficientWm2K, "coreTime: coefficientWm2K", "W/(m²·K)");

  // a slab heated from one face only, all its way at the driving difference that is left at the end, and half more
  const depthM = options.thicknessMm / 1000;
  const heatJm3 = food.densityKgM3 * 1000 * (enthalpyAt(food, limitC) - enthalpyAt(food, startC));
  const longestS =
    1.5 * (heatJm3 / (warmestC - limitC)) * (depthM / coefficientWm2K + depthM ** 2 / (2 * food.thawedConductivityWmK));
  const lastPointMin = typeof options.airC === "number" ? 0 : options.airC[options.airC.length - 1].timeMin;
  const endMin = longestS / 60 + lastPointMin;
  const solve = (more: { readonly cells?: number }): HeatRun => {
    const run = simulateEdgesIfTheyCount({ ...options, startC, endMin, stopCoreC: limitC, ...more });
    const last = run.timeMin.length - 1;
    const why = run.stopped === "all water gone" ? "dried through first, at" : "got to";
    if (run.stopped !== "core reached its target")
      fail(
        "coreTime: limitC",
        `must be within reach: in ${run.timeMin[last].toFixed(0)} min the core ${why} ${run.coreC[last].toFixed(1)} °C`,
        limitC,
      );
    return run;
  };
  const run = solve({});
  const timeMin = timeWhen(run, { column: "coreC", value: limitC });
  const coarserMin = timeWhen(solve({ cells: Math.round(COARSER * run.cells) }), { column: "coreC", value: limitC });
  const apartMin = Math.abs(timeMin - coarserMin);
  // the slow end, so on a coarser grid, which is 1 to 2 % late
  const wetRun = simulateEdgesIfTheyCount({
    ...options,
    startC,
    endMin: 10 * timeMin,
    stopCoreC: limitC,
    drying: { ...(typeof options.drying === "object" ? options.drying : {}), law: "wet-front" },
    cells: 6,
    tolerance: 2e-3,
  });
  const wetSurfaceMin =
    wetRun.stopped === "core reached its target" ? timeWhen(wetRun, { column: "coreC", value: limitC }) : null;
  return Object.freeze({
    kind: "core time" as const,
    timeMin,
    gridRangeMin: Object.freeze([
      timeMin - Math.max(MOST_LATE * timeMin, apartMin),
      timeMin + Math.max(MOST_EARLY * timeMin, apartMin),
    ] as const),
    wetSurfaceMin,
    body: run.body,
    thawedMin: startC >= food.freezingPointC ? 0 : run.thawedMin,
    surfaceC: valueAt(run, "surfaceC", timeMin),
    meanC: valueAt(run, "meanC", timeMin),
    waterLostPercent: valueAt(run, "waterLostPercent", timeMin),
    crustMm: valueAt(run, "crustMm", timeMin),
    run,
    ...target,
  });
}
