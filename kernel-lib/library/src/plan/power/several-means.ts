import { fail, positive, within } from "../../check/check";
import { fQuantile } from "../../statistics/distributions/f-distribution";
import { noncentralFCdf } from "../../statistics/distributions/noncentral-distributions";
import { solveTrials } from "./solve-trials";

/** A spread of several means to be seen. */
export interface SeveralMeans {
  /** how many groups are compared */
  readonly groups: number;
  /** variance of the group means (n − 1 in its divisor), unit squared */
  readonly betweenVariance: number;
  /** variance of one trial within a group, unit squared */
  readonly withinVariance: number;
  /** chance of seeing a spread that is not there [-]; 0.05 unless given */
  readonly significance?: number;
}

/**
 * Chance that a one-way F test of several means with n trials each sees their spread: noncentral F with noncentrality
 * (groups − 1) n betweenVariance/withinVariance.
 *
 * @param trials in each group; need not be whole
 * @example
 * powerOfSeveralMeans({ groups: 4, betweenVariance: 1, withinVariance: 3 }, 12); // → 0.803
 */
export function powerOfSeveralMeans(design: SeveralMeans, trials: number): number {
  const where = "powerOfSeveralMeans";
  const { groups, betweenVariance, withinVariance, significance = 0.05 } = design;
  if (!(Number.isInteger(groups) && groups >= 2)) fail(`${where}: groups`, "must be a whole number >= 2", groups);
  positive(betweenVariance, `${where}: betweenVariance`, "");
  positive(withinVariance, `${where}: withinVariance`, "");
  within(significance, 1e-6, 0.5, `${where}: significance`, "");
  if (!(trials > 1)) fail(`${where}: trials`, "must be > 1", trials);
  const df = (trials - 1) * groups;
  const noncentrality = ((groups - 1) * trials * betweenVariance) / withinVariance;
  if (noncentrality > 1400) return 1;
  return 1 - noncentralFCdf(fQuantile(1 - significance, groups - 1, df), groups - 1, df, noncentrality);
}

/**
 * Trials in each group that an F test of several means needs to see their spread with the given chance; round up.
 *
 * @param power chance of seeing it [-]; 0.9 unless given
 * @example
 * trialsForSeveralMeans({ groups: 4, betweenVariance: 1, withinVariance: 3 }, 0.8); // → 11.9261
 */
export function trialsForSeveralMeans(design: SeveralMeans, power = 0.9): number {
  return solveTrials("trialsForSeveralMeans", power, (trials) => powerOfSeveralMeans(design, trials));
}
