import { fail } from "../../check/check";
import { symmetricEigen } from "../../statistics/linear-algebra/symmetric-eigen";
import { seededRandom } from "../../statistics/random/seeded-random";
import type { CrispCalibration } from "../calibration/calibrate-crisp";
import { priorValue } from "../calibration/crisp-priors";
import { slabOf } from "../calibration/crisp-residuals";
import type { SlabConstants } from "../clocks/slab-clocks";

/** Where the slabs are heated. */
export interface SlabPlace {
  readonly applianceId: string;
  /** share of the floor that the pieces cover, 0 to 1.2; `null` counts as a loose single layer */
  readonly loadFraction: number | null;
  /** the pieces are turned on the way */
  readonly turned: boolean;
}

/** Relative rms error of `crustStart` and the crust's short form against the moving-front solution. */
const CRUST_ERROR = 0.018;

/** The slab at the most probable constants, with short forms taken as exact. */
export function modeSlab(calibration: CrispCalibration, place: SlabPlace): SlabConstants {
  return slabAt(calibration, place, calibration.mode);
}

/**
 * Slabs drawn from what the trials leave uncertain: constants from the posterior's normal approximation, and the short
 * forms' own errors against the solver.
 *
 * @param coreError relative rms error of the core's short form [-], from the clock basis
 */
export function drawSlabs(
  calibration: CrispCalibration,
  place: SlabPlace,
  options: { readonly count: number; readonly seed: number; readonly coreError: number },
): readonly SlabConstants[] {
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
    const slab = slabAt(calibration, place, z);
    const coreFactor = Math.exp(options.coreError * random.normal());
    return { ...slab, coreFactor, crustStartFactor: Math.exp(CRUST_ERROR * random.normal()) };
  });
}

function slabAt(calibration: CrispCalibration, place: SlabPlace, z: readonly number[]): SlabConstants {
  const { constants, food, coatingMm } = calibration;
  const applianceIds = constants.flatMap(({ name }) =>
    name.startsWith("coefficient:") ? [name.slice("coefficient:".length)] : [],
  );
  if (!applianceIds.includes(place.applianceId))
    fail("crisp calibration: applianceId", `must be one of ${applianceIds.join(", ")}`, place.applianceId);
  return slabOf({
    values: constants.map(({ prior }, at) => priorValue(prior, z[at])),
    applianceIds,
    seen: place,
    coatingMm: coatingMm ?? Number.POSITIVE_INFINITY,
    innerWaterKgM3: food.densityKgM3 * food.waterFraction,
  });
}
