import { type MetricEstimate, VARIANT_METRICS, type VariantComparison } from "../../advice/compare/compare-variants";
import { formatCell } from "../table/format-cell";
import type { Table } from "../table/table";
import { type MetricIn, metricIn } from "./metric-in";

/**
 * Variants side by side: a row a metric, a column a variant, each cell mean and 95 % interval.
 *
 * @example
 * const comparison = compareVariants({ kitchen: loadKitchen(), variantIds: ["beet-lentil", "chickpea-carrot"] });
 * compareVariantsTable(comparison).rows.length; // → 10
 */
export function compareVariantsTable(comparison: VariantComparison): Table {
  return {
    kind: "table",
    title: "Variants side by side (mean, 95 % interval)",
    columns: [{ heading: "what" }, ...comparison.variants.map((variant) => ({ heading: variant.variantName }))],
    rows: VARIANT_METRICS.filter((metric) =>
      comparison.variants.some((variant) => variant.metrics[metric] !== null),
    ).map((metric) => [
      metricIn(metric, comparison.units).label,
      ...comparison.variants.map((variant) => cellOf(variant.metrics[metric], metricIn(metric, comparison.units))),
    ]),
    notes: comparison.notes,
  };
}

/** Which differences are real: a row a pair and metric, the surest first within each metric. */
export function variantDifferencesTable(comparison: VariantComparison): Table {
  const nameOf = new Map(comparison.variants.map((variant) => [variant.variantId, variant.variantName]));
  const rows = VARIANT_METRICS.flatMap((metric) => {
    const { label, of } = metricIn(metric, comparison.units);
    return comparison.differences
      .filter((one) => one.metric === metric)
      .sort((a, b) => a.adjustedPValue - b.adjustedPValue)
      .map((one) => [
        label,
        nameOf.get(one.variantId) as string,
        nameOf.get(one.otherId) as string,
        of(one.difference),
        `${plain(of(one.interval95[0]))} to ${plain(of(one.interval95[1]))}`,
        one.adjustedPValue < 0.001 ? "< 0.001" : one.adjustedPValue.toFixed(3),
        one.real ? "real" : "not shown",
      ]);
  });
  return {
    kind: "table",
    title: "Differences between variants",
    columns: [
      { heading: "what" },
      { heading: "variant" },
      { heading: "less" },
      { heading: "difference" },
      { heading: "95 %" },
      { heading: "p (Holm)" },
      { heading: "difference is" },
    ],
    rows,
    notes: comparison.notes,
  };
}

function cellOf(estimate: MetricEstimate | null, { of }: MetricIn): string | null {
  if (estimate === null) return null;
  const [low, high] = estimate.interval95;
  return `${plain(of(estimate.value))} (${plain(of(low))} to ${plain(of(high))})`;
}

function plain(value: number): string {
  return formatCell(Number(value.toPrecision(3)), { heading: "" });
}
