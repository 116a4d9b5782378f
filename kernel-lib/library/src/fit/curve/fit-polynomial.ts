import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { largestOf, smallestOf } from "../../statistics/extremes";
import { covarianceOf, directEstimates } from "../least-squares/direct-estimates";
import { solveLinear } from "../least-squares/solve-linear";
import type { CurveFit } from "./fit-curve";

/** Points and a degree. */
export interface FitPolynomialOptions {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** highest power, 1 or more */
  readonly degree: number;
  /** how much each point counts [-], as 1/variance up to a common factor; all 1 unless given */
  readonly weights?: readonly number[];
}

/** A fitted polynomial; parameters `b0`, `b1`, … are those of plain powers of x. */
export interface PolynomialFit extends CurveFit<string> {
  readonly degree: number;
  /** the same polynomial in z = (x − centre)/halfRange, which is what predictions use */
  readonly scaled: {
    readonly centre: number;
    readonly halfRange: number;
    readonly coefficients: readonly number[];
    readonly covariance: readonly (readonly number[])[];
  };
}

/**
 * Fits a polynomial b0 + b1 x + … by least squares in z = (x − centre)/halfRange with an orthogonal method, and turns the
 * coefficients back, so that high degrees keep their digits. Predictions stay in z.
 *
 * @returns estimates for the plain powers with standard errors; throws when x has too few different values
 * @example
 * const fit = fitPolynomial({ x: [1, 2, 3, 4, 5], y: [1.1, 3.9, 9.2, 15.8, 25.1], degree: 2 });
 * fit.parameters.b2.estimate; // → 1.02143
 */
export function fitPolynomial(options: FitPolynomialOptions): PolynomialFit {
  const where = "fitPolynomial";
  const { x, y, degree } = options;
  const n = y.length;
  const weights = options.weights ?? y.map(() => 1);
  if (!(Number.isInteger(degree) && degree >= 1)) fail(`${where}: degree`, "must be a whole number >= 1", degree);
  if (x.length !== n || weights.length !== n)
    fail(`${where}: x, y and weights`, "must be equally long", [x.length, n, weights.length]);
  for (let i = 0; i < n; i++) {
    if (!Number.isFinite(x[i])) fail(`${where}: x[${i}]`, "must be a finite number", x[i]);
    if (!Number.isFinite(y[i])) fail(`${where}: y[${i}]`, "must be a finite number", y[i]);
    if (!(Number.isFinite(weights[i]) && weights[i] > 0))
      fail(`${where}: weights[${i}]`, "must be > 0; to leave a point out, leave it out of x and y", weights[i]);
  }
  const p = degree + 1;
  const different = new Set(x).size;
  if (different < p)
    fail(
      `${where}: x`,
      `must hold at least ${p} different values for degree ${degree}: log trials at another x or lower the degree`,
      different,
    );
  if (n <= p)
    fail(`${where}: y`, `must hold more points than the ${p} coefficients: log more trials or lower the degree`, n);
  if (y.every((value) => value === y[0])) fail(`${where}: y`, `must vary: all ${n} values are equal`, y[0]);

  const low = smallestOf(x);
  const high = largestOf(x);
  const centre = low + (high - low) / 2;
  const halfRange = (high - low) / 2;
  const roots = Float64Array.from(weights, Math.sqrt);
  const columns = Array.from({ length: p }, (_, power) =>
    Float64Array.from(x, (value, i) => ((value - centre) / halfRange) ** power * roots[i]),
  );
  const solution = solveLinear(
    columns,
    Float64Array.from(y, (value, i) => value * roots[i]),
  );
  const back = powersOfShifted(degree, centre, halfRange);
  const estimates = back.map((row) => row.reduce((sum, entry, k) => sum + entry * solution.coefficients[k], 0));
  const root = back.map((row) =>
    solution.root[0].map((_, c) => row.reduce((sum, entry, k) => sum + entry * solution.root[k][c], 0)),
  );
  const names = estimates.map((_, k) => `b${k}`);
  const direct = directEstimates({ names, estimates, root, rss: solution.rss, weights });
  const residuals = Array.from(solution.residuals, (value, i) => value / roots[i]);
  return freezeDeep({
    ...direct,
    model: `polynomial of degree ${degree}`,
    equation: `y = ${names.map((name, k) => (k === 0 ? name : k === 1 ? `${name} x` : `${name} x^${k}`)).join(" + ")}`,
    rangeX: [low, high],
    ranges: {},
    options: {},
    notices: [],
    residuals,
    leverage: solution.leverage,
    conditionNumber: 1,
    x: [...x],
    y: [...y],
    weights: [...weights],
    fitted: y.map((value, i) => value - residuals[i]),
    degree,
    scaled: {
      centre,
      halfRange,
      coefficients: Array.from(solution.coefficients),
      covariance: covarianceOf(solution.root, direct.residualSd),
    },
  });
}

/** Row k holds how much each power of z = (x − centre)/halfRange puts into x^k. */
function powersOfShifted(degree: number, centre: number, halfRange: number): number[][] {
  const back = Array.from({ length: degree + 1 }, () => new Array<number>(degree + 1).fill(0));
  for (let power = 0; power <= degree; power++) {
    let choose = 1;
    for (let k = power; k >= 0; k--) {
      back[k][power] = (choose * (-centre) ** (power - k)) / halfRange ** power;
      choose = (choose * k) / (power - k + 1);
    }
  }
  return back;
}
