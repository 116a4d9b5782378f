import { freezeDeep } from "../../check/freeze-deep";
import { normalQuantile } from "../../statistics/distributions/normal-distribution";
import { designRow } from "../models/design-columns";
import type { OrderedScoresFit } from "./fit-ordered-scores";

/** How likely each score is at one case. */
export interface OrderedScoresPrediction {
  readonly rows: readonly {
    readonly score: number;
    readonly probability: number;
    /** probability of this score or a higher one */
    readonly atLeast: number;
    /** 95 % interval of `atLeast`, taken on the log odds; [1, 1] for the lowest score */
    readonly atLeast95: readonly [number, number];
  }[];
  /** mean score, weighted by probability */
  readonly expected: number;
  readonly extrapolated: boolean;
}

/**
 * How likely each score is at one case, and each score or better with a 95 % interval.
 *
 * @param at every covariate of the fit by name
 * @example
 * const fit = fitOrderedScores({ covariates: { timeMin: [8, 9, 10, 11, 12, 13, 14, 15, 16] }, score: [1, 1, 2, 1, 2, 3, 2, 3, 3] });
 * predictOrderedScores(fit, { timeMin: 14 }).expected; // → 2.6
 */
export function predictOrderedScores(
  fit: OrderedScoresFit,
  at: Readonly<Record<string, number | string>>,
): OrderedScoresPrediction {
  const { row, extrapolated } = designRow("predictOrderedScores", fit, at);
  const q = row.length;
  const z = normalQuantile(0.975);
  const share = (odds: number): number => 1 / (1 + Math.exp(-odds));
  const atLeast = fit.scores.map((_, k): { centre: number; interval: readonly [number, number] } => {
    if (k === 0) return { centre: 1, interval: [1, 1] };
    const weights = fit.names.map((__, j) => (j < q ? row[j] : j === q + k - 1 ? -1 : 0));
    let odds = 0;
    let variance = 0;
    weights.forEach((weight, i) => {
      odds += weight * fit.parameters[fit.names[i]].estimate;
      weights.forEach((other, j) => {
        variance += weight * other * fit.covariance[i][j];
      });
    });
    const half = z * Math.sqrt(Math.max(0, variance));
    return { centre: share(odds), interval: [share(odds - half), share(odds + half)] };
  });
  const rows = fit.scores.map((score, k) => ({
    score,
    probability: atLeast[k].centre - (atLeast[k + 1]?.centre ?? 0),
    atLeast: atLeast[k].centre,
    atLeast95: atLeast[k].interval,
  }));
  return freezeDeep({ rows, expected: rows.reduce((sum, one) => sum + one.score * one.probability, 0), extrapolated });
}
