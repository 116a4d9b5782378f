import { finite } from "../../check/check";
import type { ThermalModel } from "./thermal-properties";

/**
 * Enthalpy of a food at a temperature, one closed curve through freezing, after Schwartzberg (1976).
 *
 * Thawed h = cu·(T − Tf); frozen h = cf·(T − Tf) − A·(1 − Tf/T), A the latent heat of all freezable water. Zero is the
 * thawed food at its freezing point.
 *
 * @param model constants of the food, from `thermalProperties`
 * @param temperatureC [°C]
 * @returns enthalpy [kJ/kg], the same number in J/g
 *
 * Range: −40 to 100 °C, no evaporation. `temperatureFromEnthalpy` is its exact inverse.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * enthalpyAt(food, -18); // → -238.1632
 * enthalpyAt(food, 74) - enthalpyAt(food, -18); // → 500.6632
 * temperatureFromEnthalpy(food, -238.1632); // → -18
 *
 * Reference: Schwartzberg H.G. (1976), Journal of Food Science 41:152-156, its short form integrated.
 */
export function enthalpyAt(model: ThermalModel, temperatureC: number): number {
  finite(temperatureC, "enthalpyAt: temperatureC", "°C");
  const { freezingPointC, latentKJkg, thawedSpecificHeatKJkgK, frozenSpecificHeatKJkgK } = model;
  const above = temperatureC - freezingPointC;
  if (above >= 0) return thawedSpecificHeatKJkgK * above;
  return frozenSpecificHeatKJkgK * above - latentKJkg * (1 - freezingPointC / temperatureC);
}

/**
 * Temperature of a food that holds a given enthalpy: the inverse of `enthalpyAt`, in closed form.
 *
 * Frozen: T = [B − √(B² − 4·cf·A·Tf)]/(2·cf), B = cf·Tf + A + h.
 *
 * @param model constants of the food, from `thermalProperties`
 * @param enthalpyKJkg [kJ/kg], zero at the freezing point
 * @returns temperature [°C]
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * temperatureFromEnthalpy(food, 262.5); // → 74
 */
export function temperatureFromEnthalpy(model: ThermalModel, enthalpyKJkg: number): number {
  finite(enthalpyKJkg, "temperatureFromEnthalpy: enthalpyKJkg", "kJ/kg");
  const { freezingPointC, latentKJkg, thawedSpecificHeatKJkgK, frozenSpecificHeatKJkgK } = model;
  if (enthalpyKJkg >= 0) return freezingPointC + enthalpyKJkg / thawedSpecificHeatKJkgK;
  const b = frozenSpecificHeatKJkgK * freezingPointC + latentKJkg + enthalpyKJkg;
  const root = Math.sqrt(b * b - 4 * frozenSpecificHeatKJkgK * latentKJkg * freezingPointC);
  return (b - root) / (2 * frozenSpecificHeatKJkgK);
}
