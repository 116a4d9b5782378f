import { fail } from "../../check/check";
import type { CurveFit } from "../curve/fit-curve";
import type { Estimates, Values } from "../fit";
import type { CurveModel } from "../models/curve-model";
import { intervalFactor } from "./interval-factor";

/** A quantity worked out from a fit, with its doubt. */
export interface Derived {
  readonly value: number;
  readonly standardError: number;
  readonly confidence95: readonly [number, number];
}

/**
 * A quantity worked out from fitted parameters, with its standard error by the delta method: √(gᵀVg), g the gradient
 * of the quantity by central differences, V the covariance. Parameters that were fixed or rest at a bound count as known.
 *
 * @example
 * const x = [1, 2, 3, 4];
 * const y = [2.1, 3.9, 6.2, 7.8];
 * const line = leastSquares({ parameters: { a: 0, b: 1 }, residuals: ({ a, b }) => x.map((xi, i) => y[i] - a - b * xi) });
 * deltaMethod(line, ({ a, b }) => (10 - a) / b).value; // → 5.0773
 */
export function deltaMethod<Name extends string>(
  fit: Estimates<Name>,
  quantity: (parameters: Values<Name>) => number,
): Derived {
  requireUsable("deltaMethod", fit);
  const value = quantity(valuesOf(fit));
  if (!Number.isFinite(value)) fail("deltaMethod: quantity", "must be finite at the estimates", value);
  const variance = varianceOf(fit, quantity);
  const standardError = Math.sqrt(variance);
  const half = intervalFactor(fit) * standardError;
  return Object.freeze({ value, standardError, confidence95: Object.freeze([value - half, value + half] as const) });
}

/** The estimates alone, by name. */
export function valuesOf<Name extends string>(fit: Pick<Estimates<Name>, "names" | "parameters">): Values<Name> {
  const values = {} as Record<Name, number>;
  for (const name of fit.names) values[name] = fit.parameters[name].estimate;
  return values;
}

/** gᵀVg for a function of the parameters. */
export function varianceOf<Name extends string>(
  fit: Pick<Estimates<Name>, "names" | "parameters" | "covariance">,
  quantity: (parameters: Values<Name>) => number,
): number {
  const values: Record<Name, number> = { ...valuesOf(fit) };
  const gradient = fit.names.map((name, j) => {
    const spread = Math.sqrt(fit.covariance[j][j]);
    if (spread === 0) return 0;
    const centre = values[name];
    const step = Math.min(6e-6 * (Math.abs(centre) || spread), 0.01 * spread);
    values[name] = centre + step;
    const up = values[name];
    const above = quantity(values);
    values[name] = centre - step;
    const slope = (above - quantity(values)) / (up - values[name]);
    values[name] = centre;
    return slope;
  });
  let variance = 0;
  for (let i = 0; i < gradient.length; i++) {
    for (let j = 0; j < gradient.length; j++) variance += gradient[i] * gradient[j] * fit.covariance[i][j];
  }
  return Math.max(0, variance);
}

/** Throws when a fit must not be used for prediction: it did not converge, or the data leave a parameter undetermined. */
export function requireUsable(where: string, fit: Estimates): void {
  if (!fit.converged) fail(`${where}: fit`, "must have converged before anything is predicted from it", fit.reason);
  for (const name of fit.names) {
    const { standardError, fixed, atBound } = fit.parameters[name];
    if (standardError === null && !fixed && atBound === null) {
      fail(
        `${where}: fit`,
        `must determine every parameter, but its data leave ${name} undetermined: fix it or log more`,
        name,
      );
    }
  }
}

/** Returns the fit under the model's parameter names; throws when it is a fit of another model. */
export function fitOf<Name extends string, X>(
  where: string,
  model: CurveModel<Name, X>,
  fit: CurveFit<string, X>,
): CurveFit<Name, X> {
  if (fit.model !== model.name) fail(`${where}: fit`, `must be a fit of ${model.name}`, fit.model);
  return fit as unknown as CurveFit<Name, X>;
}
