import { convertUnit } from "../../units/convert-unit";
import type { KitchenUnits } from "../../units/unit-table";

/** How a number of the log stands in a kitchen's table. */
export interface OwnNumber {
  /** unit as the heading has it */
  readonly unit: string;
  readonly decimals: number;
  readonly of: (value: number) => number;
}

const US: Readonly<Record<string, { readonly unit: string; readonly decimals: number }>> = {
  mm: { unit: "in", decimals: 3 },
  g: { unit: "oz", decimals: 2 },
  "°C": { unit: "°F", decimals: 0 },
};
const METRIC: Readonly<Record<string, number>> = { mm: 1, g: 1, "°C": 1, min: 1, "%": 1 };

/**
 * How numbers in a metric unit stand in a kitchen's own: decimals of an inch and an ounce, as means and deviations are
 * finer than fractions.
 *
 * @example
 * ownNumber("mm", "us").of(25.4); // → 1
 * ownNumber("min", "us").unit; // → "min"
 */
export function ownNumber(unit: string, units: KitchenUnits): OwnNumber {
  const us = units === "us" ? US[unit] : undefined;
  if (us === undefined) return { unit, decimals: METRIC[unit] ?? 2, of: (value) => value };
  return { ...us, of: (value) => convertUnit({ value, from: unit, to: us.unit }) };
}
