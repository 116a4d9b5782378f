import { notNegative } from "../check/check";
import { convertUnit } from "./convert-unit";
import type { KitchenUnits } from "./unit-table";

/** Scales show tenths of an ounce, and hundredths below four: common practice, no source. */
const LIGHT_OZ = 4;
/** From here on grams are told whole. */
const HEAVY_G = 100;

/**
 * A mass in a kitchen's own units with the other beside it: pounds and ounces to a tenth of an ounce (to a hundredth below
 * four ounces), whole grams (to a tenth below 100 g).
 *
 * @param massG mass [g], zero or above
 * @param units the kitchen's own
 * @returns text such as `"2 lb 10 oz (1190 g)"` or `"23.4 g (0.83 oz)"`
 *
 * @example
 * massText(1190, "us"); // → "2 lb 10 oz (1190 g)"
 * massText(1190, "metric"); // → "1190 g (2 lb 10 oz)"
 * massText(23.4, "us"); // → "0.83 oz (23.4 g)"
 */
export function massText(massG: number, units: KitchenUnits): string {
  const [us, metric] = [ownMassText(massG, "us"), ownMassText(massG, "metric")];
  return units === "us" ? `${us} (${metric})` : `${metric} (${us})`;
}

/**
 * A mass as `massText` writes it, without the other unit: for a cell of a table.
 *
 * @example
 * ownMassText(1190, "us"); // → "2 lb 10 oz"
 * ownMassText(1190.4, "metric"); // → "1190 g"
 */
export function ownMassText(massG: number, units: KitchenUnits): string {
  notNegative(massG, "massText: massG", "g");
  if (units !== "us") return `${massG < HEAVY_G ? to(massG, 1) : Math.round(massG)} g`;
  const ounces = convertUnit({ value: massG, from: "g", to: "oz" });
  if (ounces < LIGHT_OZ) return `${to(ounces, 2)} oz`;
  const tenths = Math.round(10 * ounces);
  const pounds = Math.floor(tenths / 160);
  const rest = (tenths - 160 * pounds) / 10;
  return [pounds > 0 ? `${pounds} lb` : "", rest > 0 ? `${rest} oz` : ""].filter(Boolean).join(" ");
}

function to(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
