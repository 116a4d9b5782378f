import { fail, positive, within } from "../../check/check";
import { enthalpyAt } from "../../food/thermal/enthalpy";
import { checkThermalModel, type ThermalModel } from "../../food/thermal/thermal-properties";
import { type CoreTarget, coreTarget } from "../solver/core-target";

/** A slab that is heated from both faces. */
export interface CoreTimeClosedFormOptions {
  readonly food: ThermalModel;
  readonly thicknessMm: number;
  /** heat transfer coefficient at both faces, radiation included [W/(m²·K)] */
  readonly coefficientWm2K: number;
  /** air of the appliance [°C] */
  readonly airC: number;
  /** food at the start [°C]; default −18 */
  readonly startC?: number;
  /** core to reach [°C]; default 74 */
  readonly limitC?: number;
}

/** A core time from the short form, with how far the short form itself can be off. */
export interface CoreTimeClosedForm extends CoreTarget {
  readonly timeMin: number;
  /** a of t = a·L + b·L² [min/mm]: the share of the surface */
  readonly perMm: number;
  /** b of t = a·L + b·L² [min/mm²]: the share of the inside */
  readonly perMm2: number;
  /** root-mean-square error of the form against the enthalpy solver [-] */
  readonly relativeError: number;
  /** its worst error there [-] */
  readonly worstRelativeError: number;
  /** true outside the runs that the form was fitted to */
  readonly extrapolation: boolean;
}

/** Mean surface temperature and share of the thawed conductivity, fitted to 24 solver runs for each start. */
const FITTED = {
  frozen: { surfaceC: 15.411557811824263, conductivityShare: 0.3804222519090248 / 0.49, rms: 0.0184, worst: 0.0602 },
  chilled: { surfaceC: 33.546491997727145, conductivityShare: 0.28432666687390995 / 0.49, rms: 0.0302, worst: 0.0901 },
} as const;

/**
 * Time for the core of a slab to reach a temperature, in a short form of the enthalpy solver.
 *
 * t = ΔHv/(Ta − Tm)·(L/2h + L²/8k*), ΔHv = ρ[h(limit) − h(start)]; Tm stands for the mean surface temperature and k*
 * for the mean conductivity on the way: 15.4 °C and 0.78 of the thawed conductivity from frozen, 33.5 °C and 0.58 from
 * chilled. It is t = a·L + b·L²: a from the surface, b from the inside.
 *
 * @returns time [min], a [min/mm], b [min/mm²], the form's own error, the limit with its caution and source
 *
 * Range: fitted to 24 runs each for 170 to 220 °C air, 30 to 60 W/(m²·K), 6 to 19 mm, start −18 or 4 °C, core 74 °C;
 * both faces alike, edges left out. Outside, `extrapolation` is true. A safety decision takes `coreTime`.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * coreTimeClosedForm({ food, thicknessMm: 12.7, coefficientWm2K: 40, airC: 204 }).timeMin; // → 9.8375
 *
 * Reference: form of Plank (1913) for the two resistances; constants from this library's enthalpy solver.
 */
export function coreTimeClosedForm(options: CoreTimeClosedFormOptions): CoreTimeClosedForm {
  const { food, airC, startC = -18 } = options;
  const target = coreTarget(options.limitC);
  const { limitC } = target;
  checkThermalModel(food, "coreTimeClosedForm: food");
  const thicknessMm = positive(options.thicknessMm, "coreTimeClosedForm: thicknessMm", "mm");
  const coefficientWm2K = positive(options.coefficientWm2K, "coreTimeClosedForm: coefficientWm2K", "W/(m²·K)");
  within(startC, -40, 60, "coreTimeClosedForm: startC", "°C");
  within(limitC, startC, 95, "coreTimeClosedForm: limitC", "°C (from startC up)");
  if (!(airC > limitC)) fail("coreTimeClosedForm: airC", `must be above the core limit of ${limitC} °C`, airC);
  const fitted = startC < food.freezingPointC ? FITTED.frozen : FITTED.chilled;
  if (!(airC > fitted.surfaceC + 40))
    fail("coreTimeClosedForm: airC", `must be at least ${Math.ceil(fitted.surfaceC + 40)} °C for the short form`, airC);
  const heatJm3 = food.densityKgM3 * 1000 * (enthalpyAt(food, limitC) - enthalpyAt(food, startC));
  const driven = heatJm3 / (airC - fitted.surfaceC) / 60;
  const perMm = driven / (2 * coefficientWm2K) / 1e3;
  const perMm2 = driven / (8 * fitted.conductivityShare * food.thawedConductivityWmK) / 1e6;
  const inside =
    airC >= 170 &&
    airC <= 220 &&
    coefficientWm2K >= 30 &&
    coefficientWm2K <= 60 &&
    thicknessMm >= 6 &&
    thicknessMm <= 19;
  return Object.freeze({
    timeMin: perMm * thicknessMm + perMm2 * thicknessMm ** 2,
    perMm,
    perMm2,
    relativeError: fitted.rms,
    worstRelativeError: fitted.worst,
    extrapolation: !(inside && Math.abs(limitC - 74) <= 5 && (startC <= -15 || (startC >= 0 && startC <= 8))),
    ...target,
  });
}
