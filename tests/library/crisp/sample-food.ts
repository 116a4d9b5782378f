import {
  type CrispCalibration,
  calibrateCrisp,
} from "../../../kernel-lib/library/src/crisp/calibration/calibrate-crisp";
import type { CrispObservation } from "../../../kernel-lib/library/src/crisp/calibration/crisp-observation";
import type { SlabConstants } from "../../../kernel-lib/library/src/crisp/clocks/slab-clocks";
import type { ThermalModel } from "../../../kernel-lib/library/src/food/thermal/thermal-properties";

/** Lean-beef-like food of the reference runs: made up for checks, no product. */
export const food: ThermalModel = {
  densityKgM3: 1050,
  waterFraction: 0.735,
  freezingPointC: -1,
  latentKJkg: 216.1728,
  thawedSpecificHeatKJkgK: 3.5,
  frozenSpecificHeatKJkgK: 2,
  thawedConductivityWmK: 0.49,
  frozenConductivityWmK: 1.5,
};

/** A bare slab of that food at 40 W/(m²·K), with Zanoni's browning constant. */
export const bareSlab: SlabConstants = {
  coefficientWm2K: 40,
  conductivityFactor: 1,
  crustWaterKgM3: 771.75,
  innerWaterKgM3: 771.75,
  coatingMm: Number.POSITIVE_INFINITY,
  crustMm: 0.5,
  panelWidthMm: 0.1,
  browningPerS: 42000,
  dripFraction: 0,
  coreFactor: 1,
  crustStartFactor: 1,
};

/** A trial with nothing measured yet. */
export const unmeasured: CrispObservation = {
  id: "T-1",
  applianceId: "basket",
  thicknessMm: 9,
  thicknessSeMm: 0,
  setpointC: 200,
  loadFraction: 0.6,
  startC: -18,
  turned: false,
  timeMin: 10,
  notCrispMin: null,
  crispMin: null,
  coreC: null,
  lossPercent: null,
  crispScores: [],
  brownScores: [],
};

/** A calibration without trials, put at `z` prior standard deviations with the given standard deviation for all. */
const prior = calibrateCrisp({ food, observations: [], applianceIds: ["basket"], crustWaterKgM3: 400 });

export function calibrationAt(z: readonly number[], sd: number): CrispCalibration {
  const covariance = z.map((_, row) => z.map((__, column) => (row === column ? sd * sd : 0)));
  return { ...prior, mode: z, covariance };
}
