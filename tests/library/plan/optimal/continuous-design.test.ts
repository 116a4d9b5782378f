import fc from "fast-check";
import { curves } from "slabwright/fit";
import { continuousDesign, gradientModel, optimalDesign, polynomialTerms, termsModel } from "slabwright/plan";
import { describe, expect, it } from "vitest";
import { gridOf } from "../../../../kernel-lib/library/src/plan/optimal/grid-of";

const factors = ["a", "b"];
const quadratic = termsModel({ factors, terms: polynomialTerms(factors) });
const square = [
  [-1, 1],
  [-1, 1],
] as const;

describe("continuousDesign", () => {
  it("is at least as good as the best plan of a grid, for either criterion, and keeps what is fixed", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 50 }),
        fc.constantFrom("D" as const, "I" as const),
        fc.integer({ min: 6, max: 9 }),
        (seed, criterion, runs) => {
          const asked = { model: quadratic, runs, criterion, seed, starts: 2 };
          const region = gridOf([
            [-1, 1],
            [-1, 1],
          ]).filter((_, at) => at % 7 === 0);
          const kept = [[0.3, -0.2]];
          const onGrid = optimalDesign({ ...asked, candidates: gridOf(square), kept, region, starts: 3 });
          const free = continuousDesign({ ...asked, ranges: square, kept, region });
          if (criterion === "D")
            expect(free.quality.logDeterminant).toBeGreaterThanOrEqual(onGrid.quality.logDeterminant - 1e-6);
          else expect(free.quality.averageVariance).toBeLessThanOrEqual(onGrid.quality.averageVariance * (1 + 1e-6));
          expect(free.points.length).toBe(runs);
        },
      ),
      { numRuns: 4 },
    );
  });

  it("runs nothing that is not allowed, and holds the forced runs", () => {
    const allowed = ([a, b]: readonly number[]): boolean => a + b <= 0.8 && a * a + b * b > 0.04;
    const forced = [[0.5, 0.3]];
    const { points } = continuousDesign({ model: quadratic, ranges: square, runs: 8, allowed, forced, starts: 4 });
    expect(points[0]).toEqual([0.5, 0.3]);
    expect(points.every(allowed)).toBe(true);
    expect(points.length).toBe(8);
  });

  it("adds to what was run: a plan that was made in two parts tells what the other half left open", () => {
    const kept = [
      [-1, -1],
      [1, -1],
      [-1, 1],
      [1, 1],
      [0, 0],
    ];
    const { points } = continuousDesign({ model: quadratic, ranges: square, runs: 2, kept, starts: 4 });
    // the squares were open: both new runs lie off the diagonals
    for (const [a, b] of points) expect(Math.abs(Math.abs(a) - Math.abs(b))).toBeGreaterThan(0.5);
  });

  it("gives the same plan for the same seed", () => {
    const asked = { model: quadratic, ranges: square, runs: 7, starts: 3, seed: 4 };
    expect(continuousDesign(asked)).toEqual(continuousDesign(asked));
  });

  it("says in one sentence what to change", () => {
    const asked = { model: quadratic, ranges: square, runs: 5 };
    expect(() => continuousDesign(asked)).toThrow(
      "continuousDesign: runs must be at least 6 for the 6 terms: give more runs or leave terms out, got 5",
    );
    expect(() => continuousDesign({ ...asked, runs: 6, allowed: () => false })).toThrow(
      "must leave some of the region to run in: nothing of its grid is allowed; loosen what is allowed, or move the ranges",
    );
    expect(() =>
      continuousDesign({
        ...asked,
        runs: 6,
        ranges: [
          [-1, 1],
          [2, 2],
        ],
      }),
    ).toThrow("must give factor 2 a low and a higher high, or leave it out of the model");
    expect(() => continuousDesign({ ...asked, runs: 6, allowed: ([a]) => a === 1 })).toThrow(
      'must tell "a" from the terms before it: widen what is allowed, or leave the term out',
    );
    expect(() => continuousDesign({ ...asked, runs: 6, forced: [[2, 0]] })).toThrow("forced must hold points within");
    const curve = gradientModel({ model: curves.firstOrderDecay, at: { start: 10, rate: 0.2 } });
    const broken = { terms: curve.terms, row: () => [1, Number.NaN] };
    expect(() => continuousDesign({ model: broken, ranges: [[0, 1]], runs: 2 })).toThrow(
      "finite numbers at every point",
    );
  });
});
