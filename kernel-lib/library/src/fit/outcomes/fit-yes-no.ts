import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import type { Estimates } from "../fit";
import { solveLinear } from "../least-squares/solve-linear";
import { type Covariates, designColumns } from "../models/design-columns";
import { likelihoodEstimates } from "./likelihood-estimates";
import { maximiseLikelihood } from "./maximise-likelihood";

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
  const yes = options.yes.map(Number);
  for (let i = 0; i < n; i++) {
    if (!(Number.isInteger(of[i]) && of[i] > 0)) fail(`${where}: of[${i}]`, "must be a whole number >= 1", of[i]);
    if (!(Number.isInteger(yes[i]) && yes[i] >= 0 && yes[i] <= of[i])) {
      fail(
        `${where}: yes[${i}]`,
        of[i] === 1 ? "must be yes or no (1 or 0)" : `must be a whole number from 0 to ${of[i]}`,
        options.yes[i],
      );
    }
  }
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
  refuseSeparation(where, design.names, design.columns, yes, of);

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
  const steepest = Math.max(
    ...columns[0].map((_, i) =>
      Math.abs(columns.reduce((sum, column, j) => sum + column[i] * solution.parameters[j], 0)),
    ),
  );
  if (!solution.converged || solution.covariance === null || steepest > 25) {
    fail(
      `${where}: covariates`,
      "must leave yes and no mixed somewhere, but together they separate them, so no slope is the best: log more trials where the outcome changes",
      names.slice(1),
    );
  }
  let deviance = 0;
  for (let i = 0; i < n; i++) {
    const line = columns.reduce((sum, column, j) => sum + column[i] * solution.parameters[j], 0);
    const fitted = of[i] / (1 + Math.exp(-line));
    if (yes[i] > 0) deviance += 2 * yes[i] * Math.log(yes[i] / fitted);
    if (yes[i] < of[i]) deviance += 2 * (of[i] - yes[i]) * Math.log((of[i] - yes[i]) / (of[i] - fitted));
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

/** Throws when one covariate alone parts all yes from all no. */
function refuseSeparation(
  where: string,
  names: readonly string[],
  columns: readonly Float64Array[],
  yes: readonly number[],
  of: readonly number[],
): void {
  names.forEach((name, j) => {
    const withYes = Array.from(columns[j]).filter((_, i) => yes[i] > 0);
    const withNo = Array.from(columns[j]).filter((_, i) => yes[i] < of[i]);
    const [lowYes, highYes] = [Math.min(...withYes), Math.max(...withYes)];
    const [lowNo, highNo] = [Math.min(...withNo), Math.max(...withNo)];
    if (lowYes < highNo && lowNo < highYes) return;
    if (name.includes("[")) {
      fail(
        `${where}: ${name}`,
        "must leave yes and no mixed, but one of its words has only one outcome: log the other outcome there too",
        name,
      );
    }
    const [from, to] = lowYes >= highNo ? [highNo, lowYes] : [highYes, lowNo];
    const place = from === to ? `around ${from}` : `between ${from} and ${to}`;
    fail(
      `${where}: ${name}`,
      `must leave yes and no mixed, but it separates them perfectly, so no slope is the best: log trials ${place}`,
      [from, to],
    );
  });
}

function logChoose(n: number, k: number): number {
  let sum = 0;
  for (let i = 1; i <= k; i++) sum += Math.log((n - k + i) / i);
  return sum;
}
