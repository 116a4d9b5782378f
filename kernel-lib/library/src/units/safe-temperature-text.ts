import { finite } from "../check/check";
import { convertUnit } from "./convert-unit";
import type { KitchenUnits } from "./unit-table";

/** Below this a difference is the rounding of a conversion there and back. */
const EXACT = 1e-6;

/**
 * A temperature that food must reach, in both units, neither of them rounded down: °C up to half a degree, °F up to a
 * degree. The kitchen's unit comes first, or else the one that it was typed in: a whole °F that is no half °C.
 *
 * A `CoreLimit` carries its source's own °F beside its °C (165 and 74): print those two as they are.
 *
 * @param leastC least temperature [°C]
 * @param units the kitchen's own; left out, as it was typed
 * @returns text such as `"75 °C (167 °F)"` or `"165 °F (74 °C)"`
 *
 * @example
 * safeTemperatureText(75); // → "75 °C (167 °F)"
 * safeTemperatureText(75, "us"); // → "167 °F (75 °C)"
 * safeTemperatureText(71.2); // → "71.5 °C (161 °F)"
 * safeTemperatureText(celsius("165 °F")); // → "165 °F (74 °C)"
 */
export function safeTemperatureText(leastC: number, units?: KitchenUnits): string {
  const exactF = convertUnit({ value: finite(leastC, "safeTemperatureText: leastC", "°C"), from: "°C", to: "°F" });
  const upC = up(2 * leastC) / 2;
  const upF = up(exactF);
  const typedF = Math.abs(exactF - upF) < EXACT && Math.abs(leastC - upC) > EXACT;
  const usFirst = units === undefined ? typedF : units === "us";
  return usFirst ? `${upF} °F (${upC} °C)` : `${upC} °C (${upF} °F)`;
}

/** The next whole number up; one that only rounding lifts above a whole number stays there. Never -0. */
function up(value: number): number {
  return Math.ceil(value - EXACT) + 0;
}
