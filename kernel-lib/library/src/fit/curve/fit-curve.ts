import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { studentTQuantile } from "../../statistics/distributions/student-t-distribution";
import { largestOf, smallestOf } from "../../statistics/extremes";
import type { Fit, Values } from "../fit";
import { curveSolver, type FitCurveOptions } from "../least-squares/solve-curve";
import { summariseFit } from "../least-squares/summarise-fit";
import type { CurveModel } from "../models/curve-model";

/** Points to fit a curve to. */
export interface CurveData<X = number> {
  /** one entry a point */
  readonly x: readonly X[];
  /** one value a point */
  readonly y: readonly number[];
  /** how much each point counts [-], as 1/variance up to a common factor; all 1 unless given */
  readonly weights?: readonly number[];
}

/** A fitted curve with the points it rests on. */
export interface CurveFit<Name extends string = string, X = number> extends Fit<Name> {
  readonly equation: string;
  readonly x: readonly X[];
  readonly y: readonly number[];
  readonly weights: readonly number[];
  readonly fitted: readonly number[];
  /** least and greatest value of each numeric covariate, where x is a record */
  readonly ranges: Readonly<Record<string, readonly [number, number]>>;
  /** what was held, bounded or started by the caller; a refit repeats it */
  readonly options: FitCurveOptions<Name>;
}

/**
 * Fits a curve with named parameters to points by least squares (see `leastSquares`), starting from the model's guess.
 *
 * Minimises Σ wᵢ (yᵢ − f(xᵢ))². Weights are relative precisions, 1/variance up to a common factor: a weight of 2 moves
 * the curve as a doubled point would, but the count of observations stays.
 *
 * @param model one of the ready models, or `curveModel({ … })`
 * @param data x, y and, if wanted, weights
 * @returns estimates, residuals, criteria and notices; throws one sentence when the points cannot carry the model
 * @example
 * const dip = curveModel({ name: "dip", evaluate: (x, { a, b }) => a * Math.exp(-b * x), start: { a: 5, b: 0.1 } });
 * const fit = fitCurve(dip, { x: [0, 1, 2, 4], y: [8.1, 4.8, 3.1, 1.0] });
 * fit.parameters.b.estimate; // → 0.502086
 */
export function fitCurve<Name extends string, X = number>(
  model: CurveModel<Name, X>,
  data: CurveData<X>,
  options: FitCurveOptions<Name> = {},
): CurveFit<Name, X> {
  return fitCurveFor("fitCurve", model, data, options);
}

/** `fitCurve` on behalf of another function, which error sentences then name. */
export function fitCurveFor<Name extends string, X>(
  where: string,
  model: CurveModel<Name, X>,
  data: CurveData<X>,
  options: FitCurveOptions<Name> = {},
): CurveFit<Name, X> {
  const names = Object.keys(model.parameters) as Name[];
  const { x, y } = data;
  const n = y.length;
  const weights = data.weights ?? y.map(() => 1);
  checkPoints(where, x, y, weights);
  const freeCount = names.filter((name) => options.fixed?.[name] === undefined).length;
  if (n <= freeCount) {
    fail(
      `${where}: ${model.name}`,
      `must have more points than its ${freeCount} free parameters, so that a scatter can be estimated: log more trials or fix parameters`,
      n,
    );
  }
  const different = new Set<unknown>(typeof x[0] === "number" ? x : x.map((one) => JSON.stringify(one))).size;
  if (different < freeCount) {
    fail(
      `${where}: x`,
      `must hold at least ${freeCount} different values for the ${freeCount} free parameters of ${model.name}: log trials at ${different === 1 ? "a second" : "another"} x`,
      different,
    );
  }
  if (y.every((value) => value === y[0])) {
    fail(`${where}: y`, `must vary: all ${n} values are equal, so no curve can be told from a flat line`, y[0]);
  }

  const solve = curveSolver(where, model, x, weights, options);
  const startFrom = (guess: Values<Name>): Values<Name> => ({ ...guess, ...options.start });
  const guessed = model.guess(x, y);
  const starts: readonly Values<Name>[] = Array.isArray(guessed) ? guessed : [guessed as Values<Name>];
  let best = solve(y, startFrom(starts[0]));
  for (const start of starts.slice(1)) {
    const next = solve(y, startFrom(start));
    if (next.solved.solution.rss < best.solved.solution.rss) best = next;
  }
  const { solved, settings } = best;
  if (!Number.isFinite(solved.solution.rss)) {
    fail(
      `${where}: ${model.name}`,
      "must give a finite number at its starting values: give other ones in `start`",
      Object.fromEntries(names.map((name, j) => [name, settings[j].start])),
    );
  }

  const residuals = solved.solution.residuals.map((value, i) => -value / Math.sqrt(weights[i]));
  const fit = summariseFit({
    model: model.name,
    names,
    settings,
    solved,
    sdKnown: false,
    rangeX: rangeOf(x),
    sumLogWeights: weights.reduce((sum, weight) => sum + Math.log(weight), 0),
    residuals,
    notices: [],
  });
  return freezeDeep({
    ...fit,
    notices: [...fit.notices, ...outlierNotices(fit, x, y, weights)],
    equation: model.equation,
    x: [...x],
    y: [...y],
    weights: [...weights],
    fitted: y.map((value, i) => value - residuals[i]),
    ranges: rangesOf(x),
    options: { ...options },
  });
}

