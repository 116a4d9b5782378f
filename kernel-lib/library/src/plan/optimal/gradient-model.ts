import { fail, finite } from "../../check/check";
import type { Estimates, Values } from "../../fit/fit";
import type { CurveModel } from "../../fit/models/curve-model";
import type { DesignModel } from "./design-model";

/** A curve, and where on it the plan is made. */
export interface GradientModelOptions<Name extends string, X = number> {
  readonly model: CurveModel<Name, X>;
  /** values by parameter name, or a fit; a parameter that a fit holds, or that rests at its bound, counts as known */
  readonly at: Values<Name> | Estimates<Name>;
}

/**
 * A curve as `optimalDesign` takes it: its regressors at x are the derivatives of the curve by its parameters, at the values given
 * (Box & Lucas 1959). The plan is best where the values are true, and good near them: plan again when a fit has moved them.
 *
 * @param options a curve for `fitCurve`, and values or a fit of it
 * @returns parameters as terms, and the row of derivatives at an x; by central differences where the curve has none of its own
 * @example
 * const model = gradientModel({ model: curves.firstOrderDecay, at: { start: 10, rate: 0.2 } });
 * const candidates = Array.from({ length: 21 }, (_, at) => at);
 * optimalDesign({ candidates, model, runs: 4 }).points; // → [0, 0, 5, 5]
 *
 * Reference: Box & Lucas (1959), Biometrika 46, 77.
 */
export function gradientModel<Name extends string, X = number>(options: GradientModelOptions<Name, X>): DesignModel<X> {
  const where = "gradientModel";
  const { model, at } = options;
  const names = Object.keys(model.parameters) as Name[];
  const fit = isFit(at) ? at : null;
  if (fit !== null && !fit.converged) fail(`${where}: at`, "must be a fit that converged, or values", fit.reason);
  const values = {} as Record<Name, number>;
  for (const name of names) {
    const value = fit === null ? (at as Values<Name>)[name] : fit.parameters[name]?.estimate;
    values[name] = finite(value, `${where}: at.${name}`, "");
  }
  const open = names.filter((name) => fit === null || !(fit.parameters[name].fixed || fit.parameters[name].atBound));
  if (open.length === 0) fail(`${where}: at`, "must leave at least one parameter to be told", names);
  const { gradient } = model;
  return Object.freeze({
    terms: Object.freeze([...open]),
    row: (x: X): readonly number[] => {
      if (gradient === undefined) return open.map((name) => slopeBy(model, x, values, name));
      const slopes = gradient(x, values);
      return open.map((name) => slopes[names.indexOf(name)]);
    },
  });
}

function isFit<Name extends string>(at: Values<Name> | Estimates<Name>): at is Estimates<Name> {
  return (at as { readonly kind?: unknown }).kind === "fit";
}

function slopeBy<Name extends string, X>(model: CurveModel<Name, X>, x: X, values: Values<Name>, name: Name): number {
  const centre = values[name];
  const step = 6e-6 * (Math.abs(centre) || 1);
  const above = model.evaluate(x, { ...values, [name]: centre + step });
  const below = model.evaluate(x, { ...values, [name]: centre - step });
  return (above - below) / (2 * step);
}
