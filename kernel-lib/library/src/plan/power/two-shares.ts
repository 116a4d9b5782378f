import { fail, within } from "../../check/check";
import { normalCdf, normalQuantile } from "../../statistics/distributions/normal-distribution";
import { solveTrials } from "./solve-trials";

/** A difference of two shares to be seen. */
export interface TwoShares {
  /** share that succeeds in each of the two [-] */
  readonly shares: readonly [number, number];
  /** chance of seeing a difference that is not there [-]; 0.05 unless given */
  readonly significance?: number;
}

/**
 * Chance that a two-sided test of two shares with n trials each sees their difference: Φ((√n |p₁ − p₂| − z √(2 p̄ (1 − p̄)))
 * / √(p₁(1 − p₁) + p₂(1 − p₂))), p̄ the mean of the two (Fleiss, Levin & Paik 2003, ch. 4, without continuity correction).
 *
 * @param trials in each group; need not be whole
 * @example
 * powerOfTwoShares({ shares: [0.5, 0.75] }, 50); // → 0.74017
 */
export function powerOfTwoShares(design: TwoShares, trials: number): number {
  const where = "powerOfTwoShares";
  const [one, other] = design.shares;
  const { significance = 0.05 } = design;
  within(one, 0, 1, `${where}: shares[0]`, "");
  within(other, 0, 1, `${where}: shares[1]`, "");
  within(significance, 1e-6, 0.5, `${where}: significance`, "");
  if (one === other) fail(`${where}: shares`, "must differ", design.shares);
  if (!(trials >= 1)) fail(`${where}: trials`, "must be >= 1", trials);
  const pooled = Math.sqrt((one + other) * (1 - (one + other) / 2));
  const own = Math.sqrt(one * (1 - one) + other * (1 - other));
  const above = Math.sqrt(trials) * Math.abs(one - other) - normalQuantile(1 - significance / 2) * pooled;
  return own === 0 ? Number(above >= 0) : normalCdf(above / own);
}

/**
 * Trials in each of two groups that see a difference of two shares with the given chance; round up.
 *
 * @param power chance of seeing it [-]; 0.9 unless given
 * @example
 * trialsForTwoShares({ shares: [0.5, 0.75] }); // → 76.7069
 */
export function trialsForTwoShares(design: TwoShares, power = 0.9): number {
  return solveTrials("trialsForTwoShares", power, (trials) => powerOfTwoShares(design, trials));
}
