import { VARIANT_METRIC_LABELS, type VariantMetric } from "../../advice/compare/compare-variants";
import { convertUnit } from "../../units/convert-unit";
import type { KitchenUnits } from "../../units/unit-table";

/** A metric of a comparison in a kitchen's own units: how a person reads it, and its numbers. */
export interface MetricIn {
  readonly label: string;
  /** a value, a difference or an end of an interval */
  readonly of: (value: number) => number;
}

/** Sizes and weights; what a nutrition label counts in grams stays in grams in every kitchen. */
const US: Partial<Readonly<Record<VariantMetric, readonly ["mm" | "g", "in" | "oz"]>>> = {
  thicknessMm: ["mm", "in"],
  pieceG: ["g", "oz"],
  servingG: ["g", "oz"],
};

export function metricIn(metric: VariantMetric, units: KitchenUnits): MetricIn {
  const label = VARIANT_METRIC_LABELS[metric];
  const own = units === "us" ? US[metric] : undefined;
  if (own === undefined) return { label, of: (value) => value };
  const [from, to] = own;
  return { label: label.replace(`(${from})`, `(${to})`), of: (value) => convertUnit({ value, from, to }) };
}
