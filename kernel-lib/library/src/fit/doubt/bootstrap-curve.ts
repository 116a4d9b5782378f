import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { seededRandom } from "../../statistics/random/seeded-random";
import type { CurveFit } from "../curve/fit-curve";
import { curveSolver, solvedValues } from "../least-squares/solve-curve";
import type { CurveModel } from "../models/curve-model";
import { fitOf, requireUsable, valuesOf } from "./delta-method";
import { quantileOf } from "./quantile-of";

/** How to bootstrap. */
export interface BootstrapOptions<X = number> {
  /** the same seed gives the same result on every machine; a whole number */
  readonly seed: number;
  /** refits; 1000 unless given */
  readonly resamples?: number;
  /** x at which to give the curve's interval; none unless given */
  readonly at?: readonly X[];
}

/** What the refits say of one parameter. */
export interface BootstrapParameter {
  readonly mean: number;
  /** mean of the refits minus the estimate */
  readonly bias: number;
  readonly standardError: number;
  /** 2.5 and 97.5 % of the refits */
  readonly interval95: readonly [number, number];
}

/** A residual bootstrap. */
export interface Bootstrap<Name extends string = string, X = number> {
  readonly resamples: number;
  /** refits that did not converge, left out of the rest */
  readonly failed: number;
  readonly parameters: { readonly [K in Name]: BootstrapParameter };
  readonly curve: readonly { readonly x: X; readonly interval95: readonly [number, number] }[];
  /** one row a refit, in the order of the fit's names */
  readonly draws: readonly (readonly number[])[];
}

/**
 * Residual bootstrap of a curve fit: residuals, freed of leverage (eᵢ/√(1 − hᵢ), centred), are dealt out anew and the
 * curve refitted (Davison & Hinkley 1997, algorithm 6.1).
 *
 * @param model the model that was fitted
 * @param given what `fitCurve` returned for it
 * @example
 * const fit = fitCurve(curves.hyperbola, { x: [0.1, 0.2, 0.5, 1, 2], y: [49, 71, 112, 131, 148] });
 * bootstrapCurve(curves.hyperbola, fit, { seed: 1 }).parameters.top.standardError; // → 3
 */
export function bootstrapCurve<Name extends string, X = number>(
  model: CurveModel<Name, X>,
  given: CurveFit<string, X>,
  options: BootstrapOptions<X>,
): Bootstrap<Name, X> {
  const where = "bootstrapCurve";
  const fit = fitOf(where, model, given);
  const { resamples = 1000, at = [] } = options;
  if (!(Number.isInteger(resamples) && resamples >= 100))
    fail(`${where}: resamples`, "must be a whole number >= 100", resamples);
  requireUsable(where, fit);
  const random = seededRandom(options.seed);
  const n = fit.n;
  const freed = fit.residuals.map(
    (residual, i) => (residual * Math.sqrt(fit.weights[i])) / Math.sqrt(Math.max(1e-10, 1 - fit.leverage[i])),
  );
  const mean = freed.reduce((sum, value) => sum + value, 0) / n;
  const pool = freed.map((value) => value - mean);
  const solve = curveSolver(where, model, fit.x, fit.weights, fit.options);
  const start = valuesOf(fit);
  const roots = fit.weights.map(Math.sqrt);
  const y = new Float64Array(n);
  const draws: number[][] = [];
  const lines: number[][] = at.map(() => []);
  for (let round = 0; round < resamples; round++) {
    for (let i = 0; i < n; i++) y[i] = fit.fitted[i] + pool[random.integer(n)] / roots[i];
    const end = solve(y, start);
    if (!end.solved.solution.converged) continue;
    draws.push([...end.solved.values]);
    if (at.length > 0) {
      const values = solvedValues(fit.names, end);
      at.forEach((x, k) => {
        lines[k].push(model.evaluate(x, values));
      });
    }
  }
  if (draws.length < 0.5 * resamples)
    fail(`${where}: fit`, "must let at least half of the refits converge", draws.length);
  const parameters = {} as Record<Name, BootstrapParameter>;
  fit.names.forEach((name, j) => {
    const values = draws.map((draw) => draw[j]).sort((one, other) => one - other);
    const centre = values.reduce((sum, value) => sum + value, 0) / values.length;
    const square = values.reduce((sum, value) => sum + (value - centre) ** 2, 0);
    parameters[name] = {
      mean: centre,
      bias: centre - start[name],
      standardError: Math.sqrt(square / (values.length - 1)),
      interval95: [quantileOf(values, 0.025), quantileOf(values, 0.975)],
    };
  });
  return freezeDeep({
    resamples,
    failed: resamples - draws.length,
    parameters,
    curve: at.map((x, k) => {
      const values = lines[k].sort((one, other) => one - other);
      return { x, interval95: [quantileOf(values, 0.025), quantileOf(values, 0.975)] as const };
    }),
    draws,
  });
}
