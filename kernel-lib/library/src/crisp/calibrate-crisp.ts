import { fail, notNegative, positive } from "../check/check";
import { freezeDeep } from "../fit/freeze-deep";
import { leastSquares } from "../fit/least-squares";
import { posteriorMode } from "../fit/posterior-mode";
import type { ThermalModel } from "../food/thermal-properties";
import { censoredResidual } from "./censored-residual";
import { type CrispObservation, checkObservation } from "./crisp-observation";
import { type CrispPrior, crispPriors, priorValue } from "./crisp-priors";
import { airAtLoadC, coefficientAtLoad, crowdingOf } from "./load-effect";
import { brownScoreAt, crispScoreAt, meanWritten } from "./panel-score";
import {
  browningOf,
  type ClockBasis,
  clockBasis,
  coreC,
  crispMin,
  crustMmAt,
  lossPercentOf,
  type SlabConstants,
} from "./slab-clocks";

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

/** One constant after the calibration. */
export interface CalibratedConstant {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly estimate: number;
  readonly interval95: readonly [number, number];
  readonly prior: CrispPrior;
  readonly priorInterval95: readonly [number, number];
  /** 1 − (posterior sd/prior sd)² [-]: 0 when the trials say nothing of it */
  readonly dataShare: number;
  /** the trials moved or narrowed it: `dataShare` of 0.1 or more */
  readonly informed: boolean;
  /** which trial would tell more of it */
  readonly informedBy: string;
}

/** The three clocks of one product, calibrated: what every window, map and probability works from. */
export interface CrispCalibration {
  readonly kind: "crisp calibration";
  readonly food: ThermalModel;
  readonly coatingMm: number | null;
  readonly constants: readonly CalibratedConstant[];
  /** the mode, in prior standard deviations from each prior's middle, in the order of `constants` */
  readonly mode: readonly number[];
  /** its covariance in the same units */
  readonly covariance: readonly (readonly number[])[];
  readonly noise: CrispNoise;
  readonly unevenness: number;
  /** trials used */
  readonly n: number;
  /** measurements in them */
  readonly measurements: number;
  readonly thicknessRangeMm: readonly [number, number] | null;
  readonly setpointRangeC: readonly [number, number] | null;
  readonly converged: boolean;
  readonly reason: string;
  /** sentences a reader must see: what the trials leave to the prior, one thickness only, no scores on one side */
  readonly notices: readonly string[];
}

const USUAL: CrispNoise = { crispTime: 0.05, coreK: 2, lossPercent: 0.6, crispScore: 0.8, brownScore: 0.8 };
/** The usual noise counts as this many measurements when the noise is estimated again. */
const USUAL_WORTH = 5;
/** Iterations of the passes that only learn how large the errors are; the last pass runs to its end. */
const ROUGH_PASSES: readonly number[] = [6, 3, 3];
/** The search runs on z + 10, so that its steps for derivatives, a share of the parameter, are alike for all. */
const OFFSET = 10;
const STEP = 1e-5;
/** The short forms miss a real slab by about as much as a thickness that is off by this share would. */
const SHORT_FORM_ERROR = 0.018;

/** One measurement's place in the residuals. */
interface Slot {
  /** which trial, by position */
  readonly trial: number;
  readonly kind: keyof CrispNoise;
  /** tells of the noise: a one-sided check does not */
  readonly telling: boolean;
}

/**
 * Calibrates heat, crust and browning jointly from logged trials, across thicknesses, setpoints, appliances and loads.
 *
 * Most probable constants under normal errors and the priors of `crispPriors` (posterior mode, covariance from the
 * curvature there). Measurements: crisp times between two checks or to one side of one (lognormal), core temperatures,
 * weight loss, crispness and browning scores. One coefficient an appliance serves all three clocks. The sizes of the
 * errors start from usual values and are estimated again from what is left over. Crust conductivity (0.12 W/(m·K)),
 * front temperature (100 °C) and activation energy (64 kJ/mol) are held fixed.
 *
 * @returns constants with intervals, how much of each is the trials', scatter, and what to try to learn more
 *
 * Range: slabs heated from both faces from −40 to 40 °C, air 120 to 290 °C; see `coreTimeClosedForm` and `crustStart`
 * for the short forms' own errors. No trials at all is allowed: everything is then the prior's.
 *
 * Reference: the window model follows Farkas, Singh & Rumsey (1996) for the front and Zanoni, Peri & Bruno (1995) for
 * browning; Gelman et al., Bayesian Data Analysis, ch. 4, for the normal approximation.
 */
