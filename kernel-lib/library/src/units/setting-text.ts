import { finite } from "../check/check";
import { convertUnit } from "./convert-unit";

/** Knobs and keypads of US appliances go by fives (°F): common practice, no source. */
const STEP_F = 5;
/** A setting this close to a step (°F) was typed as that step and rounded on its way through °C. */
const TYPED_WITHIN_F = 0.3;
/** Below this a difference is the rounding of the conversion itself. */
const EXACT = 1e-6;

/**
 * An appliance setting as a card prints it, in the unit that it was typed in with the other one beside it.
 *
 * Whole °C come first as they are; their °F is the next multiple of 5 up, as a lower setting than the one that was tried
 * would leave the core colder. What is no whole °C but within 0.3 °F of a multiple of 5 °F, or a whole °F, was typed in °F:
 * that comes first, and its °C is rounded to the nearest.
 *
 * @param settingC air setting [°C]
 * @returns text such as `"195 °C (385 °F)"` or `"400 °F (204 °C)"`
 *
 * Range: settings only; a temperature that food must reach is `safeTemperatureText`.
 *
 * @example
 * settingText(195); // → "195 °C (385 °F)"
 * settingText(200); // → "200 °C (395 °F)"
 * settingText(celsius("400 °F")); // → "400 °F (204 °C)"
 * settingText(celsius("390 °F")); // → "390 °F (199 °C)"
 */
export function settingText(settingC: number): string {
  const exactF = convertUnit({ value: finite(settingC, "settingText: settingC", "°C"), from: "°C", to: "°F" });
  const wholeC = Math.abs(settingC - Math.round(settingC)) < EXACT;
  const stepF = Math.round(exactF / STEP_F) * STEP_F;
  if (!wholeC && Math.abs(exactF - stepF) <= TYPED_WITHIN_F) return `${stepF} °F (${Math.round(settingC)} °C)`;
  if (!wholeC && Math.abs(exactF - Math.round(exactF)) < EXACT)
    return `${Math.round(exactF)} °F (${Math.round(settingC)} °C)`;
  const upF = Math.ceil((exactF - TYPED_WITHIN_F) / STEP_F) * STEP_F;
  return `${Number(settingC.toFixed(1))} °C (${upF} °F)`;
}
