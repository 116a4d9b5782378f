import { choleskyFactor, solveLower } from "../../statistics/linear-algebra/cholesky";
import { symmetricEigen } from "../../statistics/linear-algebra/symmetric-eigen";
import { seededRandom } from "../../statistics/random/seeded-random";
import type { CrispCalibration } from "../calibration/calibrate-crisp";
import { priorValue } from "../calibration/crisp-priors";

/** What a calibration leaves open, as draws whose means and covariances are exactly the calibration's. */
export interface MatchedDraws {
  readonly calibration: CrispCalibration;
  readonly count: number;
  /** values of the constants, a row a draw */
  readonly values: readonly (readonly number[])[];
  /** the same in prior standard deviations from the mode */
  readonly steps: readonly Float64Array[];
  /** standard normal: how far core, crust and browning drift away from the clocks outside what was logged */
  readonly drift: ByClock;
}

/** One value a draw, for each of the clocks. */
export interface ByClock {
  readonly core: Float64Array;
  readonly crust: Float64Array;
  readonly brown: Float64Array;
}

/**
 * Draws constants and drifts from a calibration, and moves them so that their sample means and covariances are the
 * calibration's own: what is linear in them is then told without the scatter of sampling.
 *
 * @param options count of draws, more than the constants; seed
 */
export function matchedDraws(
  calibration: CrispCalibration,
  { count, seed }: { readonly count: number; readonly seed: number },
): MatchedDraws {
  const { mode, covariance, constants } = calibration;
  const drifts = 3;
  const size = mode.length + drifts;
  const normals = matchedNormals(count, size, seed);
  const { values: variances, vectors } = symmetricEigen(covariance);
  const roots = variances.map((variance) => Math.sqrt(Math.max(0, variance)));
  const steps = normals.map((draw) => {
    const step = new Float64Array(mode.length);
    for (let along = 0; along < mode.length; along++)
      for (let at = 0; at < mode.length; at++) step[at] += roots[along] * draw[along] * vectors[along][at];
    return step;
  });
  const columnOf = (which: number): Float64Array => Float64Array.from(normals, (draw) => draw[mode.length + which]);
  return {
    calibration,
    count,
    steps,
    values: steps.map((step) => constants.map(({ prior }, at) => priorValue(prior, mode[at] + step[at]))),
    drift: { core: columnOf(0), crust: columnOf(1), brown: columnOf(2) },
  };
}

/** Normal draws with means of 0 and the unit matrix as their sample covariance, exactly. */
function matchedNormals(count: number, size: number, seed: number): readonly Float64Array[] {
  const random = seededRandom(seed);
  const draws = Array.from({ length: count }, () => Float64Array.from({ length: size }, () => random.normal()));
  const mean = new Float64Array(size);
  for (const draw of draws) for (let at = 0; at < size; at++) mean[at] += draw[at] / count;
  const covariance = new Float64Array(size * size);
  for (const draw of draws)
    for (let i = 0; i < size; i++) {
      draw[i] -= mean[i];
      for (let j = 0; j <= i; j++) covariance[i * size + j] += (draw[i] * draw[j]) / (count - 1);
    }
  const lower = choleskyFactor(covariance, size);
  for (const draw of draws) solveLower(lower, size, draw);
  return draws;
}
