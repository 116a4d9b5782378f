import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { solveLinear } from "../../../../kernel-lib/library/src/fit/least-squares/solve-linear";
import { solveNonnegative } from "../../../../kernel-lib/library/src/fit/least-squares/solve-nonnegative";

const whole = fc.integer({ min: -4, max: 4 });
const problem = fc.integer({ min: 1, max: 4 }).chain((size) =>
  fc.record({
    vectors: fc.array(fc.array(whole, { minLength: size, maxLength: size }), { minLength: 1, maxLength: 6 }),
    target: fc.array(whole, { minLength: size, maxLength: size }),
  }),
);
const square = (values: ArrayLike<number>): number => Array.from(values).reduce((sum, value) => sum + value * value, 0);

describe("solveNonnegative", () => {
  it("comes as close as the best of all subsets whose plain least squares has no negative weight", () => {
    fc.assert(
      fc.property(problem, ({ vectors, target }) => {
        const given = vectors.map((vector) => Float64Array.from(vector));
        const goal = Float64Array.from(target);
        const { weights, residual } = solveNonnegative(given, goal);
        expect(Math.min(...weights)).toBeGreaterThanOrEqual(0);
        let best = square(goal);
        for (let subset = 1; subset < 2 ** given.length; subset++) {
          const members = given.filter((_, i) => (subset >> i) & 1);
          const { coefficients, rss } = solveLinear(members, goal);
          if (coefficients.every((value) => value >= 0)) best = Math.min(best, rss);
        }
        expect(square(residual)).toBeCloseTo(best, 9);
        // the residual is what it says
        const sum = goal.map((value, k) => value - given.reduce((all, vector, i) => all + weights[i] * vector[k], 0));
        sum.forEach((value, k) => {
          expect(residual[k]).toBeCloseTo(value, 9);
        });
      }),
      { numRuns: 500 },
    );
  });
});
