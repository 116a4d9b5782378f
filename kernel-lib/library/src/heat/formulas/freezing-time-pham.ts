import { within } from "../../check/check";
import { conductivityAt } from "../../food/thermal/conductivity-curve";
import { iceFraction } from "../../food/thermal/ice-fraction";
import { FUSION_KJKG } from "../../food/thermal/thermal-properties";
import { checkFreezing, type FreezingTime, type FreezingTimeOptions, outOfRange } from "./freezing-time-cleland-earle";

/** Options of `freezingTimePham`: a slab, or a shape through its equivalent heat transfer dimension. */
export interface FreezingTimePhamOptions extends FreezingTimeOptions {
  /** 1 slab, 2 long cylinder, 3 sphere, or `equivalentDimension` of a brick [-]; default 1 */
  readonly equivalentDimension?: number;
}

/** Freezing point at which Pham's mean freezing temperature is left as it is: there it meets the solver [°C]. */
const LEFT_AS_IT_IS_C = -1;

/** Mean temperature at which water turns to ice on the way down to a temperature, on Schwartzberg's curve [°C]. */
function meanIceC(freezingPointC: number, downToC: number): number {
  return (freezingPointC * Math.log(downToC / freezingPointC)) / (1 - freezingPointC / downToC);
}

/**
 * Freezing time after Pham (1986): cooling and freezing as two stages with their own driving differences.
 *
 * Tfm = 1.8 + 0.263Tc + 0.105Ta + [m(Tf) − m(−1 °C)]; ΔH1 = Cl(Ti − Tfm); ΔH2 = Lv + Cs(Tfm − Tc);
 * ΔT1 = (Ti + Tfm)/2 − Ta; ΔT2 = Tfm − Ta; t = D/(2Eh)·(ΔH1/ΔT1 + ΔH2/ΔT2)·(1 + Bi/2), Bi = hD/(2ks). Heats by
 * volume; Lv is the heat of the water that is ice at Tc; ks at −10 °C. The bracket is ours: Pham's Tfm knows no freezing
 * point, so it is moved by as much as m(Tf) = Tf·ln(Tc/Tf)/(1 − Tf/Tc), the mean temperature at which ice forms.
 *
 * @returns time until the centre is at centreC [min], with Bi, Ste, Pk
 *
 * Range: 0.02 < Bi < 11, 0.11 < Ste < 0.36, 0.03 < Pk < 0.61, freezing point −3 to −0.4 °C; outside it is flagged.
 * Checked inside it against the solver for 13 foods, slabs of 10 to 40 mm, 8 to 150 W/(m²·K), air −18 to −35 °C, from 5
 * and 20 to −10 and −15 °C: −8 to +11 %, whatever the freezing point; in −18 °C air from 5 to −10 °C 1 to 3 % short.
 * Without the bracket it would be up to 25 % short for foods that freeze at −3 °C.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * freezingTimePham({ food, thicknessMm: 10, coefficientWm2K: 25, airC: -18, startC: 5 }).timeMin; // → 55.2011
 *
 * Reference: Pham Q.T. (1986), International Journal of Refrigeration 9:209-213.
 */
export function freezingTimePham(options: FreezingTimePhamOptions): FreezingTime {
  const { food, thicknessMm, coefficientWm2K, airC, startC, centreC } = checkFreezing(options, "freezingTimePham");
  const dimension = within(options.equivalentDimension ?? 1, 1, 3, "freezingTimePham: equivalentDimension", "");
  const perVolume = 1000 * food.densityKgM3;
  const k = conductivityAt(food, -10);
  const shiftK = meanIceC(food.freezingPointC, centreC) - meanIceC(LEFT_AS_IT_IS_C, centreC);
  const meanFreezingC = 1.8 + 0.263 * centreC + 0.105 * airC + shiftK;
  const cooling = perVolume * food.thawedSpecificHeatKJkgK * (startC - meanFreezingC);
  const freezing =
    perVolume * (iceFraction(food, centreC) * FUSION_KJKG + food.frozenSpecificHeatKJkgK * (meanFreezingC - centreC));
  const coolingK = (startC + meanFreezingC) / 2 - airC;
  const freezingK = meanFreezingC - airC;
  const thicknessM = thicknessMm / 1000;
  const biot = (coefficientWm2K * thicknessM) / (2 * k);
  const seconds =
    (thicknessM / (2 * dimension * coefficientWm2K)) * (cooling / coolingK + freezing / freezingK) * (1 + biot / 2);
  const stefan = (perVolume * food.frozenSpecificHeatKJkgK * (food.freezingPointC - airC)) / freezing;
  const plank = (perVolume * food.thawedSpecificHeatKJkgK * (startC - food.freezingPointC)) / freezing;
  const notes = outOfRange([
    { name: "Bi", value: biot, range: [0.02, 11] },
    { name: "Ste", value: stefan, range: [0.11, 0.36] },
    { name: "Pk", value: plank, range: [0.03, 0.61] },
    { name: "The freezing point of", value: food.freezingPointC, range: [-3, -0.4], unit: "°C" },
  ]);
  return Object.freeze({ timeMin: seconds / 60, biot, stefan, plank, extrapolation: notes.length > 0, notes });
}
