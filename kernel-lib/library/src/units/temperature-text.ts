import { finite } from "../check/check";
import { convertUnit } from "./convert-unit";
import type { KitchenUnits } from "./unit-table";

/**
 * A temperature that was measured, calculated or chosen, in a kitchen's own unit with the other beside it: both whole where
 * the first is whole to a tenth of a degree, else both to a tenth.
 *
 * A setting to dial in is `settingText`; a temperature that food must reach is `safeTemperatureText`.
 *
 * @param temperatureC temperature [°C]
 * @param units the kitchen's own
 * @returns text such as `"390 °F (199 °C)"` or `"73.8 °C (164.8 °F)"`
 *
 * @example
 * temperatureText(celsius("390 °F"), "us"); // → "390 °F (199 °C)"
 * temperatureText(-18, "metric"); // → "-18 °C (0 °F)"
 * temperatureText(73.8, "metric"); // → "73.8 °C (164.8 °F)"
 */
export function temperatureText(temperatureC: number, units: KitchenUnits): string {
  const own = ownTemperature(temperatureC, units);
  const exactF = convertUnit({ value: temperatureC, from: "°C", to: "°F" });
  const shown = (exact: number): string => String(Number.isInteger(own) ? Math.round(exact) + 0 : tenth(exact));
  const [us, metric] = [`${shown(exactF)} °F`, `${shown(temperatureC)} °C`];
  return units === "us" ? `${us} (${metric})` : `${metric} (${us})`;
}

/**
 * A temperature as `temperatureText` writes it, without the other unit: for a sentence or a cell of a table.
 *
 * @example
 * ownTemperatureText(73.8, "us"); // → "164.8 °F"
 * ownTemperatureText(73.8, "us", 0); // → "165 °F"
 */
export function ownTemperatureText(temperatureC: number, units: KitchenUnits, decimals: 0 | 1 = 1): string {
  return `${Number(ownTemperature(temperatureC, units).toFixed(decimals)) + 0} ${units === "us" ? "°F" : "°C"}`;
}

function ownTemperature(temperatureC: number, units: KitchenUnits): number {
  finite(temperatureC, "temperatureText: temperatureC", "°C");
  return tenth(units === "us" ? convertUnit({ value: temperatureC, from: "°C", to: "°F" }) : temperatureC);
}

/** To a tenth, never -0. */
function tenth(value: number): number {
  return Math.round(10 * value) / 10 + 0;
}
