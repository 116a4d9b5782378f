import { ownMassText } from "../units/mass-text";
import { roundToScale } from "../units/round-to-scale";
import type { KitchenUnits } from "../units/unit-table";

/**
 * What a pan holds, in a kitchen's own unit and never rounded up: whole grams, or half ounces.
 *
 * @param brimG mass that fills it to the rim [g]
 *
 * @example
 * heldText(1190.9, "metric"); // → "1190 g"
 * heldText(1190.6, "us"); // → "2 lb 9.5 oz"
 */
export function heldText(brimG: number, units: KitchenUnits): string {
  return ownMassText(units === "us" ? roundToScale(brimG, units, "down") : Math.floor(brimG), units);
}
