import { within } from "../../check/check";
import { FUSION_KJKG, type ThermalModel } from "./thermal-properties";

/**
 * Mass of ice in a food at a temperature, after Schwartzberg's ideal solution: (xw − xb)(1 − Tf/T).
 *
 * @param model constants of the food, from `thermalProperties`
 * @param temperatureC [°C]
 * @returns mass of ice by mass of food [-]
 *
 * Range: −40 °C up; above the freezing point there is none. `iceFractionTchigeov` is an independent curve; the two
 * differ by about 0.1 near −5 °C, which is the size of the doubt.
 *
 * @example
 * const lean = { densityKgM3: 1050, waterFraction: 0.71505, freezingPointC: -1.7, latentKJkg: 0.62911 * 333.6, thawedSpecificHeatKJkgK: 3.55, frozenSpecificHeatKJkgK: 2.1, thawedConductivityWmK: 0.5, frozenConductivityWmK: 1.6 };
 * iceFraction(lean, -18); // → 0.5697
 *
 * Reference: Schwartzberg H.G. (1976), Journal of Food Science 41:152-156.
 */
export function iceFraction(model: ThermalModel, temperatureC: number): number {
  within(temperatureC, -60, 300, "iceFraction: temperatureC", "°C");
  if (temperatureC >= model.freezingPointC) return 0;
  return (model.latentKJkg / FUSION_KJKG) * (1 - model.freezingPointC / temperatureC);
}

/** What Tchigeov's ice curve depends on. */
export interface TchigeovOptions {
  /** all water by mass [-] */
  readonly waterFraction: number;
  /** initial freezing point [°C] */
  readonly freezingPointC: number;
  /** [°C], −45 up to the freezing point; above it there is no ice */
  readonly temperatureC: number;
}

/**
 * Mass of ice in a food after Tchigeov (1979): 1.105·xw/[1 + 0.7138/ln(Tf − T + 1)], an empirical curve that needs no
 * bound water.
 *
 * @returns mass of ice by mass of food [-]
 *
 * Range: −45 °C to the freezing point (form from memory; its worked example is met).
 *
 * @example
 * iceFractionTchigeov({ waterFraction: 0.58, freezingPointC: -1.7, temperatureC: -20 }); // → 0.51638
 *
 * Reference: Tchigeov G. (1979), as in ASHRAE Handbook - Refrigeration (2006), chapter 9.
 */
export function iceFractionTchigeov(options: TchigeovOptions): number {
  const { waterFraction, freezingPointC, temperatureC } = options;
  within(waterFraction, 0, 1, "iceFractionTchigeov: waterFraction", "");
  within(freezingPointC, -20, 0, "iceFractionTchigeov: freezingPointC", "°C");
  within(temperatureC, -45, 100, "iceFractionTchigeov: temperatureC", "°C");
  if (temperatureC >= freezingPointC) return 0;
  return (1.105 * waterFraction) / (1 + 0.7138 / Math.log(freezingPointC - temperatureC + 1));
}
