import { finite } from "../check/check";
import { convertUnit } from "./convert-unit";
import type { KitchenUnits } from "./unit-table";

/** Knobs and keypads of US appliances go by fives (°F): common practice, no source. */
const STEP_F = 5;
/** A setting this close to a step (°F) was typed as that step and rounded on its way through °C. */
const TYPED_WITHIN_F = 0.3;
/** Below this a difference is the rounding of the conversion itself. */
const EXACT = 1e-6;

/**
 * An appliance setting as a card prints it, in the kitchen's unit, or else the one that it was typed in, with the other one
 * beside it.
 *
 * Whole °C come first as they are; their °F is the next multiple of 5 up, as a lower setting than the one that was tried
 * would leave the core colder. What is no whole °C but within 0.3 °F of a multiple of 5 °F, or a whole °F, was typed in °F:
 * that comes first, and its °C is rounded to the nearest, or up where a metric kitchen dials it.
 *
 * @param settingC air setting [°C]
 * @param units the kitchen's own, which then come first; left out, as it was typed
 * @returns text such as `"195 °C (385 °F)"` or `"400 °F (204 °C)"`
 *
 * Range: settings only; a temperature that food must reach is `safeTemperatureText`.
 *
 * @example
 * settingText(195); // → "195 °C (385 °F)"
 * settingText(200); // → "200 °C (395 °F)"
 * settingText(celsius("400 °F")); // → "400 °F (204 °C)"
 * settingText(celsius("390 °F"), "us"); // → "390 °F (199 °C)"
 * settingText(200, "us"); // → "395 °F (200 °C)"
 * settingText(celsius("400 °F"), "metric"); // → "205 °C (400 °F)"
 */
export function settingText(settingC: number, units?: KitchenUnits): string {
  const { us, metric, typedF } = settingOf(settingC, units);
  const usFirst = units === undefined ? typedF : units === "us";
  return usFirst ? `${us} (${metric})` : `${metric} (${us})`;
}

/**
 * A setting as `settingText` writes it, for a sentence or a cell of a table: the kitchen's unit alone, but for a metric
 * kitchen's setting that was typed in °F.
 *
 * @example
 * ownSettingText(celsius("390 °F"), "us"); // → "390 °F"
 * ownSettingText(200, "metric"); // → "200 °C"
 * ownSettingText(celsius("390 °F"), "metric"); // → "199 °C (390 °F)"
 */
export function ownSettingText(settingC: number, units: KitchenUnits): string {
  const { us, metric, typedF } = settingOf(settingC, units);
  return units === "us" ? us : typedF ? `${metric} (${us})` : metric;
}

function settingOf(settingC: number, units?: KitchenUnits): { us: string; metric: string; typedF: boolean } {
  const exactF = convertUnit({ value: finite(settingC, "settingText: settingC", "°C"), from: "°C", to: "°F" });
  const wholeC = Math.abs(settingC - Math.round(settingC)) < EXACT;
  const stepF = Math.round(exactF / STEP_F) * STEP_F;
  const wholeF = Math.round(exactF);
  const typedF = wholeC
    ? null
    : Math.abs(exactF - stepF) <= TYPED_WITHIN_F
      ? stepF
      : Math.abs(exactF - wholeF) < EXACT
        ? wholeF
        : null;
  const us = `${typedF ?? Math.ceil((exactF - TYPED_WITHIN_F) / STEP_F) * STEP_F} °F`;
  const dialledC = units === "metric" ? Math.ceil(settingC - EXACT) : Math.round(settingC);
  const metric = `${typedF === null ? Number(settingC.toFixed(1)) : dialledC} °C`;
  return { us, metric, typedF: typedF !== null };
}
