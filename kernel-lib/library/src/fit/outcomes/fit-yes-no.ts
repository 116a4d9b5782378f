import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import type { Estimates } from "../fit";
import { solveLinear } from "../least-squares/solve-linear";
import { type Covariates, designColumns } from "../models/design-columns";
import { likelihoodEstimates } from "./likelihood-estimates";
import { maximiseLikelihood } from "./maximise-likelihood";
import { type OutcomeSide, refuseSeparation } from "./refuse-separation";

/** Yes/no outcomes. */
export interface FitYesNoOptions {
  /** what the outcome may depend on, such as time and thickness */
  readonly covariates: Covariates;
  /** yes or no, 1 or 0; with `of`, how many were yes */
  readonly yes: readonly (number | boolean)[];
  /** how many pieces each entry of `yes` counts among; 1 each unless given */
  readonly of?: readonly number[];
}

/** A logistic regression. */
export interface YesNoFit extends Estimates<string> {
  /** −2 log-likelihood against a model that fits every entry exactly */
  readonly deviance: number;
  readonly levels: Readonly<Record<string, readonly string[]>>;
  readonly ranges: Readonly<Record<string, readonly [number, number]>>;
}

/**
 * Logistic regression of yes/no outcomes: log odds = intercept + Σ bⱼ xⱼ, by maximum likelihood (Newton's method).
 *
 * @returns coefficients in log odds with standard errors from the information; throws on perfect separation
 * @example
 * const fit = fitYesNo({ covariates: { timeMin: [8, 9, 10, 11, 12, 13, 14, 15] }, yes: [0, 0, 0, 1, 0, 1, 1, 1] });
 * fit.parameters.timeMin.estimate; // → 1.28229
 */
export function fitYesNo(options: FitYesNoOptions): YesNoFit {
  const where = "fitYesNo";
  const { covariates } = options;
  const n = options.yes.length;
  const of = options.of ?? options.yes.map(() => 1);
  if (of.length !== n) fail(`${where}: yes and of`, "must be equally long", [n, of.length]);
  const yes = options.yes.map((given, i) => {
    const count = typeof given === "boolean" ? Number(given) : given;
    if (!(Number.isInteger(of[i]) && of[i] > 0)) fail(`${where}: of[${i}]`, "must be a whole number >= 1", of[i]);
    if (!(Number.isInteger(count) && count >= 0 && count <= of[i])) {
      fail(
        `${where}: yes[${i}]`,
        of[i] === 1 ? "must be yes or no (1 or 0)" : `must be a whole number from 0 to ${of[i]}`,
        given,
      );
    }
    return count;
  });
  const pieces = of.reduce((sum, count) => sum + count, 0);
  const positives = yes.reduce((sum, count) => sum + count, 0);
  if (positives === 0)
    fail(`${where}: yes`, "must hold some yes: every outcome is no; log trials that succeed", positives);
  if (positives === pieces)
    fail(`${where}: yes`, "must hold some no: every outcome is yes; log trials that fail", positives);
  const design = designColumns(where, covariates, n);
  const names = ["intercept", ...design.names];
  const p = names.length;
  if (pieces <= p) fail(`${where}: yes`, `must hold more outcomes than the ${p} coefficients: log more trials`, pieces);
  const columns = [new Float64Array(n).fill(1), ...design.columns];
  const dependent = solveLinear(columns, new Float64Array(n).fill(1)).dependent.map((j) => names[j]);
  if (dependent.length > 0)
    fail(
      `${where}: covariates`,
      `must not be sums of each other, but ${dependent.join(", ")} follows from the rest: leave it out`,
      dependent,
    );
  refuseSeparation({
    where,
    design,
    sides: yes.flatMap((count, i): OutcomeSide[] => [
      ...(count > 0 ? [{ observation: i, sign: 1, rest: [1] } as const] : []),
      ...(count < of[i] ? [{ observation: i, sign: -1, rest: [1] } as const] : []),
    ]),
    parted: "yes and no mixed, but it separates them perfectly",
    partedTogether:
      "yes and no mixed somewhere, but together they separate them, so no slope is the best: log more trials where the outcome changes",
    allUp: (word) => `every outcome at "${word}" is yes: log trials that fail`,
    allDown: (word) => `every outcome at "${word}" is no: log trials that succeed`,
  });

  const solution = maximiseLikelihood({
    start: [Math.log(positives / (pieces - positives)), ...design.names.map(() => 0)],
    derivatives: (parameters, gradient, hessian) => {
      gradient.fill(0);
      for (const row of hessian) row.fill(0);
      let total = 0;
      for (let i = 0; i < n; i++) {
        let line = 0;
        for (let j = 0; j < p; j++) line += columns[j][i] * parameters[j];
        const share = 1 / (1 + Math.exp(-line));
        total += yes[i] * line - of[i] * (Math.max(0, line) + Math.log1p(Math.exp(-Math.abs(line))));
        const weight = of[i] * share * (1 - share);
        for (let j = 0; j < p; j++) {
          gradient[j] += (yes[i] - of[i] * share) * columns[j][i];
          for (let k = 0; k < p; k++) hessian[j][k] -= weight * columns[j][i] * columns[k][i];
        }
      }
      return total;
    },
  });
  if (!solution.converged || solution.covariance === null) {
    fail(`${where}: covariates`, `must let the search settle (${solution.reason})`, names.slice(1));
  }
  let deviance = 0;
  for (let i = 0; i < n; i++) {
    const line = columns.reduce((sum, column, j) => sum + column[i] * solution.parameters[j], 0);
    const no = of[i] - yes[i];
    if (yes[i] > 0) deviance += 2 * yes[i] * Math.log((yes[i] / of[i]) * (1 + Math.exp(-line)));
    if (no > 0) deviance += 2 * no * Math.log((no / of[i]) * (1 + Math.exp(line)));
  }
  const choices = of.reduce((sum, count, i) => sum + logChoose(count, yes[i]), 0);
  const estimates = likelihoodEstimates({
    model: "logistic regression",
    names,
    values: [...solution.parameters],
    covariance: solution.covariance as number[][],
    n,
    rangeX: design.names.length === 1 ? (Object.values(design.ranges)[0] ?? null) : null,
    logLikelihood: solution.logLikelihood + choices,
    converged: true,
    reason: solution.reason,
    iterations: solution.iterations,
    notices: [],
  });
  return freezeDeep({ ...estimates, deviance, levels: design.levels, ranges: design.ranges });
}

function logChoose(n: number, k: number): number {
  let sum = 0;
  for (let i = 1; i <= k; i++) sum += Math.log((n - k + i) / i);
  return sum;
}
