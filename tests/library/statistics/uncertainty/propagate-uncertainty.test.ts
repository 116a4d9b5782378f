import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { monteCarlo } from "../../../../kernel-lib/library/src/statistics/random/monte-carlo";
import { propagateUncertainty } from "../../../../kernel-lib/library/src/statistics/uncertainty/propagate-uncertainty";
import {
  rectangularInput,
  triangularInput,
} from "../../../../kernel-lib/library/src/statistics/uncertainty/uncertain-input";

const input = (value: number, standardUncertainty: number): { value: number; standardUncertainty: number } => ({
  value,
  standardUncertainty,
});

describe("propagateUncertainty", () => {
  it("adds relative uncertainties of a product in quadrature, and names the larger share", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0.001, max: 0.05, noNaN: true }),
        fc.double({ min: 0.001, max: 0.05, noNaN: true }),
        (a, b, ra, rb) => {
          fc.pre(Math.abs(ra / rb - 1) > 0.001);
          const result = propagateUncertainty({
            inputs: { a: input(a, a * ra), b: input(b, b * rb) },
            measure: (v) => v.a * v.b,
          });
          expect(result.standardUncertainty / result.value).toBeCloseTo(Math.hypot(ra, rb), 8);
          expect(result.shares.a + result.shares.b).toBeCloseTo(1, 9);
          expect(result.shares.a > result.shares.b).toBe(ra > rb);
        },
      ),
    );
  });

  it("agrees with Monte Carlo on a ratio", () => {
    const inputs = { before: rectangularInput(200, 1), after: triangularInput(150, 2) };
    const measure = (m: { before: number; after: number }): number => m.after / m.before;
    const law = propagateUncertainty({ inputs, measure });
    const drawn = monteCarlo({ inputs, measure, draws: 100_000, seed: 5 });
    expect(Math.abs(drawn.standardUncertainty / law.standardUncertainty - 1)).toBeLessThan(0.01);
    expect(Math.abs(drawn.mean - law.value)).toBeLessThan((4 * law.standardUncertainty) / Math.sqrt(100_000));
  });

  it("refuses impossible correlations and unknown names", () => {
    const inputs = { a: input(1, 1), b: input(1, 1) };
    const measure = (v: { a: number; b: number }): number => v.a + v.b;
    expect(() =>
      propagateUncertainty({ inputs, measure, correlations: [{ pair: ["a", "b"], coefficient: 1.2 }] }),
    ).toThrow("between -1 and 1");
    expect(() =>
      propagateUncertainty({ inputs, measure, correlations: [{ pair: ["a", "c" as "b"], coefficient: 0 }] }),
    ).toThrow("must name inputs");
    expect(() => propagateUncertainty({ inputs: { a: input(1, -1) }, measure: (v) => v.a })).toThrow(
      "standardUncertainty of a",
    );
  });
});
