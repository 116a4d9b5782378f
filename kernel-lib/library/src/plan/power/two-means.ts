import { fail, positive, within } from "../../check/check";
import { noncentralTCdf } from "../../statistics/distributions/noncentral-distributions";
import { studentTQuantile } from "../../statistics/distributions/student-t-distribution";
import { solveTrials } from "./solve-trials";

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
  if (!(trials > 1)) fail(`${where}: trials`, "must be > 1", trials);
  return powerOfT({
    where,
    noncentrality: (Math.abs(difference) / sd) * Math.sqrt(trials / (paired ? 1 : 2)),
    degreesOfFreedom: (paired ? 1 : 2) * (trials - 1),
    significance,
  });
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

/** What `powerOfT` works from. */
interface PowerOfT {
  readonly where: string;
  readonly noncentrality: number;
  readonly degreesOfFreedom: number;
  readonly significance: number;
}

/** Chance that a noncentral t lies above what chance alone exceeds in half of `significance`. */
export function powerOfT({ where, noncentrality, degreesOfFreedom, significance }: PowerOfT): number {
  within(significance, 1e-6, 0.5, `${where}: significance`, "");
  if (noncentrality > 37) return 1;
  const critical = studentTQuantile(1 - significance / 2, degreesOfFreedom);
  return 1 - noncentralTCdf(critical, degreesOfFreedom, noncentrality);
}
