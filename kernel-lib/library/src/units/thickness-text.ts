import { notNegative } from "../check/check";
import { convertUnit } from "./convert-unit";
import { inchFraction } from "./inch-fraction";
import { rangeText } from "./range-text";
import type { KitchenUnits } from "./unit-table";

/** Below this a thirty-second of an inch says nothing (mm). */
const THIN_MM = 1;

/**
 * The thickness of a slab, a piece or a crust, in a kitchen's own unit with the other beside it: the nearest 1/32 in, and a
 * tenth of a millimetre. Below 1 mm both are decimals.
 *
 * @param thicknessMm thickness [mm], zero or above
 * @param units the kitchen's own
 * @returns text such as `"7/16 in (11.1 mm)"` or `"11.1 mm (7/16 in)"`
 *
 * @example
 * thicknessText(11.1, "us"); // → "7/16 in (11.1 mm)"
 * thicknessText(11.1, "metric"); // → "11.1 mm (7/16 in)"
 * thicknessText(0.31, "us"); // → "0.012 in (0.31 mm)"
 */
export function thicknessText(thicknessMm: number, units: KitchenUnits): string {
  const [us, metric] = [ownThicknessText(thicknessMm, "us"), ownThicknessText(thicknessMm, "metric")];
  return units === "us" ? `${us} (${metric})` : `${metric} (${us})`;
}

/**
 * A thickness for a sentence: millimetres in a metric kitchen, both units in a US one, as a thirty-second of an inch is
 * coarse.
 *
 * @param thicknessMm thickness, or from and to [mm]
 *
 * @example
 * thicknessWords(8.7, "us"); // → "11/32 in (8.7 mm)"
 * thicknessWords([8, 11.1], "us"); // → "5/16 to 7/16 in (8.0 to 11.1 mm)"
 * thicknessWords([8, 11.1], "metric"); // → "8.0 to 11.1 mm"
 */
export function thicknessWords(thicknessMm: number | readonly [number, number], units: KitchenUnits): string {
  const [low, high] = typeof thicknessMm === "number" ? [thicknessMm, thicknessMm] : thicknessMm;
  const own = (of: KitchenUnits): string => rangeText([low, high], (mm) => ownThicknessText(mm, of));
  return units === "us" ? `${own("us")} (${own("metric")})` : own("metric");
}

/**
 * A thickness as `thicknessText` writes it, without the other unit: for a cell of a table.
 *
 * @example
 * ownThicknessText(8.7, "us"); // → "11/32 in"
 * ownThicknessText(8, "metric"); // → "8.0 mm"
 */
export function ownThicknessText(thicknessMm: number, units: KitchenUnits): string {
  notNegative(thicknessMm, "thicknessText: thicknessMm", "mm");
  const thin = thicknessMm < THIN_MM;
  if (units !== "us") return `${thicknessMm.toFixed(thin ? 2 : 1)} mm`;
  return thin
    ? `${convertUnit({ value: thicknessMm, from: "mm", to: "in" }).toFixed(3)} in`
    : inchFraction(thicknessMm, 32);
}
