import { positive, within } from "../../check/check";
import { enthalpyAt } from "../../food/thermal/enthalpy";
import type { ThermalModel } from "../../food/thermal/thermal-properties";
import { coreTimeClosedForm } from "../../heat/formulas/core-time-closed-form";
import { crustStart } from "../../heat/formulas/crust-start";

/** Temperature of the evaporating front (°C): the upper limit, see `crustDepthMm`. */
export const EVAPORATION_C = 100;
/** The short form of the core time was fitted to this core temperature. */
export const FITTED_CORE_C = 74;

/** What the clocks need that depends on the food, its start and the air only: worked out once, used many times. */
export interface ClockBasis {
  readonly food: ThermalModel;
  readonly startC: number;
  readonly airC: number;
  readonly limitC: number;
  /** starts frozen */
  readonly frozen: boolean;
  /** a·h (min·W/(m²·K)/mm) and b (min/mm²) of the core's time to 74 °C */
  readonly fittedSurface: number;
  readonly fittedInside: number;
  /** core temperature while the short form holds: enthalpy grows in proportion (kJ/kg from start to 74 °C) */
  readonly fittedHeatKJkg: number;
  readonly startHeatKJkg: number;
  /** heat to bring a slab to the evaporating temperature (J/m³) */
  readonly crustHeatJm3: number;
  /** soak-up lag (min/mm²) */
  readonly soak: number;
  /** mean surface temperature of a slab that warms all through alike (°C) */
  readonly uniformMeanC: number;
  /** h·ℓ/k for each W/(m²·K) and mm of thickness */
  readonly biot: number;
  /** relative rms error of the short forms against the solver [-] */
  readonly coreError: number;
}

/** What `clockBasis` works from. */
export interface ClockBasisOptions {
  readonly food: ThermalModel;
  /** pieces when they go in (°C) */
  readonly startC: number;
  /** air of the appliance (°C) */
  readonly airC: number;
  /** core to reach (°C) */
  readonly limitC: number;
}

/**
 * The part of the closed forms of `heat/` that depends on neither coefficient nor thickness.
 *
 * Core: t = a·L + b·L² from `coreTimeClosedForm`, a ∝ 1/h, b ∝ 1/k. Crust: the start of `crustStart`, whose mean
 * surface temperature of an evenly warm slab is read off at a Biot number of nearly 0. A test holds the clocks to the
 * functions of `heat/` to 1e-9.
 */
export function clockBasis(options: ClockBasisOptions): ClockBasis {
  const { food, startC, airC, limitC } = options;
  within(airC, EVAPORATION_C + 10, 320, "clockBasis: airC", "°C");
  within(startC, -40, 60, "clockBasis: startC", "°C");
  positive(limitC, "clockBasis: limitC", "°C");
  const one = { food, thicknessMm: 1, coefficientWm2K: 1, airC, startC };
  const core = coreTimeClosedForm({ ...one, limitC });
  const fitted = coreTimeClosedForm({ ...one, limitC: FITTED_CORE_C });
  const faint = 1e-9;
  const start = crustStart({ ...one, coefficientWm2K: faint });
  const crustHeatJm3 = food.densityKgM3 * 1000 * (enthalpyAt(food, EVAPORATION_C) - enthalpyAt(food, startC));
  return {
    food,
    startC,
    airC,
    limitC,
    frozen: startC < food.freezingPointC,
    fittedSurface: fitted.perMm,
    fittedInside: fitted.perMm2,
    fittedHeatKJkg: enthalpyAt(food, FITTED_CORE_C) - enthalpyAt(food, startC),
    startHeatKJkg: enthalpyAt(food, startC),
    crustHeatJm3,
    soak: start.soakMin,
    uniformMeanC: airC - (crustHeatJm3 * 0.0005) / faint / (60 * start.surfaceMin),
    biot: 0.0005 / food.thawedConductivityWmK,
    coreError: core.relativeError,
  };
}
