import { fail } from "../../check/check";
import { type HeatRun, timeWhen } from "../solver/heat-run";
import { type CounterOptions, counterRuns } from "./counter-runs";
import { CUTTING_LIMITS, type CuttingLimits, checkCuttingLimits } from "./cutting-limits";
import type { TimeRange } from "./runs-over-doubt";

/** When a frozen slab on the counter can be cut. */
export interface TemperToCut {
  readonly kind: "temper to cut";
  /** its coldest part has warmed to brittleBelowC; 0 when it already was */
  readonly from: TimeRange;
  /** its mean has warmed to softAboveC */
  readonly until: TimeRange;
  readonly limits: CuttingLimits;
  readonly limitsFrom: "caller" | "common practice, no source";
  readonly run: HeatRun;
  readonly notes: readonly string[];
}

/**
 * Tempering: how long a slab that was frozen hard lies on the counter until it can be cut, and until it is too soft.
 *
 * It can be cut from when its core, the coldest part, reaches brittleBelowC until its mean reaches softAboveC.
 *
 * @returns times [min] with the range that the coefficients' doubt gives them
 *
 * Range: as `simulateSlab`; frost that settles from moist air warms it sooner.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * temperToCut({ food, thicknessMm: 10 }).from.timeMin; // → 7
 *
 * Reference: this library's enthalpy solver.
 */
export function temperToCut(options: CounterOptions & { readonly limits?: CuttingLimits }): TemperToCut {
  const limits = checkCuttingLimits(options.limits ?? CUTTING_LIMITS, options.food.freezingPointC, "temperToCut");
  const { runs, range } = counterRuns(options, options.food.freezingPointC - 0.05, "temperToCut");
  const startC = options.startC ?? -18;
  if (startC >= limits.softAboveC)
    fail("temperToCut: startC", `must be below softAboveC (${limits.softAboveC} °C)`, startC);
  const already = startC >= limits.brittleBelowC;
  return Object.freeze({
    kind: "temper to cut" as const,
    from: already
      ? { timeMin: 0, earliestMin: 0, latestMin: 0 }
      : range((run) => timeWhen(run, { column: "coreC", value: limits.brittleBelowC })),
    until: range((run) => timeWhen(run, { column: "meanC", value: limits.softAboveC })),
    limits,
    limitsFrom: options.limits ? ("caller" as const) : ("common practice, no source" as const),
    run: runs[0],
    notes: options.limits ? [] : ["Cutting limits are common practice without a source: note your own and pass them."],
  });
}
