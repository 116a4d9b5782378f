import { notNegative } from "../check/check";
import { convertUnit } from "./convert-unit";
import type { KitchenUnits } from "./unit-table";

const OUNCE_G = convertUnit({ value: 1, from: "oz", to: "g" });
/** Batches are weighed out by tens of grams, or by half ounces; small ones by grams, or tenths: common practice, no source. */
const STEP: Readonly<Record<KitchenUnits, readonly [small: number, large: number]>> = {
  metric: [1, 10],
  us: [0.1 * OUNCE_G, 0.5 * OUNCE_G],
};
/** A batch below this is small. */
const SMALL_G = 200;
/** Less than this is the rounding of a conversion there and back, in steps. */
const EXACT = 1e-6;

/**
 * The mass of a batch in steps that a scale is read by: 10 g in a metric kitchen, half an ounce in a US one; below
 * 200 g a gram, or a tenth of an ounce.
 *
 * @param massG mass [g], zero or above
 * @param units the kitchen's own
 * @param way where to round it to; default the nearest step
 * @returns mass [g]
 *
 * @example
 * roundToScale(1194, "metric"); // → 1190
 * massText(roundToScale(1194, "us", "down"), "us"); // → "2 lb 10 oz (1191 g)"
 */
export function roundToScale(massG: number, units: KitchenUnits, way: "down" | "nearest" | "up" = "nearest"): number {
  const step = STEP[units][notNegative(massG, "roundToScale: massG", "g") < SMALL_G ? 0 : 1];
  const steps = massG / step;
  const whole =
    way === "nearest" ? Math.round(steps) : way === "down" ? Math.floor(steps + EXACT) : Math.ceil(steps - EXACT);
  return whole * step;
}
