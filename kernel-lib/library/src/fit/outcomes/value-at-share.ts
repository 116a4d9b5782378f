import { fail, within } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { ownValue } from "../../check/own-value";
import { normalQuantile } from "../../statistics/distributions/normal-distribution";
import { designRow } from "../models/design-columns";
import type { OrderedScoresFit } from "./fit-ordered-scores";
import type { YesNoFit } from "./fit-yes-no";

/** Where a share is reached. */
export interface ValueAtShareOptions {
  /** the numeric covariate to solve for, such as "timeMin" */
  readonly covariate: string;
  /** share that is yes, or that scores at least `score` [-]; 0.5 unless given */
  readonly share?: number;
  /** for ordered scores: this score or a higher one */
  readonly score?: number;
  /** the other covariates by name; none unless the fit has more than one */
  readonly at?: Readonly<Record<string, number | string>>;
}

/** The value of a covariate at which a share is yes or scores enough, with both usual intervals. */
export interface ValueAtShare {
  readonly value: number;
  readonly standardError: number;
  /** 95 % interval by the delta method: value ± 1.96 standard errors */
  readonly delta95: readonly [number, number];
  /** 95 % interval of Fieller (1954), the better one for few trials; null when the slope is not clearly different from zero */
  readonly fieller95: readonly [number, number] | null;
  readonly extrapolated: boolean;
  /** one sentence */
  readonly reading: string;
}

/**
 * The value of one covariate at which a share of outcomes is yes, or scores at least so much, such as the time when half or
 * 90 % are crisp: x = (logit share − a)/b, a being minus the cut below `score` for ordered scores, with the delta-method and Fieller intervals (Finney 1971, ch. 4).
 *
 * @example
 * const fit = fitYesNo({ covariates: { timeMin: [8, 9, 10, 11, 12, 13, 14, 15] }, yes: [0, 0, 0, 1, 0, 1, 1, 1] });
 * valueAtShare(fit, { covariate: "timeMin" }).value; // → 11.5
 * const scores = fitOrderedScores({ covariates: { timeMin: [8, 9, 10, 11, 12, 13, 14, 15, 16] }, score: [1, 1, 2, 1, 2, 3, 2, 3, 3] });
 * valueAtShare(scores, { covariate: "timeMin", score: 3, share: 0.9 }).value; // → 15.3
 */
export function valueAtShare(fit: YesNoFit | OrderedScoresFit, options: ValueAtShareOptions): ValueAtShare {
  const where = "valueAtShare";
  const { covariate, share = 0.5, score, at = {} } = options;
  within(share, 0.001, 0.999, `${where}: share`, "");
  const range = ownValue(fit.ranges, covariate);
  if (range === undefined)
    fail(`${where}: covariate`, `must be one of ${Object.keys(fit.ranges).join(", ")}`, covariate);
  const { row } = designRow(where, fit, { ...at, [covariate]: 0 });
  const rest = "scores" in fit ? scoreRow(fit, row, score) : [1, ...row];
  if (!("scores" in fit) && score !== undefined)
    fail(`${where}: score`, "must be left out for a fit of yes and no", score);
  const index = fit.names.indexOf(covariate);
  const slope = fit.parameters[covariate].estimate;
  const target = Math.log(share / (1 - share));
  let base = 0;
  let varianceBase = 0;
  let covarianceBase = 0;
  for (let i = 0; i < rest.length; i++) {
    base += rest[i] * fit.parameters[fit.names[i]].estimate;
    covarianceBase += rest[i] * fit.covariance[i][index];
    for (let j = 0; j < rest.length; j++) varianceBase += rest[i] * rest[j] * fit.covariance[i][j];
  }
  const varianceSlope = fit.covariance[index][index];
  const value = (target - base) / slope;
  const standardError =
    Math.sqrt(varianceBase + 2 * value * covarianceBase + value * value * varianceSlope) / Math.abs(slope);
  const z = normalQuantile(0.975);
  const a = slope * slope - z * z * varianceSlope;
  const b = 2 * ((base - target) * slope - z * z * covarianceBase);
  const c = (base - target) ** 2 - z * z * varianceBase;
  const root = b * b - 4 * a * c;
  const fieller95: readonly [number, number] | null =
    a > 0 && root >= 0 ? [(-b - Math.sqrt(root)) / (2 * a), (-b + Math.sqrt(root)) / (2 * a)] : null;
  const who = `${Math.round(1000 * share) / 10} % ${score === undefined ? "are yes" : `score ${score} or more`}`;
  return freezeDeep({
    value,
    standardError,
    delta95: [value - z * standardError, value + z * standardError],
    fieller95,
    extrapolated: value < range[0] || value > range[1],
    reading: fieller95
      ? `${who} at ${covariate} ${value.toPrecision(3)} (95 % ${fieller95[0].toPrecision(3)} to ${fieller95[1].toPrecision(3)}, Fieller).`
      : `${who} at ${covariate} ${value.toPrecision(3)}, but its slope is not clearly different from zero, so there is no interval: log more trials.`,
  });
}

/** The covariates' entries and −1 at the cut below a score: its log odds are that sum. */
function scoreRow(fit: OrderedScoresFit, row: readonly number[], score: number | undefined): number[] {
  const above = fit.scores.slice(1);
  if (!above.includes(score as number))
    fail("valueAtShare: score", `must be one of ${above.join(", ")} (that score or more)`, score);
  return [...row, ...above.map((one) => (one === score ? -1 : 0))];
}
