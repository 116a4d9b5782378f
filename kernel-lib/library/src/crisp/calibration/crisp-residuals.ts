import { fail, notNegative, positive } from "../../check/check";
import type { ThermalModel } from "../../food/thermal/thermal-properties";
import { airAtLoadC, coefficientAtLoad, crowdingOf } from "../clocks/load-effect";
import { brownScoreAt, crispScoreAt, meanWritten } from "../clocks/panel-score";
import {
  browningOf,
  type ClockBasis,
  clockBasis,
  coreC,
  crispMin,
  crustMmAt,
  lossPercentOf,
  type SlabConstants,
} from "../clocks/slab-clocks";
import { censoredResidual } from "./censored-residual";
import { type CrispObservation, checkObservation } from "./crisp-observation";
import { type CrispPrior, crispPriors, priorValue } from "./crisp-priors";

/** How far measurements scatter about the clocks; each is estimated again from the trials. */
export interface CrispNoise {
  /** crisp times, from one run to the next [-] */
  readonly crispTime: number;
  /** core readings (K) */
  readonly coreK: number;
  /** loss (% points) */
  readonly lossPercent: number;
  /** one taster's score, crispness and browning */
  readonly crispScore: number;
  readonly brownScore: number;
}

/** What `calibrateCrisp` works from. */
export interface CalibrateCrispOptions {
  /** the mix; its conductivity is a start, which core readings may move */
  readonly food: ThermalModel;
  readonly observations: readonly CrispObservation[];
  /** appliances to give a coefficient; default: those of the observations. One without trials keeps its prior */
  readonly applianceIds?: readonly string[];
  /** median of the prior for the water that leaves for each volume of crust (kg/m³); default: the mix's own water */
  readonly crustWaterKgM3?: number;
  /** thickness of a coating whose water that is (mm); default: one water density serves the whole crust */
  readonly coatingMm?: number;
  /** piece-to-piece coefficient of variation of the thickness [-]; default 0.03 */
  readonly unevenness?: number;
  /** priors in place of the usual ones, by name */
  readonly priors?: readonly CrispPrior[];
}

/** The short forms miss a real slab by about as much as a thickness that is off by this share would. */
const SHORT_FORM_ERROR = 0.018;

/** One measurement's place in the residuals. */
export interface Slot {
  /** which trial, by position */
  readonly trial: number;
  readonly kind: keyof CrispNoise;
  /** tells of the noise: a one-sided check does not */
  readonly telling: boolean;
}

/** The measurements of a calibration as residuals, ready for a search over z. */
export interface CrispResiduals {
  readonly priors: readonly CrispPrior[];
  readonly observations: readonly CrispObservation[];
  readonly slots: readonly Slot[];
  readonly unevenness: number;
  /** residuals over their standard deviations at z, the thickness doubt shared out along `changes` */
  readonly residualsAt: (z: ArrayLike<number>, noise: CrispNoise, changes: Float64Array) => Float64Array;
  /** change of every residual over one standard error of its trial's thickness, at z */
  readonly changesAt: (z: ArrayLike<number>, noise: CrispNoise) => Float64Array;
}

/** Checks the options of a calibration and turns its trials into residuals. */
export function crispResiduals(options: CalibrateCrispOptions): CrispResiduals {
  const { food } = options;
  const observations = options.observations.map(checkObservation);
  const applianceIds = options.applianceIds ?? [...new Set(observations.map((seen) => seen.applianceId))];
  for (const { id, applianceId } of observations)
    if (!applianceIds.includes(applianceId))
      fail(`calibrateCrisp: appliance of ${id}`, `must be one of ${applianceIds.join(", ")}`, applianceId);
  if (applianceIds.length === 0) fail("calibrateCrisp: applianceIds", "must name an appliance", applianceIds);
  const mixWaterKgM3 = food.densityKgM3 * food.waterFraction;
  const crustWaterKgM3 = positive(options.crustWaterKgM3 ?? mixWaterKgM3, "calibrateCrisp: crustWaterKgM3", "kg/m³");
  const coatingMm = options.coatingMm ?? Number.POSITIVE_INFINITY;
  if (!(coatingMm > 0)) fail("calibrateCrisp: coatingMm", "must be > 0 mm", coatingMm);
  const unevenness = notNegative(options.unevenness ?? 0.03, "calibrateCrisp: unevenness", "");
  const replaced = new Map((options.priors ?? []).map((prior) => [prior.name, prior]));
  const priors = crispPriors({ applianceIds, crustWaterKgM3 }).map((prior) => replaced.get(prior.name) ?? prior);

  const bases = observations.map(basisCache(food));
  const slots = observations.flatMap(slotsOf);
  const rawAt = (z: ArrayLike<number>, noise: CrispNoise, thicker: boolean): Float64Array => {
    const values = priors.map((prior, at) => priorValue(prior, z[at]));
    const out = new Float64Array(slots.length);
    let from = 0;
    for (let at = 0; at < observations.length; at++) {
      const seen = observations[at];
      const slab = slabOf({ values, applianceIds, seen, coatingMm, innerWaterKgM3: mixWaterKgM3 });
      const doubtMm = Math.hypot(seen.thicknessSeMm, SHORT_FORM_ERROR * seen.thicknessMm);
      const thicknessMm = seen.thicknessMm + (thicker ? doubtMm : 0);
      from = writeResiduals(out, from, seen, bases[at], slab, noise, thicknessMm);
    }
    return out;
  };
  return {
    priors,
    observations,
    slots,
    unevenness,
    residualsAt: (z, noise, changes) => shareThickness(rawAt(z, noise, false), changes, slots),
    changesAt: (z, noise) => {
      const own = rawAt(z, noise, false);
      return rawAt(z, noise, true).map((thicker, at) => thicker - own[at]);
    },
  };
}

