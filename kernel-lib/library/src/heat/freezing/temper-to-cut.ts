import { fail, positive, within } from "../../check/check";
import { checkThermalModel, type ThermalModel } from "../../food/thermal/thermal-properties";
import { type HeatRun, timeWhen } from "../solver/heat-run";
import { type SlabOrPieceOptions, simulateSlabOrPiece } from "../solver/slab-or-piece";
import { CUTTING_LIMITS, type CuttingLimits, checkCuttingLimits } from "./cutting-limits";
import type { TimeRange } from "./freeze-to-cut";

/** Frozen food on the counter. */
export interface CounterOptions {
  readonly food: ThermalModel;
  readonly thicknessMm: number;
  /** leave both sides out for a whole slab */
  readonly lengthMm?: number;
  readonly widthMm?: number;
  /** food as it comes out of the freezer, even all through [°C]; default −18 */
  readonly startC?: number;
  /** air of the room [°C]; default 20 */
  readonly airC?: number;
  /** above [W/(m²·K)]; default 10: natural convection and radiation, before frost adds its own */
  readonly coefficientWm2K?: number;
  /** below [W/(m²·K)]; default as above: a pan on a rack; near 0 on a board, 50 and more on a metal counter */
  readonly coefficientBelowWm2K?: number;
  /** both coefficients may be off by this share either way [-]; default 0.4 */
  readonly relativeError?: number;
}

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

/** Runs the counter three times: as given, with more and with less heat transfer. */
export function counterRuns(
  options: CounterOptions,
  stopCoreC: number,
  where: string,
): { readonly runs: readonly HeatRun[]; readonly range: (read: (run: HeatRun) => number) => TimeRange } {
  const { food, startC = -18, airC = 20, coefficientWm2K = 10, relativeError = 0.4 } = options;
  checkThermalModel(food, `${where}: food`);
  positive(coefficientWm2K, `${where}: coefficientWm2K`, "W/(m²·K)");
  within(relativeError, 0, 0.9, `${where}: relativeError`, "");
  if (!(startC < food.freezingPointC))
    fail(`${where}: startC`, `must be below the freezing point of ${food.freezingPointC} °C`, startC);
  if (!(airC > food.freezingPointC + 2))
    fail(`${where}: airC`, `must be warmer than the freezing point; the food tends to ${airC} °C`, airC);
  const below = options.coefficientBelowWm2K ?? coefficientWm2K;
  const depthM = positive(options.thicknessMm, `${where}: thicknessMm`, "mm") / 1000;
  const heat = food.densityKgM3 * 1000 * (food.latentKJkg + 3 * (food.freezingPointC - startC)) * depthM;
  const simulate = (factor: number): HeatRun => {
    const body: SlabOrPieceOptions = {
      food,
      thicknessMm: options.thicknessMm,
      lengthMm: options.lengthMm,
      widthMm: options.widthMm,
      startC,
      airC,
      coefficientWm2K: coefficientWm2K * factor,
      coefficientBelowWm2K: below * factor,
      drying: "none",
      endMin:
        (4 * heat * (1 / (coefficientWm2K * factor) + depthM / food.thawedConductivityWmK)) /
        (airC - food.freezingPointC) /
        60,
      stopCoreC,
    };
    return simulateSlabOrPiece(body);
  };
  const runs = [simulate(1), simulate(1 + relativeError), simulate(1 - relativeError)];
  return {
    runs,
    range: (read) => {
      const [timeMin, earliestMin, latestMin] = runs.map(read);
      return { timeMin, earliestMin, latestMin };
    },
  };
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