function checkPoints(where: string, x: readonly unknown[], y: readonly number[], weights: readonly number[]): void {
  if (x.length !== y.length) fail(`${where}: x and y`, "must be equally long", [x.length, y.length]);
  if (weights.length !== y.length) fail(`${where}: weights and y`, "must be equally long", [weights.length, y.length]);
  for (let i = 0; i < y.length; i++) {
    if (!Number.isFinite(y[i])) fail(`${where}: y[${i}]`, "must be a finite number", y[i]);
    const one = x[i];
    if (typeof one !== "object" || one === null) {
      if (!Number.isFinite(one)) fail(`${where}: x[${i}]`, "must be a finite number", one);
    } else {
      for (const [field, value] of Object.entries(one)) {
        if (typeof value !== "string" && !Number.isFinite(value)) {
          fail(`${where}: x[${i}].${field}`, "must be a finite number", value);
        }
      }
    }
    if (!(Number.isFinite(weights[i]) && weights[i] > 0)) {
      fail(`${where}: weights[${i}]`, "must be > 0; to leave a point out, leave it out of x and y", weights[i]);
    }
  }
}

function rangeOf(x: readonly unknown[]): readonly [number, number] | null {
  if (typeof x[0] !== "number") return null;
  const numbers = x as readonly number[];
  return [smallestOf(numbers), largestOf(numbers)];
}

function rangesOf(x: readonly unknown[]): Record<string, readonly [number, number]> {
  const ranges = new Map<string, readonly [number, number]>();
  for (const one of x) {
    if (typeof one !== "object" || one === null) continue;
    for (const [field, value] of Object.entries(one)) {
      if (typeof value !== "number") continue;
      const [low, high] = ranges.get(field) ?? [value, value];
      ranges.set(field, [Math.min(low, value), Math.max(high, value)]);
    }
  }
  return Object.fromEntries(ranges);
}

/** Points whose externally studentised residual passes the Bonferroni-corrected 5 % level (Weisberg 2014, sect. 9.4). */
export function outlierNotices<X>(
  fit: Fit<string>,
  x: readonly X[],
  y: readonly number[],
  weights: readonly number[],
): string[] {
  const df = fit.degreesOfFreedom - 1;
  if (df < 1) return [];
  const total = fit.residuals.reduce((sum, _, i) => sum + weights[i] * y[i] ** 2, 0);
  if (fit.rss < 1e-20 * total) return [];
  const limit = outlierLimit(df, fit.n);
  const notices: string[] = [];
  for (let i = 0; i < fit.n; i++) {
    const room = 1 - fit.leverage[i];
    if (room < 1e-10) continue;
    const square = (fit.residuals[i] ** 2 * weights[i]) / room;
    const left = Math.max(0, fit.rss - square) / df;
    if (square > limit * limit * left) notices.push(outlierSentence(i, x[i], fit.residuals[i]));
  }
  return notices;
}

const outlierLimits = new Map<number, number>();

function outlierLimit(df: number, n: number): number {
  const key = df * 65536 + n;
  let limit = outlierLimits.get(key);
  if (limit === undefined) {
    limit = studentTQuantile(1 - 0.025 / n, df);
    outlierLimits.set(key, limit);
  }
  return limit;
}

function outlierSentence(i: number, x: unknown, residual: number): string {
  const at = typeof x === "number" ? x : JSON.stringify(x);
  return `Point ${i + 1} (x = ${at}) lies ${residual > 0 ? "above" : "below"} the curve by ${Math.abs(residual).toPrecision(3)}, further than the others' scatter explains: check its record. It has not been removed.`;
}
