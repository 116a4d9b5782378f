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
  finite(temperatureC, "temperatureText: temperatureC", "°C");
  const exactF = convertUnit({ value: temperatureC, from: "°C", to: "°F" });
  const own = tenth(units === "us" ? exactF : temperatureC);
  const shown = (exact: number): string => String(Number.isInteger(own) ? Math.round(exact) + 0 : tenth(exact));
  const [us, metric] = [`${shown(exactF)} °F`, `${shown(temperatureC)} °C`];
  return units === "us" ? `${us} (${metric})` : `${metric} (${us})`;
}

/** To a tenth, never -0. */
function tenth(value: number): number {
  return Math.round(10 * value) / 10 + 0;
}
