import { fail, within } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { largestOf } from "../../statistics/extremes";
import type { CurveFit } from "../curve/fit-curve";
import type { Values } from "../fit";
import { curveSolver, solvedValues } from "../least-squares/solve-curve";
import type { CurveModel } from "../models/curve-model";
import { fitOf, requireUsable, valuesOf } from "./delta-method";
import { intervalFactor } from "./interval-factor";

/** A profile-likelihood interval. */
export interface ProfileInterval {
  readonly parameter: string;
  readonly estimate: number;
  /** ±Infinity, or the parameter's bound, at an end that the data leave open */
  readonly interval: readonly [number, number];
  readonly confidence: number;
  /** the data set a limit below and above */
  readonly closed: readonly [boolean, boolean];
  /** one sentence */
  readonly reading: string;
}

/**
 * Profile-likelihood interval of one parameter: the values at which the residual sum of squares, all others refitted,
 * rises by s² F(confidence; 1, n − p) (Bates & Watts 1988, sect. 6.1). Truer than ± t·se where a curve bends in its
 * parameters, and it works for a parameter that rests at a bound.
 *
 * @param model the model that was fitted
 * @param given what `fitCurve` returned for it
 * @param parameter whose interval
 * @param confidence 0.95 unless given
 * @example
 * const fit = fitCurve(curves.hyperbola, { x: [0.1, 0.2, 0.5, 1, 2], y: [49, 71, 112, 131, 148] });
 * profileInterval(curves.hyperbola, fit, "top").interval[1]; // → 175.191
 */
export function profileInterval<Name extends string, X = number>(
  model: CurveModel<Name, X>,
  given: CurveFit<string, X>,
  parameter: Name,
  confidence = 0.95,
): ProfileInterval {
  const where = "profileInterval";
  const fit = fitOf(where, model, given);
  within(confidence, 0.5, 0.9999, `${where}: confidence`, "");
  const own = fit.parameters[parameter];
  if (own === undefined) fail(`${where}: parameter`, `must be one of ${fit.names.join(", ")}`, parameter);
  if (own.fixed) fail(`${where}: parameter`, "must not be one that was fixed", parameter);
  requireUsable(where, fit);
  if (!(fit.residualSd > 0)) fail(`${where}: fit`, "must leave some scatter", fit.residualSd);
  const limit = intervalFactor(fit, confidence);
  const range = model.parameters[parameter];
  const lower: number =
    (fit.options.lower?.[parameter] as number | undefined) ?? range.lower ?? Number.NEGATIVE_INFINITY;
  const upper: number =
    (fit.options.upper?.[parameter] as number | undefined) ?? range.upper ?? Number.POSITIVE_INFINITY;
  const spread = own.standardError ?? Math.max(1e-3 * Math.abs(own.estimate), smallestScale(fit));

  /** (signed) distance in standard errors at which `value` lies, others refitted from the last values */
  const distanceFrom = (direction: 1 | -1): ((value: number) => number) => {
    let last: Values<Name> = valuesOf(fit);
    return (value) => {
      const solve = curveSolver(where, model, fit.x, fit.weights, {
        ...fit.options,
        fixed: { ...fit.options.fixed, [parameter]: value } as { readonly [K in Name]?: number },
      });
      const end = solve(fit.y, { ...last, [parameter]: value });
      if (Number.isFinite(end.solved.solution.rss)) last = solvedValues(fit.names, end);
      return (direction * Math.sqrt(Math.max(0, end.solved.solution.rss - fit.rss))) / fit.residualSd;
    };
  };

  const end = (direction: 1 | -1): { value: number; closed: boolean } => {
    const stop = direction < 0 ? lower : upper;
    if (direction * (own.estimate - stop) >= 0) return { value: stop, closed: false };
    const distance = distanceFrom(direction);
    let inside = own.estimate;
    let outside = own.estimate;
    let insideAt = 0;
    let outsideAt = 0;
    let step = limit * spread;
    for (let tries = 0; ; tries++) {
      outside = direction * (inside + direction * step - stop) >= 0 ? stop : inside + direction * step;
      outsideAt = Math.abs(distance(outside));
      if (outsideAt >= limit) break;
      if (outside === stop) return { value: stop, closed: false };
      if (tries === 40)
        return { value: direction < 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY, closed: false };
      inside = outside;
      insideAt = outsideAt;
      step *= 1.6;
    }
    for (
      let round = 0;
      round < 100 && Math.abs(outside - inside) > 1e-10 * Math.max(Math.abs(outside), spread);
      round++
    ) {
      const straight = inside + ((limit - insideAt) / (outsideAt - insideAt)) * (outside - inside);
      const middle = (inside + outside) / 2;
      let next = round % 3 === 2 || !Number.isFinite(straight) ? middle : straight;
      const margin = 1e-11 * Math.abs(outside - inside);
      if (Math.abs(next - inside) < margin || Math.abs(next - outside) < margin) next = middle;
      const at = Math.abs(distance(next));
      if (Math.abs(at - limit) < 1e-11 * limit) return { value: next, closed: true };
      if (at < limit) {
        inside = next;
        insideAt = at;
      } else {
        outside = next;
        outsideAt = at;
      }
    }
    return { value: (inside + outside) / 2, closed: true };
  };
  const below = end(-1);
  const above = end(1);
  const open = [below.closed ? "" : "below", above.closed ? "" : "above"].filter(Boolean).join(" and ");
  const percent = Math.round(1000 * confidence) / 10;
  return freezeDeep({
    parameter,
    estimate: own.estimate,
    interval: [below.value, above.value],
    confidence,
    closed: [below.closed, above.closed],
    reading: `${parameter} lies between ${below.value.toPrecision(4)} and ${above.value.toPrecision(4)} (${percent} % profile interval)${open ? `; the data set no limit ${open}` : ""}.`,
  });
}

function smallestScale<X>(fit: CurveFit<string, X>): number {
  const most = largestOf(fit.y.map(Math.abs));
  const reach = fit.rangeX ? largestOf(fit.rangeX.map(Math.abs)) : 1;
  return (1e-3 * most) / Math.max(1, reach);
}
