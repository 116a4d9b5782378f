import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { monteCarlo } from "../../../../kernel-lib/library/src/statistics/random/monte-carlo";
import { selectOrder } from "../../../../kernel-lib/library/src/statistics/select-order";

describe("monteCarlo", () => {
  const inputs = { x: { value: 10, standardUncertainty: 2 } };
  const measure = (v: { x: number }): number => v.x;

  it("repeats with its seed and moves with another", () => {
    const one = monteCarlo({ inputs, measure, seed: 7 });
    expect(monteCarlo({ inputs, measure, seed: 7 })).toEqual(one);
    expect(monteCarlo({ inputs, measure, seed: 8 }).mean).not.toBe(one.mean);
  });

  it("finds mean, spread and middle 95 % of a normal", () => {
    const { mean, standardUncertainty, interval } = monteCarlo({ inputs, measure, draws: 200_000 });
    expect(Math.abs(mean - 10)).toBeLessThan(0.02);
    expect(Math.abs(standardUncertainty - 2)).toBeLessThan(0.02);
    expect(Math.abs(interval[0] - (10 - 1.96 * 2))).toBeLessThan(0.05);
    expect(Math.abs(interval[1] - (10 + 1.96 * 2))).toBeLessThan(0.05);
  });

  it("refuses too few draws and a measure that blows up", () => {
    expect(() => monteCarlo({ inputs, measure, draws: 10 })).toThrow("draws must be a whole number >= 100");
    expect(() => monteCarlo({ inputs, measure: () => Number.NaN })).toThrow("must be finite for every draw");
    expect(() => monteCarlo({ inputs, measure, coverage: 1 })).toThrow("coverage");
  });
});

describe("selectOrder", () => {
  it("puts the value there that sorting would", () => {
    const values = fc.array(fc.double({ noNaN: true, min: -1e6, max: 1e6 }), { minLength: 1, maxLength: 200 });
    fc.assert(
      fc.property(values, fc.nat(), (list, pick) => {
        const wanted = pick % list.length;
        const sorted = [...list].sort((a, b) => a - b);
        const array = Float64Array.from(list);
        expect(selectOrder(array, wanted) === sorted[wanted]).toBe(true);
        const later = Math.min(list.length - 1, wanted + 3);
        expect(selectOrder(array, later, wanted) === sorted[later]).toBe(true);
      }),
    );
  });
});
