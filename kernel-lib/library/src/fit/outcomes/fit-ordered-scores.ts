import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import type { Estimates } from "../fit";
import { solveLinear } from "../least-squares/solve-linear";
import { type Covariates, designColumns } from "../models/design-columns";
import { likelihoodEstimates } from "./likelihood-estimates";
import { maximiseLikelihood } from "./maximise-likelihood";
import { type OutcomeSide, refuseSeparation } from "./refuse-separation";

/** Panel scores in order. */
export interface FitOrderedScoresOptions {
  /** what the score may depend on, such as time and appliance */
  readonly covariates: Covariates;
  /** one score an observation; only their order counts */
  readonly score: readonly number[];
}

/** A proportional-odds fit. */
export interface OrderedScoresFit extends Estimates<string> {
  /** the scores that occur, rising */
  readonly scores: readonly number[];
  readonly deviance: number;
  readonly levels: Readonly<Record<string, readonly string[]>>;
  readonly ranges: Readonly<Record<string, readonly [number, number]>>;
}

/**
 * Proportional-odds regression of ordered scores (McCullagh 1980): log odds of a score at or below k = cutₖ − Σ bⱼ xⱼ, by
 * maximum likelihood. A positive b lifts scores. Cuts are named `cut[k|next]`.
 *
 * @returns coefficients in log odds, then the cuts, with standard errors from the observed information
 * @example
 * const fit = fitOrderedScores({ covariates: { timeMin: [8, 9, 10, 11, 12, 13, 14, 15, 16] }, score: [1, 1, 2, 1, 2, 3, 2, 3, 3] });
 * fit.parameters.timeMin.estimate; // → 1.24831
 */
export function fitOrderedScores(options: FitOrderedScoresOptions): OrderedScoresFit {
  const where = "fitOrderedScores";
  const { score } = options;
  const n = score.length;
  score.forEach((value, i) => {
    if (!Number.isFinite(value)) fail(`${where}: score[${i}]`, "must be a finite number", value);
  });
  const scores = [...new Set(score)].sort((one, other) => one - other);
  const cuts = scores.length - 1;
  if (cuts === 0)
    fail(
      `${where}: score`,
      `must vary: all ${n} scores are equal; log trials that the panel scores differently`,
      score[0],
    );
  if (cuts === 1) fail(`${where}: score`, "must take at least three values; for two use fitYesNo", scores);
  const design = designColumns(where, options.covariates, n);
  const q = design.names.length;
  const p = q + cuts;
  if (n <= p) fail(`${where}: score`, `must hold more observations than the ${p} parameters: log more trials`, n);
  const names = [...design.names, ...scores.slice(1).map((next, k) => `cut[${scores[k]}|${next}]`)];
  const dependent = solveLinear(
    [new Float64Array(n).fill(1), ...design.columns],
    new Float64Array(n).fill(1),
  ).dependent;
  if (dependent.length > 0) {
    fail(
      `${where}: covariates`,
      "must not be sums of each other: leave one out",
      dependent.map((j) => design.names[j - 1] ?? "constant"),
    );
  }
  const category = score.map((value) => scores.indexOf(value));
  const cutRow = (k: number): number[] => scores.slice(1).map((_, at) => (at === k ? -1 : 0));
  const atOrBelow = scores.slice(0, -1).map((_, k) => category.filter((own) => own <= k).length / n);
  refuseSeparation({
    where,
    design,
    sides: category.flatMap((own, i): OutcomeSide[] => [
      ...(own > 0 ? [{ observation: i, sign: 1, rest: cutRow(own - 1) } as const] : []),
      ...(own < cuts ? [{ observation: i, sign: -1, rest: cutRow(own) } as const] : []),
    ]),
    parted: "neighbouring scores mixed, but it separates them perfectly",
    partedTogether:
      "neighbouring scores mixed somewhere, but together they separate them, so no slope is the best: log more trials where the score changes",
    allUp: (word) => `every score at "${word}" is ${scores[cuts]}, the highest: log trials that score lower`,
    allDown: (word) => `every score at "${word}" is ${scores[0]}, the lowest: log trials that score higher`,
  });
  const below = (z: number): number => 1 / (1 + Math.exp(-z));
  const { columns } = design;
  const solution = maximiseLikelihood({
    start: [...design.names.map(() => 0), ...atOrBelow.map((share) => Math.log(share / (1 - share)))],
    derivatives: (parameters, gradient, hessian) => {
      gradient.fill(0);
      for (const row of hessian) row.fill(0);
      let total = 0;
      const slopes = new Float64Array(p);
      for (let i = 0; i < n; i++) {
        let line = 0;
        for (let j = 0; j < q; j++) line += columns[j][i] * parameters[j];
        const k = category[i];
        const top = k < cuts ? parameters[q + k] - line : Number.POSITIVE_INFINITY;
        const bottom = k > 0 ? parameters[q + k - 1] - line : Number.NEGATIVE_INFINITY;
        const share = bottom > 0 ? below(-bottom) - below(-top) : below(top) - below(bottom);
        if (!(share > 0)) return Number.NEGATIVE_INFINITY;
        total += Math.log(share);
        const fTop = k < cuts ? below(top) * below(-top) : 0;
        const fBottom = k > 0 ? below(bottom) * below(-bottom) : 0;
        const gTop = k < cuts ? fTop * (below(-top) - below(top)) : 0;
        const gBottom = k > 0 ? fBottom * (below(-bottom) - below(bottom)) : 0;
        slopes.fill(0);
        for (let j = 0; j < q; j++) slopes[j] = (-columns[j][i] * (fTop - fBottom)) / share;
        if (k < cuts) slopes[q + k] = fTop / share;
        if (k > 0) slopes[q + k - 1] = -fBottom / share;
        for (let a = 0; a < p; a++) {
          gradient[a] += slopes[a];
          for (let b = 0; b < p; b++) hessian[a][b] -= slopes[a] * slopes[b];
        }
        for (let j = 0; j < q; j++) {
          for (let m = 0; m < q; m++) hessian[j][m] += (columns[j][i] * columns[m][i] * (gTop - gBottom)) / share;
          if (k < cuts) {
            hessian[j][q + k] -= (columns[j][i] * gTop) / share;
            hessian[q + k][j] -= (columns[j][i] * gTop) / share;
          }
          if (k > 0) {
            hessian[j][q + k - 1] += (columns[j][i] * gBottom) / share;
            hessian[q + k - 1][j] += (columns[j][i] * gBottom) / share;
          }
        }
        if (k < cuts) hessian[q + k][q + k] += gTop / share;
        if (k > 0) hessian[q + k - 1][q + k - 1] -= gBottom / share;
      }
      return total;
    },
  });
  if (!solution.converged || solution.covariance === null) {
    fail(`${where}: covariates`, `must let the search settle (${solution.reason})`, design.names);
  }
  const estimates = likelihoodEstimates({
    model: "proportional odds",
    names,
    values: [...solution.parameters],
    covariance: solution.covariance as number[][],
    n,
    rangeX: q === 1 ? (Object.values(design.ranges)[0] ?? null) : null,
    logLikelihood: solution.logLikelihood,
    converged: true,
    reason: solution.reason,
    iterations: solution.iterations,
    notices: [],
  });
  return freezeDeep({
    ...estimates,
    scores,
    deviance: -2 * solution.logLikelihood,
    levels: design.levels,
    ranges: design.ranges,
  });
}
