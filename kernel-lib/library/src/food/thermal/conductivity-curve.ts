import { finite } from "../../check/check";
import type { ThermalModel } from "./thermal-properties";

/**
 * Conductivity of a food along its freezing curve: it goes from the thawed to the frozen value as ice forms.
 *
 * k = ku above the freezing point; k = kf + (ku − kf)·Tf/T below, linear in the ice fraction.
 *
 * @param model constants of the food, from `thermalProperties`
 * @param temperatureC [°C]
 * @returns conductivity [W/(m·K)]
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * conductivityAt(food, -10); // → 1.399
 */
export function conductivityAt(model: ThermalModel, temperatureC: number): number {
  finite(temperatureC, "conductivityAt: temperatureC", "°C");
  const { freezingPointC, thawedConductivityWmK, frozenConductivityWmK } = model;
  if (temperatureC >= freezingPointC) return thawedConductivityWmK;
  return frozenConductivityWmK + ((thawedConductivityWmK - frozenConductivityWmK) * freezingPointC) / temperatureC;
}
