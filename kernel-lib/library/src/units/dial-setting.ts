import { finite } from "../check/check";
import { convertUnit } from "./convert-unit";
import type { KitchenUnits } from "./unit-table";

/** Dials and keypads go by fives, of °C or of °F: common practice, no source. */
const STEP = 5;

/**
 * The setting of a dial nearest to a temperature: a multiple of 5 °C in a metric kitchen, of 5 °F in a US one.
 *
 * @param settingC air setting [°C]
 * @param units the kitchen's own
 * @returns a setting that the dial has [°C]
 *
 * @example
 * dialSetting(198, "metric"); // → 200
 * ownSettingText(dialSetting(198, "us"), "us"); // → "390 °F"
 */
export function dialSetting(settingC: number, units: KitchenUnits): number {
  finite(settingC, "dialSetting: settingC", "°C");
  const [from, to] = units === "us" ? (["°C", "°F"] as const) : (["°C", "°C"] as const);
  const nearest = STEP * Math.round(convertUnit({ value: settingC, from, to }) / STEP);
  return convertUnit({ value: nearest, from: to, to: from });
}
