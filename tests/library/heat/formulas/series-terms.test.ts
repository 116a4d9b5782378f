import { expect, test } from "vitest";
import { seriesTerms } from "../../../../kernel-lib/library/src/heat/formulas/series-terms";

test("a weak surface leaves one slow, even term: ζ1² near Bi, 2Bi, 3Bi", () => {
  for (const [shape, times] of [
    ["slab", 1],
    ["cylinder", 2],
    ["sphere", 3],
  ] as const) {
    const [first] = seriesTerms(shape, 1e-4, 1);
    expect(first.root ** 2 / (times * 1e-4)).toBeCloseTo(1, 3);
    expect(first.coefficient).toBeCloseTo(1, 3);
  }
});
