import { fail, positive, within } from "../../check/check";
import { checkThermalModel, type ThermalModel } from "../../food/thermal/thermal-properties";
import { type HeatRun, timeWhen } from "../solver/heat-run";
import { simulateEdgesIfTheyCount } from "../solver/simulate-edges-if-they-count";
import { runsOverDoubt, type TimeRange } from "./runs-over-doubt";

/** Single pieces spread out in a freezer. */
export interface FlashFreezeOptions {
  readonly food: ThermalModel;
  readonly thicknessMm: number;
  /** leave both sides out for a slab */
  readonly lengthMm?: number;
  readonly widthMm?: number;
  /** freezer air [°C] */
  readonly airC: number;
  /** all round [W/(m²·K)]; `freezerCoefficients` gives a start */
  readonly coefficientWm2K: number;
  /** below [W/(m²·K)]; default as above */
  readonly coefficientBelowWm2K?: number;
  /** both may be off by this share either way [-]; default 0.4 */
  readonly relativeError?: number;
  /** pieces as they go in [°C]; default 20, coated and par-cooked pieces after cooling */
  readonly startC?: number;
  /** core when they can be packed [°C]; default −10, below the food's freezing point */
  readonly coreC?: number;
}

/** When pieces are frozen through. */
export interface FlashFreeze extends TimeRange {
  readonly kind: "flash freeze";
  readonly coreC: number;
  readonly run: HeatRun;
}

/**
 * Time for single pieces to freeze through before they are packed.
 *
 * @returns time until the core is at coreC [min], with its range
 *
 * Range: as `simulatePiece`; pieces apart from each other. Hot food is cooled first, within your code's cooling times.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * flashFreeze({ food, thicknessMm: 10, widthMm: 30, lengthMm: 30, airC: -18, coefficientWm2K: 9 }).timeMin; // → 104
 *
 * Reference: this library's enthalpy solver.
 */
export function flashFreeze(options: FlashFreezeOptions): FlashFreeze {
  const where = "flashFreeze";
  const { food, airC, startC = 20, coreC = -10, relativeError = 0.4 } = options;
  checkThermalModel(food, `${where}: food`);
  const coefficientWm2K = positive(options.coefficientWm2K, `${where}: coefficientWm2K`, "W/(m²·K)");
  within(relativeError, 0, 0.9, `${where}: relativeError`, "");
  if (!(startC > food.freezingPointC))
    fail(`${where}: startC`, `must be above the freezing point of ${food.freezingPointC} °C`, startC);
  if (!(coreC < food.freezingPointC))
    fail(`${where}: coreC`, `must be below the freezing point of ${food.freezingPointC} °C`, coreC);
  if (!(airC < coreC - 0.5))
    fail(`${where}: airC`, `must be below the core's ${coreC} °C; the core tends to ${airC} °C`, airC);
  const depthM = positive(options.thicknessMm, `${where}: thicknessMm`, "mm") / 1000;
  const heat = food.densityKgM3 * 1000 * (food.latentKJkg + 4 * (startC - airC)) * depthM;
  const simulate = (factor: number): HeatRun =>
    simulateEdgesIfTheyCount({
      food,
      thicknessMm: options.thicknessMm,
      lengthMm: options.lengthMm,
      widthMm: options.widthMm,
      startC,
      airC,
      coefficientWm2K: coefficientWm2K * factor,
      coefficientBelowWm2K: (options.coefficientBelowWm2K ?? coefficientWm2K) * factor,
      drying: "none",
      endMin:
        (20 * heat * (1 / (coefficientWm2K * factor) + depthM / food.thawedConductivityWmK)) /
        (food.freezingPointC - airC) /
        60,
      stopCoreC: coreC,
    });
  const { runs, range } = runsOverDoubt(relativeError, simulate);
  const times = range((run) => timeWhen(run, { column: "coreC", value: coreC }));
  return Object.freeze({ kind: "flash freeze" as const, ...times, coreC, run: runs[0] });
}
