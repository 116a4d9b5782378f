import { fail, notNegative, positive } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { standardMode } from "../../fit/outcomes/standard-mode";
import type { ThermalModel } from "../../food/thermal/thermal-properties";
import { largestOf, smallestOf } from "../../statistics/extremes";
import type { KitchenUnits } from "../../units/unit-table";
import { clockBasis } from "../clocks/clock-basis";
import { coreReadingC } from "../clocks/core-clock";
import { airAtLoadC } from "../clocks/load-effect";
import { heatedMin } from "../clocks/look-cost";
import { type Contradiction, contradictionsIn } from "./contradictions";
import { type CrispNoise, probedMm, USUAL_NOISE, USUAL_UNEVENNESS } from "./crisp-noise";
import { type CrispObservation, checkObservation } from "./crisp-observation";
import { type CrispPrior, crispPriors, priorValue } from "./crisp-priors";
import { type CrispResidualsOptions, crispResiduals } from "./crisp-residuals";
import { type LoggedRange, loggedRange } from "./logged-range";
import { pieceAt } from "./piece-at";
import { noiseAgain, type SharedCovariance, sharedCovariance } from "./shared-covariance";

/** What `calibrateCrisp` works from. */
export interface CalibrateCrispOptions {
  /** the mix; its conductivity is a start, which core readings may move */
  readonly food: ThermalModel;
  readonly observations: readonly CrispObservation[];
  /** appliances to give a coefficient; default: those of the observations. One without trials keeps its prior */
  readonly applianceIds?: readonly string[];
  /** median of the prior for the water that leaves for each volume of crust (kg/m³); default: the mix's own water */
  readonly crustWaterKgM3?: number;
  /** the pieces carry a coating, default false: a bare piece is cooled by what evaporates from it */
  readonly coated?: boolean;
  /** thickness of a coating whose water that is (mm); default: one water density serves the whole crust */
  readonly coatingMm?: number;
  /** piece-to-piece coefficient of variation of the thickness [-]; default 0.03, our judgement */
  readonly unevenness?: number;
  /** priors in place of the usual ones, by name */
  readonly priors?: readonly CrispPrior[];
  /** units of the sentences; default metric */
  readonly units?: KitchenUnits;
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
  readonly applianceIds: readonly string[];
  readonly constants: readonly CalibratedConstant[];
  /** the mode, in prior standard deviations from each prior's middle, in the order of `constants` */
  readonly mode: readonly number[];
  /** its covariance in the same units */
  readonly covariance: readonly (readonly number[])[];
  readonly noise: CrispNoise;
  readonly unevenness: number;
  /** the trials it rests on */
  readonly observations: readonly CrispObservation[];
  /** how many */
  readonly n: number;
  /** measurements in them */
  readonly measurements: number;
  /** what was tried; `null` without trials */
  readonly logged: LoggedRange | null;
  readonly converged: boolean;
  readonly reason: string;
  /** where the trials disagree with the clocks, with each other or with what can be: no card while there are any */
  readonly contradictions: readonly Contradiction[];
  /** sentences a reader must see: what the trials leave to the prior, one thickness only, no scores on one side */
  readonly notices: readonly string[];
}

/** Iterations of the passes that only learn how large the errors are; the last pass runs to its end. */
const ROUGH_PASSES: readonly number[] = [8, 4, 3, 3];

/**
 * Calibrates heat, crust and browning jointly from logged trials, across thicknesses, cuts, setpoints, appliances, loads.
 *
 * Most probable constants under normal errors and the priors of `crispPriors` (posterior mode, covariance from the
 * curvature there). Measurements: crisp times between two checks or to one side of one (lognormal), core temperatures at
 * taking out and rested, weight loss, crispness and browning scores. One coefficient an appliance serves all three clocks,
 * and the core has a factor of its own. Errors are of several levels: a measurement's own, and those shared by a run, a
 * slab, a session and a setting (`sharedCovariance`); their sizes start from usual values and are estimated again. Crust
 * conductivity (0.12 W/(m·K)) and front temperature (100 °C) are held fixed.
 *
 * @returns constants with intervals, how much of each is the trials', scatter, contradictions, what to try to learn more
 *
 * Range: pieces heated from both faces from −40 to 40 °C, air 120 to 290 °C; see `coreTimeClosedForm` and `crustStart`
 * for the short forms' own errors. No trials at all is allowed: everything is then the prior's.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const calibration = calibrateCrisp({ food, observations: [], applianceIds: ["basket"] });
 * calibration.constants[0].name; // → "coefficient:basket"
 * calibration.constants[0].estimate; // → 40
 * calibration.constants[0].informed; // → false
 *
 * Reference: the window model follows Farkas, Singh & Rumsey (1996) for the front and Zanoni, Peri & Bruno (1995) for
 * browning; Gelman et al., Bayesian Data Analysis, ch. 4, for the normal approximation.
 */
