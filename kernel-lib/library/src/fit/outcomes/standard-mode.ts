import { choleskyFactor, inverseFrom, solveLower, solveUpper } from "../../statistics/linear-algebra/cholesky";

/** What `standardMode` searches. */
export interface StandardModeOptions {
  /** where to start: standard deviations from each prior's middle */
  readonly start: ArrayLike<number>;
  /** observed minus fitted at z, each over its known standard deviation */
  readonly residuals: (z: Float64Array) => Float64Array;
  /** 60 unless given */
  readonly maxIterations?: number;
}

/** The most probable z under standard normal priors. */
export interface StandardMode {
  readonly z: Float64Array;
  /** (JᵀJ + I)⁻¹ at the mode, row by row */
  readonly covariance: readonly (readonly number[])[];
  /** the last step was a thousandth of the posterior's standard deviations, or lowered the sum of squares by 0.0001 */
  readonly converged: boolean;
  readonly reason: string;
  readonly iterations: number;
}

const STEP = 1e-5;
/** z is held to so many prior standard deviations. */
const FARTHEST = 6;
/** A step this short, over the posterior's own standard deviations, is the last; so is one that lowers the sum by less. */
const SETTLED = 1e-3;
const LEAST_GAIN = 1e-4;

/**
 * Posterior mode of parameters with standard normal priors and residuals of known size: minimises Σrᵢ(z)² + Σzⱼ² by
 * Levenberg's damped Gauss–Newton steps on (JᵀJ + I + λI)δ = −(Jᵀr + z). The prior keeps the equations well conditioned, so
 * that they are solved as they stand. It settles when a step, measured by the posterior's own covariance, is below 0.001, or lowers the
 * sum by less than 0.0001 (a hundredth of a standard deviation off).
 *
 * @example
 * const pulled = standardMode({ start: [0], residuals: (z) => Float64Array.of((2 - z[0]) / 0.5) });
 * pulled.z[0]; // → 1.6
 * pulled.covariance[0][0]; // → 0.2
 *
 * Reference: Levenberg (1944), Quarterly of Applied Mathematics 2, 164–168; Gelman et al., Bayesian Data Analysis, ch. 4.
 */
export function standardMode(options: StandardModeOptions): StandardMode {
  const { residuals, maxIterations = 60 } = options;
  const size = options.start.length;
  let z = Float64Array.from(options.start);
  let r = residuals(z);
  const sumAt = (at: Float64Array, left: Float64Array): number =>
    left.reduce((sum, value) => sum + value * value, 0) + at.reduce((sum, value) => sum + value * value, 0);
  let sum = sumAt(z, r);
  let damping = 1e-3;
  let settled = false;
  let iterations = 0;
  let curvature = new Float64Array(size * size);
  while (iterations < maxIterations && !settled) {
    iterations++;
    const columns = jacobian(residuals, z, r);
    const gradient = new Float64Array(size);
    curvature = new Float64Array(size * size);
    for (let a = 0; a < size; a++) {
      let slope = z[a];
      for (let i = 0; i < r.length; i++) slope += columns[a][i] * r[i];
      gradient[a] = slope;
      for (let b = 0; b <= a; b++) {
        let dot = a === b ? 1 : 0;
        for (let i = 0; i < r.length; i++) dot += columns[a][i] * columns[b][i];
        curvature[a * size + b] = dot;
        curvature[b * size + a] = dot;
      }
    }
    let improved = false;
    while (!improved && damping < 1e8) {
      const damped = curvature.slice();
      for (let a = 0; a < size; a++) damped[a * size + a] += damping * curvature[a * size + a];
      const lower = choleskyFactor(damped, size);
      const step = solveUpper(
        lower,
        size,
        solveLower(
          lower,
          size,
          gradient.map((value) => -value),
        ),
      );
      const next = z.map((value, at) => Math.max(-FARTHEST, Math.min(FARTHEST, value + step[at])));
      const left = residuals(next);
      const then = sumAt(next, left);
      let length = 0;
      for (let a = 0; a < size; a++)
        for (let b = 0; b < size; b++) length += step[a] * curvature[a * size + b] * step[b];
      if (Number.isFinite(then) && then <= sum + 1e-9) {
        settled = Math.sqrt(length) < SETTLED || (sum - then < LEAST_GAIN && damping < 1);
        z = next;
        r = left;
        sum = then;
        damping = Math.max(1e-7, damping / 5);
        improved = true;
      } else {
        if (Math.sqrt(length) < SETTLED) {
          settled = true;
          break;
        }
        damping *= 4;
      }
    }
    if (!improved && !settled) break;
  }
  const inverse = inverseFrom(choleskyFactor(curvature, size), size);
  return {
    z,
    covariance: Array.from({ length: size }, (_, a) => Array.from(inverse.subarray(a * size, (a + 1) * size))),
    converged: settled,
    reason: settled
      ? "the last step was below a hundredth of the doubt"
      : `stopped after ${iterations} steps without settling`,
    iterations,
  };
}

function jacobian(
  residuals: (z: Float64Array) => Float64Array,
  z: Float64Array,
  r: Float64Array,
): readonly Float64Array[] {
  return Array.from(z, (value, at) => {
    const moved = z.slice();
    moved[at] = value + STEP;
    const there = residuals(moved);
    return there.map((next, i) => (next - r[i]) / STEP);
  });
}
