import type { KitchenUnits } from "../units/unit-table";
import type { CoreLimit } from "./core-limit";

/**
 * A core limit in a kitchen's own unit, as its source prints it: `"165 °F"` or `"74 °C"`.
 *
 * @example
 * limitText(coreLimit("poultry"), "us"); // → "165 °F"
 * limitText(coreLimit("groundMeat"), "metric"); // → "71.5 °C"
 */
export function limitText({ limitC, limitF }: CoreLimit, units: KitchenUnits): string {
  return units === "us" ? `${limitF} °F` : `${limitC} °C`;
}

/**
 * A core limit in a kitchen's own unit, with the other beside it.
 *
 * @example
 * bothLimits(coreLimit("poultry"), "us"); // → "165 °F (74 °C)"
 */
export function bothLimits(limit: CoreLimit, units: KitchenUnits): string {
  return `${limitText(limit, units)} (${limitText(limit, units === "us" ? "metric" : "us")})`;
}

/**
 * A core limit's caution with the kitchen's own unit first.
 *
 * @example
 * limitCaution(coreLimit("groundMeat"), "us").slice(0, 29); // → "Core at least 160 °F (71.5 °C"
 */
export function limitCaution({ limitC, limitF, caution }: CoreLimit, units: KitchenUnits): string {
  return units === "us" ? caution.replace(`${limitC} °C (${limitF} °F)`, `${limitF} °F (${limitC} °C)`) : caution;
}
