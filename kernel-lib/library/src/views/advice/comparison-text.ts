import { VARIANT_METRICS, type VariantComparison } from "../../advice/compare/compare-variants";
import { metricIn } from "./metric-in";

/**
 * A comparison in a few sentences: for each metric the lowest and the highest variant, whether that difference is real,
 * and how many pairs differ.
 *
 * @param comparison from `compareVariants`
 *
 * @example
 * const comparison = compareVariants({ kitchen: loadKitchen(), variantIds: ["beet-lentil", "chickpea-carrot"] });
 * comparisonText(comparison).split("\n").length; // → 10
 */
export function comparisonText(comparison: VariantComparison): string {
  const sentences = VARIANT_METRICS.flatMap((metric) => {
    const { label, of } = metricIn(metric, comparison.units);
    const known = comparison.variants.filter((variant) => variant.metrics[metric] !== null);
    if (known.length < 2) return [];
    const meanOf = (variant: (typeof known)[number]): number => of(variant.metrics[metric]?.value as number);
    const ordered = [...known].sort((a, b) => meanOf(a) - meanOf(b));
    const lowest = ordered[0];
    const highest = ordered[ordered.length - 1];
    const pairs = comparison.differences.filter((one) => one.metric === metric);
    const ends = pairs.find((one) =>
      [one.variantId, one.otherId].every((id) => id === lowest.variantId || id === highest.variantId),
    );
    const real = pairs.filter((one) => one.real).length;
    return [
      `${label}: ${lowest.variantName} ${plain(meanOf(lowest))} to ${highest.variantName} ${plain(meanOf(highest))}, ` +
        `${ends?.real ? "a real difference" : "not shown to differ"}; ${real} of ${pairs.length} pairs differ.`,
    ];
  });
  return sentences.join("\n");
}

function plain(value: number): string {
  return String(Number(value.toPrecision(3)));
}
