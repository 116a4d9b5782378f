import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { fPValue } from "../../statistics/distributions/f-distribution";
import { normOf } from "../../statistics/linear-algebra/norm-of";
import { symmetricEigen } from "../../statistics/linear-algebra/symmetric-eigen";
import type { Fit } from "../fit";
import { directEstimates } from "../least-squares/direct-estimates";
import { solveLinear } from "../least-squares/solve-linear";
import { type Covariates, designColumns } from "../models/design-columns";

/** Columns to regress on. */
export interface FitLinearOptions {
  /** by name; numbers, or words such as appliance names, which are compared with the first word */
  readonly covariates: Covariates;
  readonly y: readonly number[];
  /** how much each point counts [-], as 1/variance up to a common factor; all 1 unless given */
  readonly weights?: readonly number[];
  /** add a constant; true unless given */
  readonly intercept?: boolean;
}

/** A linear regression. */
export interface LinearFit extends Fit<string> {
  readonly y: readonly number[];
  readonly fitted: readonly number[];
  readonly weights: readonly number[];
  readonly hasIntercept: boolean;
  readonly levels: Readonly<Record<string, readonly string[]>>;
  readonly ranges: Readonly<Record<string, readonly [number, number]>>;
  /** share of the variation explained [-] (about zero when there is no constant) */
  readonly rSquared: number;
  readonly adjustedRSquared: number;
  /** all covariates against none */
  readonly fStatistic: number;
  readonly fPValue: number;
  /** sum of squared errors of each point predicted without itself */
  readonly press: number;
}

/**
 * Multiple linear regression y = b0 + Σ bⱼ xⱼ by Householder QR on centred, scaled columns with refinement in double
 * precision squared, so that nearly dependent columns keep their digits. Parameters are named `intercept` and by covariate.
 * Without the constant a slope through zero is told, even by trials at one x alone.
 *
 * @returns estimates with standard errors, R², F test, PRESS; throws when columns depend on each other
 * @example
 * const fit = fitLinear({ covariates: { speed: [4, 7, 8, 10, 12] }, y: [2, 4, 16, 18, 24] });
 * fit.parameters.speed.estimate; // → 2.91304
 * fit.rSquared; // → 0.875219
 */
export function fitLinear(options: FitLinearOptions): LinearFit {
  const where = "fitLinear";
  const { y, intercept = true } = options;
  const n = y.length;
  const weights = options.weights ?? y.map(() => 1);
  if (weights.length !== n) fail(`${where}: weights and y`, "must be equally long", [weights.length, n]);
  y.forEach((value, i) => {
    if (!Number.isFinite(value)) fail(`${where}: y[${i}]`, "must be a finite number", value);
    if (!(Number.isFinite(weights[i]) && weights[i] > 0)) {
      fail(`${where}: weights[${i}]`, "must be > 0; to leave a point out, leave it out of every column", weights[i]);
    }
  });
  const design = designColumns(where, options.covariates, n, intercept);
  const names = intercept ? ["intercept", ...design.names] : [...design.names];
  const p = names.length;
  if (n <= p) {
    fail(
      `${where}: y`,
      `must hold more observations than the ${p} coefficients: log more trials or leave covariates out`,
      n,
    );
  }
  const flat = intercept || y[0] === 0 || Object.values(design.ranges).every(([low, high]) => low === high);
  if (flat && y.every((value) => value === y[0])) fail(`${where}: y`, `must vary: all ${n} values are equal`, y[0]);

  const totalWeight = weights.reduce((sum, weight) => sum + weight, 0);
  const meanOf = (values: ArrayLike<number>): number => {
    if (!intercept) return 0;
    let sum = 0;
    for (let i = 0; i < n; i++) sum += weights[i] * values[i];
    const mean = sum / totalWeight;
    let rest = 0;
    for (let i = 0; i < n; i++) rest += weights[i] * (values[i] - mean);
    return mean + rest / totalWeight;
  };
  const centres = design.columns.map(meanOf);
  const roots = Float64Array.from(weights, Math.sqrt);
  const yCentre = meanOf(y);
  const columns = design.columns.map((column, j) => column.map((value, i) => (value - centres[j]) * roots[i]));
  if (intercept) columns.unshift(roots);
  const solution = solveLinear(
    columns,
    Float64Array.from(y, (value, i) => (value - yCentre) * roots[i]),
  );
  if (solution.dependent.length > 0) {
    const list = solution.dependent.map((j) => names[j]).join(", ");
    fail(
      `${where}: covariates`,
      `must not be sums of each other, but ${list} follows from the rest: leave it out`,
      list,
    );
  }

  const shift = intercept ? 1 : 0;
  const estimates = Array.from(solution.coefficients);
  if (intercept) {
    estimates[0] = exactSum([yCentre, estimates[0], ...centres.map((centre, j) => -centre * estimates[j + 1])]);
  }
  const root = solution.root.map((row) => [...row]);
  if (intercept) {
    for (let c = 0; c < p; c++) for (let j = 0; j < centres.length; j++) root[0][c] -= centres[j] * root[j + 1][c];
  }
  const direct = directEstimates({ names, estimates, root, rss: solution.rss, weights });
  const { degreesOfFreedom } = direct;
  const residuals = Array.from(solution.residuals, (value, i) => value / roots[i]);
  const total = y.reduce((sum, value, i) => sum + weights[i] * (value - yCentre) ** 2, 0);
  const explained = total - solution.rss;
  const fStatistic = explained / (p - shift) / (solution.rss / degreesOfFreedom);
  const notices: string[] = [];
  const condition = conditionOf(columns);
  if (condition > 1e4) {
    notices.push(
      `The covariates nearly depend on each other (condition number ${condition.toPrecision(3)}): single coefficients mean little, only their sum does.`,
    );
  }
  return freezeDeep({
    ...direct,
    model: "linear regression",
    rangeX: design.names.length === 1 ? (Object.values(design.ranges)[0] ?? null) : null,
    notices,
    residuals,
    leverage: solution.leverage,
    conditionNumber: condition,
    y: [...y],
    fitted: y.map((value, i) => value - residuals[i]),
    weights: [...weights],
    hasIntercept: intercept,
    levels: design.levels,
    ranges: design.ranges,
    rSquared: explained / total,
    adjustedRSquared: 1 - solution.rss / degreesOfFreedom / (total / (n - shift)),
    fStatistic,
    fPValue: fPValue(fStatistic, p - shift, degreesOfFreedom),
    press: residuals.reduce((sum, value, i) => sum + weights[i] * (value / (1 - solution.leverage[i])) ** 2, 0),
  });
}

function exactSum(values: readonly number[]): number {
  let high = 0;
  let low = 0;
  for (const value of values) {
    const sum = high + value;
    const part = sum - high;
    low += high - (sum - part) + (value - part);
    high = sum;
  }
  return high + low;
}

function conditionOf(columns: readonly Float64Array[]): number {
  if (columns.length < 2) return 1;
  const scaled = columns.map((column) => {
    const norm = normOf(column) || 1;
    return column.map((value) => value / norm);
  });
  const { values } = symmetricEigen(
    scaled.map((a) => scaled.map((b) => a.reduce((sum, value, i) => sum + value * b[i], 0))),
  );
  const smallest = values[values.length - 1];
  return smallest > 0 ? Math.sqrt(values[0] / smallest) : Number.POSITIVE_INFINITY;
}
