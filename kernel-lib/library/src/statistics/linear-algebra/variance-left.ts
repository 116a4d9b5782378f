import { symmetricEigen } from "./symmetric-eigen";

/**
 * Variance of a target that is left after measurements with standard normal errors, over that before, from draws of both:
 * 1 − cov(y, m)·[cov(m, m) + I]⁻¹·cov(m, y)/var(y). Exact where the draws are jointly normal.
 *
 * @param target one value a draw
 * @param measured one row a draw: what each measurement would be, over the standard deviation of its error
 *
 * @example
 * varianceLeft([-1, 0, 1], [[-1], [0], [1]]); // → 0.5
 *
 * Reference: Gelman et al., Bayesian Data Analysis, ch. 14, linear regression with known errors.
 */
export function varianceLeft(target: readonly number[], measured: readonly (readonly number[])[]): number {
  const size = measured[0].length;
  const columns = Array.from({ length: size }, (_, at) => measured.map((row) => row[at]));
  const spread = columns.map((a, i) => columns.map((b, j) => covarianceOf(a, b) + (i === j ? 1 : 0)));
  const shared = columns.map((column) => covarianceOf(target, column));
  const { values, vectors } = symmetricEigen(spread);
  const explained = values.reduce((sum, value, along) => {
    const part = vectors[along].reduce((dot, entry, at) => dot + entry * shared[at], 0);
    return sum + (part * part) / value;
  }, 0);
  return Math.max(0, 1 - explained / covarianceOf(target, target));
}

/** Covariance of two samples drawn together, over n − 1. */
export function covarianceOf(a: readonly number[], b: readonly number[]): number {
  const meanA = a.reduce((sum, value) => sum + value, 0) / a.length;
  const meanB = b.reduce((sum, value) => sum + value, 0) / b.length;
  return a.reduce((sum, value, at) => sum + (value - meanA) * (b[at] - meanB), 0) / (a.length - 1);
}
