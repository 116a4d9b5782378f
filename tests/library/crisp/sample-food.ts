import {
  type CrispCalibration,
  calibrateCrisp,
} from "../../../kernel-lib/library/src/crisp/calibration/calibrate-crisp";
import type { CrispObservation } from "../../../kernel-lib/library/src/crisp/calibration/crisp-observation";
import { UNCUT } from "../../../kernel-lib/library/src/crisp/clocks/edge-speed";
import type { PieceConstants } from "../../../kernel-lib/library/src/crisp/clocks/piece-constants";
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

/** Zanoni's browning, 42 000 1/s and 64 151 J/mol, from 150 °C (1/s). */
export const ZANONI_PER_S = 42_000 * Math.exp(-64.151 / 0.008314462618 / 423.15);

/** A bare slab of that food at 40 W/(m²·K), with Zanoni's browning constants and its clocks taken as they stand. */
export const bareSlab: PieceConstants = {
  sides: UNCUT,
  coefficientWm2K: 40,
  conductivityFactor: 1,
  crustWaterKgM3: 771.75,
  innerWaterKgM3: 771.75,
  coatingMm: Number.POSITIVE_INFINITY,
  crustMm: 0.5,
  panelWidthMm: 0.1,
  browningPerS: ZANONI_PER_S,
  browningKJmol: 64.151,
  brownByThickness: 0,
  brownSteepness: 1,
  dripFraction: 0,
  sideShare: 1,
  lookMin: 0,
  coreFactor: 1,
  coreByThickness: 0,
  coreBend: 1,
  plateauC: 100,
  restGain: 1,
  probeWarmK: 0,
  warmShare: 1,
  edgeCrust: 0,
  crustFactor: 1,
  crustByThickness: 0,
};

/** A trial with nothing measured yet. */
export const unmeasured: CrispObservation = {
  id: "T-1",
  session: "first",
  slab: null,
  sidesMm: null,
  looksMin: [],
  restedCoreC: null,
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

/** The prior's middle, and its place for every constant. */
export const MIDDLE: readonly number[] = prior.mode;

export function calibrationAt(z: readonly number[], sd: number): CrispCalibration {
  const covariance = z.map((_, row) => z.map((__, column) => (row === column ? sd * sd : 0)));
  const logged = {
    thicknessMm: [2, 40],
    setpointC: [140, 240],
    startC: [-30, 20],
    loadFraction: [0, 1.2],
    sideMm: null,
    turned: true,
    unturned: true,
  } as const;
  const constants = prior.constants.map((constant) => ({ ...constant, informed: true }));
  return { ...prior, mode: z, covariance, logged, constants };
}
