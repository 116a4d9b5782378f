import { fail } from "../../check/check";
import { symmetricEigen } from "../../statistics/linear-algebra/symmetric-eigen";

/** Draws of what a decision hangs on, with their covariance, its root and the inverse of that; matrices row by row. */
export interface TargetDraws {
  readonly count: number;
  /** targets a draw */
  readonly size: number;
  readonly mean: Float64Array;
  /** draw by draw, less the mean */
  readonly centred: Float64Array;
  readonly root: Float64Array;
  /** of the directions that vary at all */
  readonly inverseRoot: Float64Array;
  /** how many those are */
  readonly rank: number;
}

/** A direction whose variance is less than this of the greatest does not vary. */
const STILL = 1e-10;

/**
 * Makes draws of targets ready for `learningFrom` and `valueOfInformation`.
 *
 * @param draws one row a draw: what the decision hangs on, in any units
 * @example
 * targetDraws([[-1], [0], [1]]).root[0]; // → 1
 */
export function targetDraws(draws: readonly ArrayLike<number>[]): TargetDraws {
  const count = draws.length;
  if (count < 3) fail("targetDraws: draws", "must be three or more", count);
  const size = draws[0].length;
  const mean = new Float64Array(size);
  for (const draw of draws) for (let at = 0; at < size; at++) mean[at] += draw[at] / count;
  const centred = new Float64Array(count * size);
  for (let row = 0; row < count; row++)
    for (let at = 0; at < size; at++) {
      const value = draws[row][at];
      if (!Number.isFinite(value)) fail(`targetDraws: target ${at} of draw ${row}`, "must be a finite number", value);
      centred[row * size + at] = value - mean[at];
    }
  const covariance = covarianceBetween(centred, size, centred, size, count);
  const { values, vectors } = symmetricEigen(rowsOf(covariance, size));
  const spans = values.map((value) => value > STILL * values[0] && value > 0);
  return {
    count,
    size,
    mean,
    centred,
    root: sumOfDirections(vectors, (along) => (spans[along] ? Math.sqrt(values[along]) : 0)),
    inverseRoot: sumOfDirections(vectors, (along) => (spans[along] ? 1 / Math.sqrt(values[along]) : 0)),
    rank: spans.filter((varies) => varies).length,
  };
}

/** Σ w·v·vᵀ over unit vectors v, row by row. */
function sumOfDirections(vectors: readonly (readonly number[])[], weight: (along: number) => number): Float64Array {
  const size = vectors.length;
  const sum = new Float64Array(size * size);
  for (let along = 0; along < size; along++) {
    const w = weight(along);
    if (w === 0) continue;
    const v = vectors[along];
    for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) sum[i * size + j] += w * v[i] * v[j];
  }
  return sum;
}

/** Covariance of two sets of centred columns, each stored draw by draw, over n − 1; row by row. */
export function covarianceBetween(
  a: Float64Array,
  aSize: number,
  b: Float64Array,
  bSize: number,
  count: number,
): Float64Array {
  const sum = new Float64Array(aSize * bSize);
  for (let row = 0; row < count; row++)
    for (let i = 0; i < aSize; i++) {
      const left = a[row * aSize + i];
      for (let j = 0; j < bSize; j++) sum[i * bSize + j] += left * b[row * bSize + j];
    }
  for (let at = 0; at < sum.length; at++) sum[at] /= count - 1;
  return sum;
}

/** A square matrix stored row by row, as rows. */
function rowsOf(matrix: Float64Array, size: number): number[][] {
  return Array.from({ length: size }, (_, row) => [...matrix.subarray(row * size, (row + 1) * size)]);
}