export function calibrateCrisp(options: CalibrateCrispOptions): CrispCalibration {
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
  const names = priors.map((_, at) => `z${at}`);
  let noise = USUAL;
  let start = priors.map(() => 0);
  const slots = observations.flatMap(slotsOf);
  const rawAt = (z: ArrayLike<number>, thicker: boolean): Float64Array => {
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
  let changes = new Float64Array(slots.length);
  const residualsAt = (z: ArrayLike<number>): Float64Array => shareThickness(rawAt(z, false), changes, slots);
  const learnChanges = (): void => {
    const own = rawAt(start, false);
    changes = rawAt(start, true).map((thicker, at) => thicker - own[at]);
  };
  const settings = (): { [name: string]: { start: number; lower: number; upper: number } } =>
    Object.fromEntries(
      names.map((name, at) => [name, { start: start[at] + OFFSET, lower: OFFSET - 8, upper: OFFSET + 8 }]),
    );
  const valuesOf = (parameters: { readonly [name: string]: number }): number[] =>
    names.map((name) => parameters[name] - OFFSET);
  for (const iterations of ROUGH_PASSES) {
    learnChanges();
    const rough = leastSquares<string>({
      parameters: settings(),
      residuals: (parameters) => [...residualsAt(valuesOf(parameters)), ...valuesOf(parameters)],
      sdKnown: true,
      relativeStep: STEP,
      maxIterations: iterations,
    });
    start = names.map((name) => rough.parameters[name].estimate - OFFSET);
    noise = noiseAgain(noise, slots, residualsAt(start), rough.n, names.length);
  }
  learnChanges();
  const mode = posteriorMode<string>({
    parameters: settings(),
    priors: Object.fromEntries(names.map((name) => [name, { mean: OFFSET, sd: 1 }])),
    residuals: (parameters) => residualsAt(valuesOf(parameters)),
    model: "crisp calibration",
    relativeStep: STEP,
  });

  const z = names.map((name) => mode.parameters[name].estimate - OFFSET);
  const constants = priors.map((prior, at): CalibratedConstant => {
    const sd = Math.sqrt(mode.covariance[at][at]);
    const dataShare = Math.max(0, 1 - sd * sd);
    return {
      name: prior.name,
      label: prior.label,
      unit: prior.unit,
      estimate: priorValue(prior, z[at]),
      interval95: [priorValue(prior, z[at] - 1.96 * sd), priorValue(prior, z[at] + 1.96 * sd)],
      prior,
      priorInterval95: [priorValue(prior, -1.96), priorValue(prior, 1.96)],
      dataShare,
      informed: dataShare >= 0.1,
      informedBy: prior.informedBy,
    };
  });
  return freezeDeep({
    kind: "crisp calibration",
    food,
    coatingMm: coatingMm === Number.POSITIVE_INFINITY ? null : coatingMm,
    constants,
    mode: z,
    covariance: mode.covariance,
    noise,
    unevenness,
    n: observations.length,
    measurements: slots.length,
    thicknessRangeMm: rangeOf(observations.map((seen) => seen.thicknessMm)),
    setpointRangeC: rangeOf(observations.map((seen) => seen.setpointC)),
    converged: mode.converged,
    reason: mode.reason,
    notices: noticesOf(observations, constants, mode.converged ? null : mode.reason),
  });
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

/** The size of each kind of error, from what the mode leaves over and from what is usual. */
function noiseAgain(
  before: CrispNoise,
  slots: readonly Slot[],
  residuals: Float64Array,
  count: number,
  parameters: number,
): CrispNoise {
  const left = Math.max(0.5, 1 - parameters / count);
  const again = (kind: keyof CrispNoise): number => {
    let sum = USUAL_WORTH * USUAL[kind] ** 2;
    let worth = USUAL_WORTH;
    for (let at = 0; at < slots.length; at++) {
      if (slots[at].kind !== kind || !slots[at].telling) continue;
      sum += (residuals[at] * before[kind]) ** 2;
      worth += left;
    }
    return Math.sqrt(sum / worth);
  };
  return {
    crispTime: again("crispTime"),
    coreK: again("coreK"),
    lossPercent: again("lossPercent"),
    crispScore: again("crispScore"),
    brownScore: again("brownScore"),
  };
}

function rangeOf(values: readonly number[]): readonly [number, number] | null {
  return values.length === 0 ? null : [Math.min(...values), Math.max(...values)];
}

function noticesOf(
  observations: readonly CrispObservation[],
  constants: readonly CalibratedConstant[],
  failure: string | null,
): string[] {
  const notices: string[] = [];
  if (failure !== null) notices.push(`The calibration did not converge (${failure}): do not use its numbers.`);
  if (observations.length === 0) {
    notices.push("No trials: every number is the prior's, so the intervals are wide.");
    return notices;
  }
  const thickness = rangeOf(observations.map((seen) => seen.thicknessMm)) as readonly [number, number];
  if (thickness[1] < 1.15 * thickness[0])
    notices.push(
      "One thickness only: log trials at a second one, a third thicker or more, to tell surface from inside.",
    );
  const scores = observations.filter((seen) => seen.crispScores.length > 0);
  const mean = (seen: CrispObservation): number =>
    seen.crispScores.reduce((sum, score) => sum + score, 0) / seen.crispScores.length;
  if (scores.length > 0 && (scores.every((seen) => mean(seen) >= 6) || scores.every((seen) => mean(seen) < 6)))
    notices.push("Crispness scores lie on one side of 6 only: score pieces taken out early and late as well.");
  const left = constants.filter((constant) => !constant.informed);
  for (const constant of left)
    notices.push(
      `Still the prior's: ${constant.label} (${constant.prior.from}). It would take ${constant.informedBy}.`,
    );
  return notices;
}
