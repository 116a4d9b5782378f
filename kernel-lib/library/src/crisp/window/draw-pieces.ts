import { symmetricEigen } from "../../statistics/linear-algebra/symmetric-eigen";
import { seededRandom } from "../../statistics/random/seeded-random";
import type { CrispCalibration } from "../calibration/calibrate-crisp";
import { priorValue } from "../calibration/crisp-priors";
import { type PiecePlace, pieceAt } from "../calibration/piece-at";
import type { PieceConstants } from "../clocks/piece-constants";

/** The piece at the most probable constants, with clocks taken as exact. */
export function modePiece(calibration: CrispCalibration, place: PiecePlace): PieceConstants {
  return pieceOfDraw(calibration, place, calibration.mode);
}

/** Draws of the constants, in prior standard deviations: once for a calibration, whatever the setting. */
export function drawConstants(
  calibration: CrispCalibration,
  options: { readonly count: number; readonly seed: number },
): readonly (readonly number[])[] {
  const { mode, covariance } = calibration;
  const { values, vectors } = symmetricEigen(covariance);
  const random = seededRandom(options.seed);
  const roots = values.map((value) => Math.sqrt(Math.max(0, value)));
  const size = mode.length;
  return Array.from({ length: options.count }, () => {
    const z = [...mode];
    for (let along = 0; along < size; along++) {
      const step = roots[along] * random.normal();
      for (let at = 0; at < size; at++) z[at] += step * vectors[along][at];
    }
    return z;
  });
}

/** The piece of one draw of the constants at a place. */
export function pieceOfDraw(calibration: CrispCalibration, place: PiecePlace, z: readonly number[]): PieceConstants {
  const { constants, food, coatingMm, applianceIds } = calibration;
  return pieceAt({
    values: constants.map(({ prior }, at) => priorValue(prior, z[at])),
    applianceIds,
    place,
    coatingMm: coatingMm ?? Number.POSITIVE_INFINITY,
    innerWaterKgM3: food.densityKgM3 * food.waterFraction,
  });
}
