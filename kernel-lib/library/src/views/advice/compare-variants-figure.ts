import type {
  MetricEstimate,
  VariantComparison,
  VariantDifference,
  VariantMetric,
} from "../../advice/compare/compare-variants";
import { fail } from "../../check/check";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE } from "../figure/palette";
import { metricIn } from "./metric-in";

/** The first on top. */
const TOP_DOWN: object = { autorange: "reversed", automargin: true, gridcolor: "#e5e5e5", ticks: "outside" };

/**
 * One metric of every variant as a point with its 95 % interval.
 *
 * @param comparison from `compareVariants`
 * @param metric what to show
 *
 * @example
 * const comparison = compareVariants({ kitchen: loadKitchen(), variantIds: ["beet-lentil", "chickpea-carrot"] });
 * compareVariantsFigure(comparison, "proteinG").data.length; // → 2
 */
export function compareVariantsFigure(comparison: VariantComparison, metric: VariantMetric): Figure {
  const { label, of } = metricIn(metric, comparison.units);
  const shown = comparison.variants.flatMap(({ variantName, metrics }) => {
    const estimate = metrics[metric];
    if (estimate === null) return [];
    const [low, high] = estimate.interval95;
    return [{ variantName, estimate: { value: of(estimate.value), interval95: [of(low), of(high)] as const } }];
  });
  if (shown.length === 0) fail("compareVariantsFigure: metric", "must be known for a variant", metric);
  const text = ({ value, interval95 }: Pick<MetricEstimate, "value" | "interval95">): string =>
    `${plain(value)} (${plain(interval95[0])} to ${plain(interval95[1])})`;
  return {
    kind: "figure",
    data: shown.map(({ variantName, estimate }, at) => ({
      type: "scatter",
      mode: "markers",
      name: variantName,
      showlegend: false,
      x: [estimate.value],
      y: [variantName],
      error_x: {
        type: "data",
        symmetric: false,
        array: [estimate.interval95[1] - estimate.value],
        arrayminus: [estimate.value - estimate.interval95[0]],
        thickness: 1.5,
        width: 5,
        color: PALETTE[at % PALETTE.length],
      },
      marker: { color: PALETTE[at % PALETTE.length], symbol: MARKERS[at % MARKERS.length], size: 11 },
      hovertemplate: `%{y}: ${text(estimate)}<extra></extra>`,
    })),
    layout: houseLayout({
      title: `Variants by ${label}`,
      xTitle: label,
      yTitle: "",
      more: { height: 160 + 44 * shown.length, yaxis: TOP_DOWN },
    }),
    summary: `Mean ${label} with 95 % interval: ${shown.map(({ variantName, estimate }) => `${variantName} ${text(estimate)}`).join("; ")}.`,
  };
}

/**
 * Differences between variants by one metric: each pair with its 95 % interval and a line at no difference; filled
 * points are real by Holm's p value, open ones are not shown to be.
 *
 * @param comparison from `compareVariants`
 * @param metric what to show
 *
 * @example
 * const comparison = compareVariants({ kitchen: loadKitchen(), variantIds: ["beet-lentil", "chickpea-carrot"] });
 * variantDifferencesFigure(comparison, "proteinG").data.length; // → 2
 */
export function variantDifferencesFigure(comparison: VariantComparison, metric: VariantMetric): Figure {
  const { label, of } = metricIn(metric, comparison.units);
  const pairs = comparison.differences
    .filter((one) => one.metric === metric)
    .map((one) => ({
      ...one,
      difference: of(one.difference),
      interval95: [of(one.interval95[0]), of(one.interval95[1])] as const,
    }));
  if (pairs.length === 0) fail("variantDifferencesFigure: metric", "must be known for two variants", metric);
  const nameOfPair = (pair: Pick<VariantDifference, "variantId" | "otherId">): string =>
    `${pair.variantId} − ${pair.otherId}`;
  const group = (real: boolean): object => {
    const some = pairs.filter((pair) => pair.real === real);
    return {
      type: "scatter",
      mode: "markers",
      name: real ? "real" : "not shown to be real",
      x: some.map((pair) => pair.difference),
      y: some.map(nameOfPair),
      customdata: some.map((pair) => pair.adjustedPValue),
      error_x: {
        type: "data",
        symmetric: false,
        array: some.map((pair) => pair.interval95[1] - pair.difference),
        arrayminus: some.map((pair) => pair.difference - pair.interval95[0]),
        thickness: 1.5,
        width: 5,
        color: real ? PALETTE[0] : PALETTE[1],
      },
      marker: { color: real ? PALETTE[0] : PALETTE[1], symbol: real ? "circle" : "circle-open", size: 10 },
      hovertemplate: "%{y}: %{x:.3g}, p %{customdata:.3f}<extra></extra>",
    };
  };
  const real = pairs.filter((pair) => pair.real);
  return {
    kind: "figure",
    data: [group(true), group(false)],
    layout: houseLayout({
      title: `Differences in ${label}`,
      xTitle: `difference in ${label}, first less second`,
      yTitle: "",
      more: {
        height: 180 + 34 * pairs.length,
        yaxis: { ...TOP_DOWN, categoryorder: "array", categoryarray: pairs.map(nameOfPair) },
        shapes: [{ type: "line", x0: 0, x1: 0, yref: "paper", y0: 0, y1: 1, line: { color: "#444", dash: "dash" } }],
      },
    }),
    summary: `${real.length} of ${pairs.length} differences in ${label} are real (at 5 %, all pairs taken together)${
      real.length === 0
        ? "."
        : `: ${real
            .map(
              (pair) =>
                `${nameOfPair(pair)} ${plain(pair.difference)} (${plain(pair.interval95[0])} to ${plain(pair.interval95[1])})`,
            )
            .join("; ")}.`
    }`,
  };
}

function plain(value: number): string {
  return String(Number(value.toPrecision(3)));
}
