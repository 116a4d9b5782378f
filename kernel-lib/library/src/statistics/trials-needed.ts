import { fail, positive, within } from "../check/check";
import { fQuantile } from "./distributions/f-distribution";
import { noncentralFCdf, noncentralTCdf } from "./distributions/noncentral-distributions";
import { normalCdf, normalQuantile } from "./distributions/normal-distribution";
import { studentTQuantile } from "./distributions/student-t-distribution";

/** A difference of two means to be seen. */
export interface TwoMeans {
  /** the smallest difference worth seeing, in the unit of the measurement */
  readonly difference: number;
  /** standard deviation of one trial (of the differences, where paired), same unit */
  readonly sd: number;
  /** the two are tried in pairs; false unless given */
  readonly paired?: boolean;
  /** chance of seeing a difference that is not there [-]; 0.05 unless given */
  readonly significance?: number;
}

/** A difference of two shares to be seen. */
export interface TwoShares {
  /** share that succeeds in each of the two [-] */
  readonly shares: readonly [number, number];
  /** chance of seeing a difference that is not there [-]; 0.05 unless given */
  readonly significance?: number;
}

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
 * Chance that a two-sided t test of two means with n trials each (n pairs) sees the difference: noncentral t with
 * noncentrality (difference/sd) √(n/2), √n where paired. The far tail, below 1e-4 for any useful power, is left out, as
 * R's `power.t.test` does.
 *
 * @param trials in each group, or pairs; need not be whole
 * @example
 * powerOfTwoMeans({ difference: 1, sd: 1 }, 20); // → 0.8689528
 */
export function powerOfTwoMeans(design: TwoMeans, trials: number): number {
  const where = "powerOfTwoMeans";
  const { difference, sd, paired = false, significance = 0.05 } = design;
  positive(Math.abs(difference), `${where}: difference`, "");
  positive(sd, `${where}: sd`, "");
  within(significance, 1e-6, 0.5, `${where}: significance`, "");
  if (!(trials > 1)) fail(`${where}: trials`, "must be > 1", trials);
  const df = (paired ? 1 : 2) * (trials - 1);
  const noncentrality = (Math.abs(difference) / sd) * Math.sqrt(trials / (paired ? 1 : 2));
  if (noncentrality > 37) return 1;
  return 1 - noncentralTCdf(studentTQuantile(1 - significance / 2, df), df, noncentrality);
}

/**
 * Trials in each group (or pairs) that see a difference of two means with the given chance; round up.
 *
 * @param power chance of seeing it [-]; 0.9 unless given
 * @example
 * trialsForTwoMeans({ difference: 1, sd: 1 }); // → 22.0211
 */
export function trialsForTwoMeans(design: TwoMeans, power = 0.9): number {
  return solveTrials("trialsForTwoMeans", power, (trials) => powerOfTwoMeans(design, trials));
}

/**
 * Trials in each of two groups that see a difference of two shares with the given chance, normal approximation (Fleiss,
 * Levin & Paik 2003, ch. 4, without continuity correction); round up.
 *
 * @param power chance of seeing it [-]; 0.9 unless given
 * @example
 * trialsForTwoShares({ shares: [0.5, 0.75] }); // → 76.7069
 */
export function trialsForTwoShares(design: TwoShares, power = 0.9): number {
  const where = "trialsForTwoShares";
  const [one, other] = design.shares;
  const { significance = 0.05 } = design;
  within(one, 0, 1, `${where}: shares[0]`, "");
  within(other, 0, 1, `${where}: shares[1]`, "");
  within(significance, 1e-6, 0.5, `${where}: significance`, "");
  if (one === other) fail(`${where}: shares`, "must differ", design.shares);
  const pooled = Math.sqrt((one + other) * (1 - (one + other) / 2));
  const own = Math.sqrt(one * (1 - one) + other * (1 - other));
  const z = normalQuantile(1 - significance / 2);
  return solveTrials(where, power, (trials) =>
    normalCdf((Math.sqrt(trials) * Math.abs(one - other) - z * pooled) / own),
  );
}

/**
 * Trials in each group that an F test of several means needs to see their spread with the given chance; round up.
 *
 * @param power chance of seeing it [-]; 0.9 unless given
 * @example
 * trialsForSeveralMeans({ groups: 4, betweenVariance: 1, withinVariance: 3 }, 0.8); // → 11.9261
 */
export function trialsForSeveralMeans(design: SeveralMeans, power = 0.9): number {
  const where = "trialsForSeveralMeans";
  const { groups, betweenVariance, withinVariance, significance = 0.05 } = design;
  if (!(Number.isInteger(groups) && groups >= 2)) fail(`${where}: groups`, "must be a whole number >= 2", groups);
  positive(betweenVariance, `${where}: betweenVariance`, "");
  positive(withinVariance, `${where}: withinVariance`, "");
  within(significance, 1e-6, 0.5, `${where}: significance`, "");
  return solveTrials(where, power, (trials) => {
    const df = (trials - 1) * groups;
    const noncentrality = ((groups - 1) * trials * betweenVariance) / withinVariance;
    if (noncentrality > 1400) return 1;
    return 1 - noncentralFCdf(fQuantile(1 - significance, groups - 1, df), groups - 1, df, noncentrality);
  });
}

function solveTrials(where: string, power: number, powerAt: (trials: number) => number): number {
  within(power, 0.1, 0.999, `${where}: power`, "");
  let low = 1.001;
  let high = 4;
  if (powerAt(2) >= power) return 2;
  while (powerAt(high) < power) {
    low = high;
    high *= 2;
    if (high > 1e6)
      fail(`${where}: difference`, "must be large enough to be seen with a million trials", powerAt(high));
  }
  for (let step = 0; step < 80 && high - low > 1e-9 * high; step++) {
    const middle = (low + high) / 2;
    if (powerAt(middle) < power) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
