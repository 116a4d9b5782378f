import { expect, test } from "vitest";
import { besselJ } from "../../../../kernel-lib/library/src/heat/formulas/bessel";
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

test("roots rise, obey their equation and lie one to an interval of π; at Fo 0 the terms add up to the start", () => {
  const condition = {
    slab: (z: number) => z * Math.tan(z),
    sphere: (z: number) => 1 - z / Math.tan(z),
    cylinder: (z: number) => (z * besselJ(1, z)) / besselJ(0, z),
  };
  for (const shape of ["slab", "cylinder", "sphere"] as const)
    for (const biot of [0.1, 1, 10]) {
      const terms = seriesTerms(shape, biot, 12);
      expect(terms).toHaveLength(12);
      terms.forEach(({ root }, at) => {
        expect(condition[shape](root) / biot).toBeCloseTo(1, 6);
        expect(root).toBeGreaterThan(at * Math.PI - (shape === "slab" ? 0 : 1));
        expect(root).toBeLessThan((at + 1) * Math.PI);
      });
    }
});

test("shapes that have no series are refused, and bodies without a surface", () => {
  expect(() => seriesTerms("egg" as "sphere", 1, 1)).toThrow('shape must be slab, cylinder or sphere, got "egg"');
  expect(() => seriesTerms("slab", 0, 1)).toThrow("biot must be > 0");
});
