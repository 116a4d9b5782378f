import { notNegative } from "../check/check";
import { convertUnit } from "./convert-unit";
import type { KitchenUnits } from "./unit-table";

/** Batches are weighed out by tens of grams, or by half ounces: common practice, no source. */
const STEP: Readonly<Record<KitchenUnits, number>> = {
  metric: 10,
  us: convertUnit({ value: 0.5, from: "oz", to: "g" }),
};
/** Less than this is the rounding of a conversion there and back, in steps. */
const EXACT = 1e-6;

/**
 * The mass of a batch in steps that a scale is read by: 10 g in a metric kitchen, half an ounce in a US one.
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
  const steps = notNegative(massG, "roundToScale: massG", "g") / STEP[units];
  const whole =
    way === "nearest" ? Math.round(steps) : way === "down" ? Math.floor(steps + EXACT) : Math.ceil(steps - EXACT);
  return whole * STEP[units];
}