export function calibrateCrisp(options: CalibrateCrispOptions): CrispCalibration {
  const settled = settledOptions(options);
  const { food, observations, applianceIds, priors, coatingMm, unevenness } = settled;
  const problem = crispResiduals(settled);
  const { slots } = problem;
  let noise: CrispNoise = USUAL_NOISE;
  let start: Float64Array = new Float64Array(priors.length);
  let shared: SharedCovariance | null = null;
  const residuals = (z: ArrayLike<number>): Float64Array => {
    const own = problem.residualsAt(z, noise);
    return shared === null ? own : shared.whiten(own);
  };
  for (const maxIterations of slots.length === 0 ? [] : ROUGH_PASSES) {
    shared = sharedCovariance(problem, problem.effectsAt(start, noise), noise);
    start = standardMode({ start, residuals, maxIterations }).z;
    const effects = problem.effectsAt(start, noise);
    const covariance = sharedCovariance(problem, effects, noise);
    noise = noiseAgain(problem, noise, problem.residualsAt(start, noise), effects, covariance, priors.length);
  }
  shared = slots.length === 0 ? null : sharedCovariance(problem, problem.effectsAt(start, noise), noise);
  const mode = standardMode({ start, residuals });

  const z = [...mode.z];
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
  const values = constants.map((constant) => constant.estimate);
  const innerWaterKgM3 = food.densityKgM3 * food.waterFraction;
  const contradictions = contradictionsIn({
    units: options.units,
    observations,
    noise,
    mixWaterKgM3: innerWaterKgM3,
    crustWaterKgM3: constants.find((constant) => constant.name === "crustWater")?.estimate ?? 0,
    clockReadingC: (seen, rested) => {
      const piece = pieceAt({ values, applianceIds, place: seen, coatingMm, innerWaterKgM3 });
      const airC = airAtLoadC(seen.setpointC, seen.loadFraction);
      const basis = clockBasis({ food, startC: seen.startC, airC, limitC: 74 });
      const heated = heatedMin(seen.looksMin, seen.timeMin, piece.lookMin);
      const at = (share: number): number =>
        coreReadingC(basis, piece, probedMm(seen.thicknessMm, unevenness), share * heated, rested);
      return { middle: at(1), early: at(0.8), late: at(1.25) };
    },
  });
  return freezeDeep({
    kind: "crisp calibration",
    food,
    coatingMm: options.coatingMm ?? null,
    applianceIds,
    constants,
    mode: z,
    covariance: mode.covariance,
    noise,
    unevenness,
    observations,
    n: observations.length,
    measurements: slots.length,
    logged: loggedRange(observations),
    converged: mode.converged,
    reason: mode.reason,
    contradictions,
    notices: noticesOf(observations, constants, mode.converged ? null : mode.reason),
  });
}

/** The options of a calibration checked, and what was left out filled in. */
function settledOptions(options: CalibrateCrispOptions): CrispResidualsOptions {
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
  const unevenness = notNegative(options.unevenness ?? USUAL_UNEVENNESS, "calibrateCrisp: unevenness", "");
  const replaced = new Map((options.priors ?? []).map((prior) => [prior.name, prior]));
  const priors = crispPriors({ applianceIds, crustWaterKgM3, coated: options.coated ?? false }).map(
    (prior) => replaced.get(prior.name) ?? prior,
  );
  return { food, observations, applianceIds, priors, coatingMm, unevenness };
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
  const thicknesses = observations.map((seen) => seen.thicknessMm);
  if (largestOf(thicknesses) < 1.15 * smallestOf(thicknesses))
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
