import { freezeDeep } from "../../check/freeze-deep";
import type { CurveFit } from "../curve/fit-curve";
import type { Values } from "../fit";
import { curveSolver, solvedValues } from "../least-squares/solve-curve";
import type { CurveModel } from "../models/curve-model";
import { fitOf, requireUsable, valuesOf } from "./delta-method";

/** What one point does to the fit, found by fitting without it. */
export interface PointInfluence<Name extends string = string, X = number> {
  /** position in the data, from 0 */
  readonly index: number;
  readonly x: X;
  readonly residual: number;
  /** share of itself that the point puts into its own fitted value [-] */
  readonly leverage: number;
  /** residual over its standard error, the scatter estimated without the point [-] */
  readonly studentised: number;
  /** Cook's distance [-]: how far all fitted values move without the point, in squared standard errors */
  readonly cooksDistance: number;
  /** the point minus the curve fitted without it */
  readonly leftOutError: number;
  /** estimate with the point minus estimate without it, over the standard error [-] */
  readonly change: Values<Name>;
}

/** Leave-one-out influence of every point. */
export interface Influence<Name extends string = string, X = number> {
  readonly points: readonly PointInfluence<Name, X>[];
  /** root mean square of the left-out errors, in the unit of y */
  readonly leaveOneOutError: number;
  /** one sentence */
  readonly reading: string;
}

/**
 * Fits the curve again without each point in turn: Cook's distance (1977), left-out errors and the change of every
 * parameter. Nothing is removed from the fit.
 *
 * @param model the model that was fitted
 * @param given what `fitCurve` returned for it
 * @example
 * const fit = fitCurve(curves.line, { x: [1, 2, 3, 4, 5, 12], y: [1.1, 1.9, 3.2, 3.9, 5.1, 9] });
 * influence(curves.line, fit).points[5].leverage; // → 0.892473
 */
export function influence<Name extends string, X = number>(
  model: CurveModel<Name, X>,
  given: CurveFit<string, X>,
): Influence<Name, X> {
  const fit = fitOf("influence", model, given);
  requireUsable("influence", fit);
  const all = valuesOf(fit);
  const p = fit.n - fit.degreesOfFreedom;
  const points = fit.y.map((observed, index): PointInfluence<Name, X> => {
    const without = <T>(values: readonly T[]): T[] => values.filter((_, i) => i !== index);
    const solve = curveSolver("influence", model, without(fit.x), without(fit.weights), fit.options);
    const end = solve(without(fit.y), all);
    const values = solvedValues(fit.names, end);
    const root = Math.sqrt(fit.weights[index]);
    const room = Math.max(1e-12, 1 - fit.leverage[index]);
    const scaled = fit.residuals[index] * root;
    const df = fit.degreesOfFreedom - 1;
    const left = df > 0 ? Math.max(0, fit.rss - (scaled * scaled) / room) / df : Number.NaN;
    const moved = fit.x.reduce(
      (sum, x, i) => sum + fit.weights[i] * (fit.fitted[i] - model.evaluate(x, values)) ** 2,
      0,
    );
    const change = {} as Record<Name, number>;
    for (const name of fit.names) {
      const se = fit.parameters[name].standardError;
      change[name] = se ? (all[name] - values[name]) / se : 0;
    }
    return {
      index,
      x: fit.x[index],
      residual: fit.residuals[index],
      leverage: fit.leverage[index],
      studentised: scaled / Math.sqrt(left * room),
      cooksDistance: moved / (p * fit.residualSd ** 2),
      leftOutError: observed - model.evaluate(fit.x[index], values),
      change,
    };
  });
  const leaveOneOutError = Math.sqrt(points.reduce((sum, point) => sum + point.leftOutError ** 2, 0) / fit.n);
  const most = points.reduce((best, point) => (point.cooksDistance > best.cooksDistance ? point : best));
  const name = fit.names.reduce((best, one) => (Math.abs(most.change[one]) > Math.abs(most.change[best]) ? one : best));
  const at = typeof most.x === "number" ? `${most.x}` : JSON.stringify(most.x);
  const reading =
    most.cooksDistance > 1
      ? `Point ${most.index + 1} (x = ${at}) decides much of the fit: Cook's distance ${most.cooksDistance.toPrecision(2)}, and without it ${name} moves by ${Math.abs(most.change[name]).toPrecision(2)} standard errors. Repeat that trial.`
      : `No point decides the fit: the largest Cook's distance is ${most.cooksDistance.toPrecision(2)} (point ${most.index + 1}, x = ${at}).`;
  return freezeDeep({ points, leaveOneOutError, reading });
}
