import { fail, positive, within } from "../../check/check";
import { checkThermalModel, type ThermalModel } from "../../food/thermal/thermal-properties";
import type { HeatRun } from "../solver/heat-run";
import { type EdgesIfTheyCountOptions, simulateEdgesIfTheyCount } from "../solver/simulate-edges-if-they-count";
import { runsOverDoubt } from "./runs-over-doubt";

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

/** Runs the counter three times: as given, with more and with less heat transfer. */
export function counterRuns(
  options: CounterOptions,
  stopCoreC: number,
  where: string,
): ReturnType<typeof runsOverDoubt> {
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
    const body: EdgesIfTheyCountOptions = {
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
    return simulateEdgesIfTheyCount(body);
  };
  return runsOverDoubt(relativeError, simulate);
}
