import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { solveLinear } from "../../../../kernel-lib/library/src/fit/least-squares/solve-linear";

const column = (...values: number[]): Float64Array => Float64Array.from(values);
const dot = (a: ArrayLike<number>, b: ArrayLike<number>): number =>
  Array.from(a).reduce((sum, value, i) => sum + value * b[i], 0);

describe("solveLinear", () => {
  it("is the textbook line, its inverse and its leverages, by hand", () => {
    // x = 1, 2, 3, 6: n 4, mean 3, Σ(x − 3)² 14
    const x = column(1, 2, 3, 6);
    const { coefficients, residuals, rss, inverseGram, leverage, dependent, root } = solveLinear(
      [column(1, 1, 1, 1), x],
      column(3, 4, 8, 13),
    );
    // Σ(x − 3)(y − 7) = (−2)(−4) + (−1)(−3) + 0 + 3·6 = 29
    expect(coefficients[1]).toBeCloseTo(29 / 14, 13);
    expect(coefficients[0]).toBeCloseTo(7 - (3 * 29) / 14, 13);
    expect(rss).toBeCloseTo(62 - 29 ** 2 / 14, 12);
    expect(rss).toBeCloseTo(dot(residuals, residuals), 12);
    expect(inverseGram[1][1]).toBeCloseTo(1 / 14, 13);
    expect(inverseGram[0][0]).toBeCloseTo(1 / 4 + 9 / 14, 13);
    expect(inverseGram[0][1]).toBeCloseTo(-3 / 14, 13);
    x.forEach((value, i) => {
      expect(leverage[i]).toBeCloseTo(1 / 4 + (value - 3) ** 2 / 14, 13);
    });
    expect(dependent).toEqual([]);
    expect(dot(root[0], root[1])).toBeCloseTo(-3 / 14, 13);
  });

  it("leaves residuals that no column can lower, whatever the size of the columns", () => {
    const numbers = fc.double({ min: -5, max: 5, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(numbers, numbers, numbers), { minLength: 4, maxLength: 9 }),
        fc.integer({ min: -8, max: 8 }),
        (rows, power) => {
          const scale = 10 ** power;
          const columns = [
            column(...rows.map(() => 1)),
            column(...rows.map(([a]) => a * scale)),
            column(...rows.map(([, b]) => b)),
          ];
          const y = column(...rows.map(([, , c]) => c));
          const { residuals, leverage, dependent } = solveLinear(columns, y);
          const size = Math.sqrt(dot(y, y)) || 1;
          for (const each of columns)
            expect(Math.abs(dot(each, residuals)) / (size * (Math.sqrt(dot(each, each)) || 1))).toBeLessThan(1e-9);
          expect(leverage.reduce((sum, value) => sum + value, 0)).toBeCloseTo(3 - dependent.length, 6);
        },
      ),
    );
  });

  it("names the columns that follow from the others, and fits without them", () => {
    const one = column(1, 1, 1, 1);
    const x = column(1, 2, 3, 6);
    const sum = column(...Array.from(x, (value) => 2 * value + 3));
    const { dependent, residuals } = solveLinear([one, x, sum], column(3, 4, 8, 13));
    expect(dependent).toHaveLength(1);
    const plain = solveLinear([one, x], column(3, 4, 8, 13));
    residuals.forEach((value, i) => {
      expect(value).toBeCloseTo(plain.residuals[i], 10);
    });
    expect(solveLinear([one, column(0, 0, 0, 0)], column(1, 2, 3, 4)).dependent).toEqual([1]);
  });

  it("keeps ten digits of a polynomial whose columns differ by 1e-9 (refinement)", () => {
    const x = Array.from({ length: 11 }, (_, i) => i);
    const near = column(...x.map((value) => 1e9 + value));
    const { coefficients } = solveLinear(
      [column(...x.map(() => 1)), near],
      column(...x.map((v) => 5 + 0.1 * (1e9 + v))),
    );
    expect(coefficients[1]).toBeCloseTo(0.1, 9);
  });
});
