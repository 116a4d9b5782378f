import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ExchangeProblem, exchangeRuns } from "../../../../kernel-lib/library/src/plan/optimal/exchange-runs";
import { startRuns } from "../../../../kernel-lib/library/src/plan/optimal/start-runs";
import { seededRandom } from "../../../../kernel-lib/library/src/statistics/random/seeded-random";

/** A problem of random rows, so that ties do not hide a wrong sign. */
function randomProblem(seed: number, size: number, weight: Float64Array | null): ExchangeProblem {
  const random = seededRandom(seed);
  const rows = Float64Array.from({ length: 40 * size }, () => random.normal());
  return { rows, size, kept: new Float64Array(size * size), weight };
}

/** The information of chosen rows, and its inverse and determinant by plain elimination, sharing nothing with the library. */
function plainly(
  { rows, size }: ExchangeProblem,
  chosen: ArrayLike<number>,
): { inverse: number[][]; determinant: number } {
  const left = Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (_, j) =>
      Array.from(chosen).reduce((sum, at) => sum + rows[at * size + i] * rows[at * size + j], 0),
    ),
  );
  const inverse = left.map((row, i) => row.map((_, j) => (i === j ? 1 : 0)));
  let determinant = 1;
  for (let k = 0; k < size; k++) {
    const pivot = left[k][k];
    determinant *= pivot;
    for (const matrix of [left, inverse]) matrix[k] = matrix[k].map((value) => value / pivot);
    for (let i = 0; i < size; i++) {
      if (i === k) continue;
      const share = left[i][k];
      for (const matrix of [left, inverse]) matrix[i] = matrix[i].map((value, j) => value - share * matrix[k][j]);
    }
  }
  return { inverse, determinant };
}

const identity = (size: number): Float64Array =>
  Float64Array.from({ length: size * size }, (_, at) => (at % (size + 1) === 0 ? 1 : 0));

describe("exchangeRuns", () => {
  it("says the determinant, or the trace, that elimination finds for the runs it ends with", () => {
    fc.assert(
      fc.property(
        fc.nat(9999),
        fc.integer({ min: 2, max: 6 }),
        fc.integer({ min: 0, max: 5 }),
        fc.boolean(),
        (seed, size, more, isD) => {
          const problem = randomProblem(seed, size, isD ? null : identity(size));
          const start = startRuns(problem, size + more, 2, seededRandom(seed));
          const { chosen, value } = exchangeRuns(problem, start)!;
          const { inverse, determinant } = plainly(problem, chosen);
          const trace = inverse.reduce((sum, row, i) => sum + row[i], 0);
          expect(value).toBeCloseTo(isD ? Math.log(determinant) : -trace, 7);
        },
      ),
    );
  });

  it("never ends below its start", () => {
    fc.assert(
      fc.property(fc.nat(9999), (seed) => {
        const problem = randomProblem(seed, 4, null);
        const start = Int32Array.from({ length: 7 }, (_, at) => (seed + 5 * at) % 40);
        const before = plainly(problem, start).determinant;
        fc.pre(before > 1e-6);
        expect(exchangeRuns(problem, start)!.value).toBeGreaterThanOrEqual(Math.log(before) - 1e-9);
      }),
    );
  });

  it("gives null for a start that tells nothing apart", () => {
    const problem = randomProblem(1, 3, null);
    expect(exchangeRuns(problem, Int32Array.of(2, 2, 2))).toBeNull();
  });
});
