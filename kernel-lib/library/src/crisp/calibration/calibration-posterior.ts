import type { CrispCalibration } from "./calibrate-crisp";
import { type CalibrateCrispOptions, crispResiduals } from "./crisp-residuals";

/**
 * Logarithm of the posterior density over z, up to a constant, at the noise of a calibration and with the doubt about
 * thickness shared out as at its mode: what a sampler walks over to check the calibration's normal approximation.
 *
 * @param options those that the calibration was made from
 */
export function calibrationPosterior(
  options: CalibrateCrispOptions,
  calibration: CrispCalibration,
): (z: ArrayLike<number>) => number {
  const problem = crispResiduals(options);
  const changes = problem.changesAt(calibration.mode, calibration.noise);
  return (z) => {
    let sum = 0;
    for (const residual of problem.residualsAt(z, calibration.noise, changes)) sum += residual * residual;
    for (let at = 0; at < z.length; at++) sum += z[at] * z[at];
    return -0.5 * sum;
  };
}
