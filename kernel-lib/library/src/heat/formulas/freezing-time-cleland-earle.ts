import { fail, positive, within } from "../../check/check";
import { conductivityAt } from "../../food/thermal/conductivity-curve";
import { enthalpyAt } from "../../food/thermal/enthalpy";
import { checkThermalModel, type ThermalModel } from "../../food/thermal/thermal-properties";

/** A slab frozen from both faces. */
export interface FreezingTimeOptions {
  readonly food: ThermalModel;
  readonly thicknessMm: number;
  readonly coefficientWm2K: number;
  /** freezer air [°C] */
  readonly airC: number;
  /** food at the start [°C], at or above its freezing point */
  readonly startC: number;
  /** centre at the end [°C], below the freezing point; default −10 */
  readonly centreC?: number;
}

/** A freezing time with the numbers that decide whether the correlation holds. */
export interface FreezingTime {
  readonly timeMin: number;
  /** surface against inner resistance, in the author's own length */
  readonly biot: number;
  /** sensible heat below freezing over the heat of freezing */
  readonly stefan: number;
  /** sensible heat above freezing over the heat of freezing */
  readonly plank: number;
  /** true where one of the three, or the freezing point, is outside its range: then treat the time as rough */
  readonly extrapolation: boolean;
  readonly notes: readonly string[];
}

/** Checks the options that both freezing-time correlations share. */
export function checkFreezing(options: FreezingTimeOptions, where: string): Required<FreezingTimeOptions> {
  const { food, thicknessMm, coefficientWm2K, airC, startC, centreC = -10 } = options;
  checkThermalModel(food, `${where}: food`);
  if (!(food.latentKJkg > 0)) fail(`${where}: food`, "must hold water that freezes", food.latentKJkg);
  positive(thicknessMm, `${where}: thicknessMm`, "mm");
  positive(coefficientWm2K, `${where}: coefficientWm2K`, "W/(m²·K)");
  if (!(centreC < food.freezingPointC))
    fail(`${where}: centreC`, `must be below the freezing point of ${food.freezingPointC} °C`, centreC);
  if (!(airC < Math.min(centreC, -10)))
    fail(`${where}: airC`, `must be below the final centre and below -10 °C; the centre tends to ${airC} °C`, airC);
  within(startC, food.freezingPointC, 100, `${where}: startC`, "°C (from the freezing point up)");
  return { food, thicknessMm, coefficientWm2K, airC, startC, centreC };
}

/** Says which of the numbers leave their range. */
export function outOfRange(
  numbers: readonly {
    readonly name: string;
    readonly value: number;
    readonly range: readonly [number, number];
    readonly unit?: string;
  }[],
): string[] {
  return numbers
    .filter(({ value, range }) => !(value >= range[0] && value <= range[1]))
    .map(({ name, value, range, unit }) =>
      [
        name,
        value.toPrecision(3),
        ...(unit ? [unit] : []),
        `is outside ${range[0]} to ${range[1]}${unit ? ` ${unit}` : ""}.`,
      ].join(" "),
    );
}

/**
 * Freezing time of a slab after Cleland & Earle (1984): Plank's form with constants fitted to experiments.
 *
 * Ste = Cs(Tf − Ta)/ΔH10, Pk = Cl(Ti − Tf)/ΔH10, Bi = hD/ks; P = 0.5072 + 0.2018Pk + Ste(0.3224Pk + 0.0105/Bi +
 * 0.0681), R = 0.1684 + Ste(0.2740Pk − 0.0135); t = ΔH10/(Tf − Ta)·(P·D/h + R·D²/ks)·[1 − (1.65Ste/ks)·ln((Tc − Ta)/
 * (−10 − Ta))]; ΔH10 and the heat capacities by volume, ΔH10 from Tf to −10 °C, ks at −10 °C.
 *
 * @returns time until the centre is at centreC [min], with Bi, Ste, Pk
 *
 * Range: 0.155 ≤ Ste ≤ 0.345, 0.5 ≤ Bi ≤ 22, Pk ≤ 0.55 (the authors' ±3 %, from memory), freezing point −1.4 to −0.4 °C;
 * outside it is flagged. Checked inside it against the solver as `freezingTimePham`: −13 to +6 %; a food that freezes at
 * −3 °C would be up to 22 % short. Slabs in a gentle freezer lie below that Bi, and there it is 7 to 9 % short: take
 * `freezingTimePham` or the solver.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * freezingTimeClelandEarle({ food, thicknessMm: 10, coefficientWm2K: 25, airC: -18, startC: 5 }).timeMin; // → 51.0263
 *
 * Reference: Cleland A.C., Earle R.L. (1984), Journal of Food Science 49:1034-1042 (constants from memory).
 */
export function freezingTimeClelandEarle(options: FreezingTimeOptions): FreezingTime {
  const { food, thicknessMm, coefficientWm2K, airC, startC, centreC } = checkFreezing(
    options,
    "freezingTimeClelandEarle",
  );
  const { freezingPointC, densityKgM3 } = food;
  const thicknessM = thicknessMm / 1000;
  const heatJm3 = -1000 * densityKgM3 * enthalpyAt(food, -10);
  const k = conductivityAt(food, -10);
  const driving = freezingPointC - airC;
  const stefan = (1000 * densityKgM3 * food.frozenSpecificHeatKJkgK * driving) / heatJm3;
  const plank = (1000 * densityKgM3 * food.thawedSpecificHeatKJkgK * (startC - freezingPointC)) / heatJm3;
  const biot = (coefficientWm2K * thicknessM) / k;
  const p = 0.5072 + 0.2018 * plank + stefan * (0.3224 * plank + 0.0105 / biot + 0.0681);
  const r = 0.1684 + stefan * (0.274 * plank - 0.0135);
  const further = 1 - ((1.65 * stefan) / k) * Math.log((centreC - airC) / (-10 - airC));
  const seconds = (heatJm3 / driving) * ((p * thicknessM) / coefficientWm2K + (r * thicknessM ** 2) / k) * further;
  const notes = outOfRange([
    { name: "Bi", value: biot, range: [0.5, 22] },
    { name: "Ste", value: stefan, range: [0.155, 0.345] },
    { name: "Pk", value: plank, range: [0, 0.55] },
    { name: "The freezing point of", value: freezingPointC, range: [-1.4, -0.4], unit: "°C" },
  ]);
  return Object.freeze({ timeMin: seconds / 60, biot, stefan, plank, extrapolation: notes.length > 0, notes });
}
