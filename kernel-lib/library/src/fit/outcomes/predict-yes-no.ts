import { freezeDeep } from "../../check/freeze-deep";
import { normalQuantile } from "../../statistics/distributions/normal-distribution";
import { designRow } from "../models/design-columns";
import type { YesNoFit } from "./fit-yes-no";

/** A probability with its doubt. */
export interface YesNoPrediction {
  readonly probability: number;
  /** of the log odds, which the interval is taken on */
  readonly standardErrorLogOdds: number;
  readonly confidence95: readonly [number, number];
  readonly extrapolated: boolean;
}

/**
 * The probability of yes at one case, with a 95 % interval taken on the log odds.
 *
 * @param at every covariate of the fit by name
 * @example
 * const fit = fitYesNo({ covariates: { timeMin: [8, 9, 10, 11, 12, 13, 14, 15] }, yes: [0, 0, 0, 1, 0, 1, 1, 1] });
 * predictYesNo(fit, { timeMin: 12 }).probability; // → 0.655013
 */
export function predictYesNo(fit: YesNoFit, at: Readonly<Record<string, number | string>>): YesNoPrediction {
  const { row, extrapolated } = designRow("predictYesNo", fit, at);
  const full = [1, ...row];
  let line = 0;
  let variance = 0;
  for (let i = 0; i < full.length; i++) {
    line += full[i] * fit.parameters[fit.names[i]].estimate;
    for (let j = 0; j < full.length; j++) variance += full[i] * full[j] * fit.covariance[i][j];
  }
  const standardErrorLogOdds = Math.sqrt(Math.max(0, variance));
  const half = normalQuantile(0.975) * standardErrorLogOdds;
  const share = (odds: number): number => 1 / (1 + Math.exp(-odds));
  return freezeDeep({
    probability: share(line),
    standardErrorLogOdds,
    confidence95: [share(line - half), share(line + half)],
    extrapolated,
  });
}
