import { fail } from "../check/check";
import { orTooLittle } from "../check/or-too-little";
import { tooLittle } from "../check/too-little";
import { fitLinear, type LinearFit } from "../fit/curve/fit-linear";
import { predictLinear } from "../fit/curve/predict-linear";
import { largestOf, smallestOf } from "../statistics/extremes";

/** One cook or reheat of weighed pieces. */
export interface LossTrial {
  /** slab thickness (mm) */
  readonly thicknessMm: number;
  /** time in the appliance (min) */
  readonly timeMin: number;
  /** air temperature set (°C) */
  readonly setpointC: number;
  readonly massBeforeG: number;
  /** of the same pieces */
  readonly massAfterG: number;
}

/** What a loss can depend on. */
export type LossPredictor = "thicknessMm" | "timeMin" | "setpointC";

/** Loss against thickness, time and setpoint. */
export interface LossFit {
  /** the regression, loss in % of the mass before */
  readonly fit: LinearFit;
  /** the predictors that vary in these trials and were used */
  readonly predictors: readonly LossPredictor[];
  /** predictors that were left out, and why */
  readonly leftOut: readonly string[];
  readonly trials: readonly LossTrial[];
}

/** Loss at one setting, with its doubt. */
export interface LossPrediction {
  /** % of the mass before */
  readonly lossPercent: number;
  /** 100 − loss */
  readonly yieldPercent: number;
  /** standard error of the mean (% points) */
  readonly standardErrorPercent: number;
  /** 95 % interval of the mean loss (%) */
  readonly confidence95: readonly [number, number];
  /** 95 % interval for one further trial (%) */
  readonly prediction95: readonly [number, number];
  /**
   * farther from the trials than any of them: outside a predictor's range, a combination that was not tried (leverage
   * above every trial's), or another value of a predictor that never varied
   */
  readonly extrapolated: boolean;
}

const PREDICTORS: readonly LossPredictor[] = ["thicknessMm", "timeMin", "setpointC"];

/**
 * Regresses the loss of any cook (par-cook, bake, reheat) on thickness, time and setpoint by least squares, from weighed
 * trials of one product. A predictor that never varies cannot be judged and is left out with a word why.
 *
 * loss % = b0 + b1·thickness + b2·time + b3·setpoint
 *
 * A straight plane through what was tried: good inside it, no law beyond. It knows no crispness; a variant's reheat at
 * its own setting, where loss follows the crust, is `reheatYield`'s.
 *
 * Throws `TooLittle` when nothing varies, or there are no more trials than coefficients.
 *
 * @param trials weighed before and after
 * @param largestGainPercent largest gain taken for real (% of before); 2 unless given
 * @returns the fit and what it rests on
 * @example
 * const trials = [[6, 9, 84], [6, 11, 81], [9, 10, 88], [9, 13, 85], [12, 12, 90], [12, 15, 87]].map(([thicknessMm, timeMin, massAfterG]) => ({ thicknessMm, timeMin, setpointC: 200, massBeforeG: 100, massAfterG }));
 * const loss = fitLoss(trials);
 * predictLoss(loss, { thicknessMm: 9, timeMin: 11, setpointC: 200 }).lossPercent; // → 13
 * loss.leftOut[0]; // → "setpointC is 200 in every trial"
 */
export function fitLoss(trials: readonly LossTrial[], largestGainPercent: number = 2): LossFit {
  trials.forEach((trial, at) => {
    const { massBeforeG, massAfterG } = trial;
    if (!(massBeforeG > 0 && massAfterG > 0)) {
      fail(`fitLoss: trial ${at + 1}`, "must be weighed before and after", { massBeforeG, massAfterG });
    }
    if (massAfterG > massBeforeG * (1 + largestGainPercent / 100)) {
      const must = `must weigh at most ${largestGainPercent} % more after than its ${massBeforeG} g before`;
      fail(`fitLoss: trial ${at + 1}`, must, massAfterG);
    }
  });
  const predictors: LossPredictor[] = [];
  const leftOut: string[] = [];
  for (const name of PREDICTORS) {
    const values = trials.map((trial) => trial[name]);
    const low = smallestOf(values);
    if (largestOf(values) - low > 1e-9 * Math.max(1, Math.abs(low))) predictors.push(name);
    else leftOut.push(`${name} is ${low} in every trial`);
  }
  const ask = (): string =>
    `Weighed trials must vary in thickness, time or setpoint, and number more than what varies, to tell what the loss depends on; there ${trials.length === 1 ? "is 1" : `are ${trials.length}`}: weigh more, at another thickness and time.`;
  if (predictors.length === 0) tooLittle("fitLoss", ask());
  const fit = orTooLittle("fitLoss", ask, () =>
    fitLinear({
      covariates: Object.fromEntries(predictors.map((name) => [name, trials.map((trial) => trial[name])])),
      y: trials.map((trial) => 100 * (1 - trial.massAfterG / trial.massBeforeG)),
    }),
  );
  return Object.freeze({
    fit,
    predictors: Object.freeze(predictors),
    leftOut: Object.freeze(leftOut),
    trials: Object.freeze([...trials]),
  });
}

/** The loss to expect at a thickness, time and setpoint. */
export function predictLoss(loss: LossFit, at: Pick<LossTrial, LossPredictor>): LossPrediction {
  const { value, standardError, confidence95, prediction95, extrapolated } = predictLinear(
    loss.fit,
    Object.fromEntries(loss.predictors.map((name) => [name, at[name]])),
  );
  const leverage = (standardError / loss.fit.residualSd) ** 2;
  const untried = leverage > 1.000001 * largestOf(loss.fit.leverage);
  const elsewhere = PREDICTORS.some(
    (name) => !loss.predictors.includes(name) && Math.abs(at[name] - loss.trials[0][name]) > 1e-6,
  );
  return Object.freeze({
    lossPercent: value,
    yieldPercent: 100 - value,
    standardErrorPercent: standardError,
    confidence95,
    prediction95,
    extrapolated: extrapolated || untried || elsewhere,
  });
}
