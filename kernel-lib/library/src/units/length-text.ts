import { fail } from "../check/check";
import { inchFraction } from "./inch-fraction";
import type { KitchenUnits } from "./unit-table";

/**
 * The length of a piece or a pan, or its sides, in a kitchen's own unit with the other beside it: the nearest 1/16 in and
 * the nearest millimetre.
 *
 * @param lengthMm length, or several sides [mm], each zero or above
 * @param units the kitchen's own
 * @returns text such as `"1 9/16 in (40 mm)"` or `"40 × 25 mm (1 9/16 × 1 in)"`
 *
 * @example
 * lengthText(40, "us"); // → "1 9/16 in (40 mm)"
 * lengthText([40, 25], "metric"); // → "40 × 25 mm (1 9/16 × 1 in)"
 */
export function lengthText(lengthMm: number | readonly number[], units: KitchenUnits): string {
  const [us, metric] = [ownLengthText(lengthMm, "us"), ownLengthText(lengthMm, "metric")];
  return units === "us" ? `${us} (${metric})` : `${metric} (${us})`;
}

/**
 * A length as `lengthText` writes it, without the other unit: for a cell of a table.
 *
 * @example
 * ownLengthText([40, 25], "us"); // → "1 9/16 × 1 in"
 */
export function ownLengthText(lengthMm: number | readonly number[], units: KitchenUnits): string {
  const sides = [lengthMm].flat();
  if (sides.length === 0) fail("lengthText: lengthMm", "must hold a length in mm", lengthMm);
  const inches = sides.map((sideMm) => inchFraction(sideMm));
  if (units === "us") return `${inches.map((inch) => inch.slice(0, -3)).join(" × ")} in`;
  return `${sides.map((sideMm) => Math.round(sideMm)).join(" × ")} mm`;
}
