import { describe, expect, it } from "vitest";
import { VARIANT_METRICS } from "../../../../kernel-lib/library/src/advice/compare/compare-variants";
import { metricIn } from "../../../../kernel-lib/library/src/views/advice/metric-in";

describe("metricIn", () => {
  it("puts sizes and weights into inches and ounces, and leaves nutrients in grams", () => {
    const us = VARIANT_METRICS.map((metric) => metricIn(metric, "us"));
    expect(us.filter(({ of }) => of(1) !== 1).map(({ label }) => label)).toEqual([
      "slab thickness (in)",
      "bare piece (oz)",
      "serving as eaten (oz)",
    ]);
    expect(us[0].of(25.4)).toBeCloseTo(1, 12);
  });

  it("changes nothing for a metric kitchen", () => {
    for (const metric of VARIANT_METRICS) expect(metricIn(metric, "metric").of(7)).toBe(7);
    expect(metricIn("pieceG", "metric").label).toBe("bare piece (g)");
  });
});