/** One basis for each start and air temperature: the core limit does not matter for a calibration. */
function basisCache(food: ThermalModel): (seen: CrispObservation) => ClockBasis {
  const known = new Map<string, ClockBasis>();
  return (seen) => {
    const airC = airAtLoadC(seen.setpointC, seen.loadFraction);
    const key = `${seen.startC} ${airC}`;
    const basis = known.get(key) ?? clockBasis({ food, startC: seen.startC, airC, limitC: 74 });
    known.set(key, basis);
    return basis;
  };
}

/** What `slabOf` puts together. */
interface SlabOfOptions {
  /** values of the parameters, in the order of the priors */
  readonly values: readonly number[];
  readonly applianceIds: readonly string[];
  readonly seen: { readonly applianceId: string; readonly loadFraction: number | null; readonly turned: boolean };
  readonly coatingMm: number;
  readonly innerWaterKgM3: number;
}

/** The constants of one slab from the parameters of a calibration. */
export function slabOf(options: SlabOfOptions): SlabConstants {
  const { values, applianceIds, seen, coatingMm, innerWaterKgM3 } = options;
  const own = applianceIds.indexOf(seen.applianceId);
  const [loadLoss, turnGain, conductivityFactor, crustWaterKgM3, crustMm, panelWidthMm, browningPerS, dripFraction] =
    values.slice(applianceIds.length);
  return {
    coefficientWm2K: coefficientAtLoad(values[own], loadLoss, crowdingOf(seen.loadFraction), turnGain, seen.turned),
    conductivityFactor,
    crustWaterKgM3,
    innerWaterKgM3,
    coatingMm,
    crustMm,
    panelWidthMm,
    browningPerS,
    dripFraction,
    coreFactor: 1,
    crustStartFactor: 1,
  };
}

function slotsOf(seen: CrispObservation, trial: number): Slot[] {
  const slots: Slot[] = [];
  if (seen.notCrispMin !== null || seen.crispMin !== null)
    slots.push({ trial, kind: "crispTime", telling: seen.notCrispMin !== null && seen.crispMin !== null });
  if (seen.coreC !== null) slots.push({ trial, kind: "coreK", telling: true });
  if (seen.lossPercent !== null) slots.push({ trial, kind: "lossPercent", telling: true });
  if (seen.crispScores.length > 0) slots.push({ trial, kind: "crispScore", telling: true });
  if (seen.brownScores.length > 0) slots.push({ trial, kind: "brownScore", telling: true });
  return slots;
}

/** Writes the residuals of one trial at a thickness, in the order of `slotsOf`, each over its standard deviation. */
function writeResiduals(
  out: Float64Array,
  from: number,
  seen: CrispObservation,
  basis: ClockBasis,
  slab: SlabConstants,
  noise: CrispNoise,
  thicknessMm: number,
): number {
  const { timeMin, notCrispMin, crispMin: firstCrispMin } = seen;
  let at = from;
  if (notCrispMin !== null || firstCrispMin !== null) {
    const modelMin = Math.min(crispMin(basis, slab, thicknessMm), 1e4);
    const below = notCrispMin === null || notCrispMin === 0;
    out[at++] = censoredResidual(
      below ? Number.NEGATIVE_INFINITY : Math.log(notCrispMin / modelMin) / noise.crispTime,
      firstCrispMin === null ? Number.POSITIVE_INFINITY : Math.log(firstCrispMin / modelMin) / noise.crispTime,
    );
  }
  if (seen.coreC !== null) {
    const modelC = coreC(basis, slab, thicknessMm, timeMin);
    const slope = coreC(basis, slab, thicknessMm, 1.02 * timeMin) - modelC;
    out[at++] = (seen.coreC - modelC) / Math.hypot(noise.coreK, slope);
  }
  const depthMm = crustMmAt(basis, slab, thicknessMm, timeMin);
  if (seen.lossPercent !== null)
    out[at++] = (seen.lossPercent - lossPercentOf(basis, slab, thicknessMm, depthMm)) / noise.lossPercent;
  if (seen.crispScores.length > 0) {
    const score = crispScoreAt(depthMm, slab.crustMm, slab.panelWidthMm);
    out[at++] = scoreResidual(seen.crispScores, score, noise.crispScore);
  }
  if (seen.brownScores.length > 0) {
    const score = brownScoreAt(browningOf(basis, slab, depthMm));
    out[at++] = scoreResidual(seen.brownScores, score, noise.brownScore);
  }
  return at;
}

/**
 * Frees the residuals of each trial of the doubt about its thickness, which all of them share: with d their change
 * over one standard error of the thickness, their covariance is I + d·dᵀ, and they are multiplied by its root's inverse.
 */
function shareThickness(residuals: Float64Array, changes: Float64Array, slots: readonly Slot[]): Float64Array {
  for (let from = 0, to = 0; from < slots.length; from = to) {
    let square = 0;
    let along = 0;
    while (to < slots.length && slots[to].trial === slots[from].trial) {
      square += changes[to] * changes[to];
      along += changes[to] * residuals[to];
      to++;
    }
    if (square < 1e-12) continue;
    const part = ((1 - 1 / Math.sqrt(1 + square)) * along) / square;
    for (let at = from; at < to; at++) residuals[at] -= part * changes[at];
  }
  return residuals;
}

function scoreResidual(scores: readonly number[], model: number, tasterSd: number): number {
  const mean = scores.reduce((sum, score) => sum + score, 0) / scores.length;
  return ((mean - meanWritten(model, tasterSd)) / tasterSd) * Math.sqrt(scores.length);
}
