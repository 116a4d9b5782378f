import { freezeDeep } from "../../check/freeze-deep";
import { leastSquares } from "../../fit/least-squares/least-squares";
import { posteriorMode } from "../../fit/outcomes/posterior-mode";
import type { ThermalModel } from "../../food/thermal/thermal-properties";
import type { CrispObservation } from "./crisp-observation";
import { type CrispPrior, priorValue } from "./crisp-priors";
import { type CalibrateCrispOptions, type CrispNoise, crispResiduals, type Slot } from "./crisp-residuals";

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
  const problem = crispResiduals(options);
  const { priors, observations, slots } = problem;
  const names = priors.map((_, at) => `z${at}`);
  let noise = USUAL;
  let start = priors.map(() => 0);
  let changes: Float64Array = new Float64Array(slots.length);
  const residualsAt = (z: ArrayLike<number>): Float64Array => problem.residualsAt(z, noise, changes);
  const learnChanges = (): void => {
    changes = problem.changesAt(start, noise);
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
    food: options.food,
    coatingMm: options.coatingMm ?? null,
    constants,
    mode: z,
    covariance: mode.covariance,
    noise,
    unevenness: problem.unevenness,
    n: observations.length,
    measurements: slots.length,
    thicknessRangeMm: rangeOf(observations.map((seen) => seen.thicknessMm)),
    setpointRangeC: rangeOf(observations.map((seen) => seen.setpointC)),
    converged: mode.converged,
    reason: mode.reason,
    notices: noticesOf(observations, constants, mode.converged ? null : mode.reason),
  });
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
