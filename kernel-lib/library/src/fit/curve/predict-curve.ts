import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { ownValue } from "../../check/own-value";
import { fitOf, requireUsable, valuesOf, varianceOf } from "../doubt/delta-method";
import { intervalsAround } from "../doubt/intervals-around";
import type { CurveModel } from "../models/curve-model";
import type { CurveFit } from "./fit-curve";

/** The curve at one x, with its doubt. */
export interface Prediction<X = number> {
  readonly x: X;
  readonly value: number;
  /** of the curve itself */
  readonly standardError: number;
  /** 95 % interval for the curve: where the mean of many trials would lie */
  readonly confidence95: readonly [number, number];
  /** 95 % interval for one further trial of weight 1 */
  readonly prediction95: readonly [number, number];
  /** x lies outside the range of the data */
  readonly extrapolated: boolean;
}

/**
 * A fitted curve at x with delta-method intervals: f ± t √(gᵀVg) for the curve, f ± t √(gᵀVg + s²) for one more trial.
 *
 * @param model the model that was fitted
 * @param given what `fitCurve` returned for it
 * @param x where to predict, in the unit of the data
 * @example
 * const dip = curveModel({ name: "dip", evaluate: (x, { a, b }) => a * Math.exp(-b * x), start: { a: 5, b: 0.1 } });
 * const fit = fitCurve(dip, { x: [0, 1, 2, 4], y: [8.1, 4.8, 3.1, 1.0] });
 * predictCurve(dip, fit, 3).value; // → 1.79239
 */
export function predictCurve<Name extends string, X = number>(
  model: CurveModel<Name, X>,
  given: CurveFit<string, X>,
  x: X,
): Prediction<X> {
  const fit = fitOf("predictCurve", model, given);
  requireUsable("predictCurve", fit);
  const value = model.evaluate(x, valuesOf(fit));
  if (!Number.isFinite(value)) fail("predictCurve: x", `must give a finite value of ${model.name}`, x);
  const variance = varianceOf(fit, (parameters) => model.evaluate(x, parameters));
  return freezeDeep({
    x,
    value,
    ...intervalsAround(fit, value, variance),
    extrapolated: isOutside(fit, x),
  });
}

/** The fitted curve at many x: what a figure draws as a line with its band. */
export function predictCurveAt<Name extends string, X = number>(
  model: CurveModel<Name, X>,
  fit: CurveFit<string, X>,
  x: readonly X[],
): readonly Prediction<X>[] {
  return Object.freeze(x.map((one) => predictCurve(model, fit, one)));
}

function isOutside<X>(fit: CurveFit<string, X>, x: X): boolean {
  if (typeof x === "number" && fit.rangeX) return x < fit.rangeX[0] || x > fit.rangeX[1];
  if (typeof x !== "object" || x === null) return false;
  return Object.entries(x).some(([field, value]) => {
    const range = ownValue(fit.ranges, field);
    return typeof value === "number" && range !== undefined && (value < range[0] || value > range[1]);
  });
}
