import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { largestOf } from "../../statistics/extremes";
import { valuesOf } from "../doubt/delta-method";
import { intervalFactor } from "../doubt/interval-factor";
import { quantileOf } from "../doubt/quantile-of";
import type { ParameterEstimate } from "../fit";
import { curveSolver, type FitCurveOptions, solvedValues } from "../least-squares/solve-curve";
import { summariseFit, waldInterval } from "../least-squares/summarise-fit";
import type { CurveModel } from "../models/curve-model";
import { type CurveData, type CurveFit, fitCurveFor } from "./fit-curve";

/** How strongly far points are turned down. */
export type RobustLoss = "huber" | "bisquare";

/** A robust fit beside the plain one; its `residualSd` comes from the median absolute residual, its `rss` and criteria from the plain fit. */
export interface RobustCurveFit<Name extends string = string, X = number> extends CurveFit<Name, X> {
  readonly loss: RobustLoss;
  /** how much each point was let count [-], 0 to 1 */
  readonly robustWeights: readonly number[];
  /** the plain least-squares fit of the same points */
  readonly plain: CurveFit<Name, X>;
}

/** Tuning constants for 95 % efficiency at the normal: Huber (1964), Beaton & Tukey (1974). */
const TUNING: Readonly<Record<RobustLoss, number>> = { huber: 1.345, bisquare: 4.685 };

/**
 * Refits a curve so that far points pull less (M-estimation by reweighting, scale from the median absolute residual), and
 * says which points were turned down. Standard errors after Huber (1981, sect. 7.6). No point is deleted; criteria
 * such as AICc stay those of the plain fit.
 *
 * @param options.loss "huber" unless given; "bisquare" ignores very far points
 * @example
 * const data = { x: [1, 2, 3, 4, 5, 6, 7, 8], y: [2.1, 3.9, 6.1, 8.2, 9.8, 12.1, 25, 16.1] };
 * fitRobustCurve(curves.line, data, { loss: "bisquare" }).parameters.b.estimate; // → 2.00554
 */
export function fitRobustCurve<Name extends string, X = number>(
  model: CurveModel<Name, X>,
  data: CurveData<X>,
  options: FitCurveOptions<Name> & { readonly loss?: RobustLoss } = {},
): RobustCurveFit<Name, X> {
  const where = "fitRobustCurve";
  const { loss = "huber", ...rest } = options;
  if (!Object.hasOwn(TUNING, loss)) fail(`${where}: loss`, 'must be "huber" or "bisquare"', loss);
  const plain = fitCurveFor(where, model, data, rest);
  const { x, y, weights, names, n } = plain;
  const residualsOf = (values: { readonly [K in Name]: number }): number[] =>
    y.map((observed, i) => (observed - model.evaluate(x[i], values)) * Math.sqrt(weights[i]));

  let values = valuesOf(plain);
  let own = weights.map(() => 1);
  let sd = 0;
  const settle = (kind: RobustLoss): boolean => {
    for (let round = 0; round < 500; round++) {
      const residuals = residualsOf(values);
      sd = medianAbsolute(residuals) / 0.6745;
      if (!(sd > 0)) return false;
      own = residuals.map((residual) => weightOf(kind, residual / sd));
      const solve = curveSolver(
        where,
        model,
        x,
        weights.map((weight, i) => weight * Math.max(1e-14, own[i])),
        rest,
      );
      const end = solve(y, values);
      const next = solvedValues(names, end);
      const moved = largestOf(names.map((name) => Math.abs(next[name] - values[name]) / (Math.abs(next[name]) || 1)));
      values = next;
      if (moved < 1e-10) return true;
    }
    return false;
  };
  let settled = settle("huber");
  if (loss === "bisquare" && sd > 0) settled = settle("bisquare");
  if (!(sd > 0))
    fail(`${where}: y`, "must scatter: more than half of the residuals are zero, so no scale can be told", 0);

  const there = curveSolver(where, model, x, weights, rest, 0)(y, values);
  const residuals = residualsOf(values);
  const fit = summariseFit({
    model: model.name,
    names,
    settings: there.settings,
    solved: there.solved,
    sdKnown: false,
    rangeX: plain.rangeX,
    sumLogWeights: 0,
    residuals: residuals.map((residual, i) => residual / Math.sqrt(weights[i])),
    notices: [],
  });
  const p = n - fit.degreesOfFreedom;
  const slopes = residuals.map((residual) => slopeOf(loss, residual / sd));
  const meanSlope = slopes.reduce((sum, slope) => sum + slope, 0) / n;
  const varianceSlope = slopes.reduce((sum, slope) => sum + (slope - meanSlope) ** 2, 0) / (n - 1);
  const pulled = residuals.reduce((sum, residual, i) => sum + (residual * own[i]) ** 2, 0);
  const correction = 1 + (p * varianceSlope) / (n * meanSlope ** 2);
  const robust = (Math.sqrt(pulled / fit.degreesOfFreedom) * correction) / meanSlope;
  const ratio = robust / fit.residualSd;
  const factor = intervalFactor(fit);
  const parameters = {} as Record<Name, ParameterEstimate>;
  names.forEach((name, j) => {
    const one = fit.parameters[name];
    const standardError = one.standardError === null ? null : one.standardError * ratio;
    parameters[name] = {
      ...one,
      standardError,
      interval95: standardError === null ? null : waldInterval(one.estimate, factor * standardError, there.settings[j]),
    };
  });
  const notices = fit.notices.filter((notice) => !notice.includes("did not converge"));
  if (!settled) notices.push("The reweighting did not settle in 500 rounds: do not use its numbers.");
  own.forEach((weight, i) => {
    if (weight < 0.5) {
      const at = typeof x[i] === "number" ? x[i] : JSON.stringify(x[i]);
      notices.push(
        `Point ${i + 1} (x = ${at}) was let count only ${weight.toFixed(2)} of a point: check its record. It has not been removed.`,
      );
    }
  });
  return freezeDeep({
    ...plain,
    parameters,
    covariance: fit.covariance.map((row) => row.map((value) => value * ratio * ratio)),
    correlation: fit.correlation,
    converged: settled,
    reason: settled
      ? "converged: reweighting no longer changes the estimates"
      : "stopped after 500 rounds of reweighting",
    notices,
    residuals: fit.residuals,
    fitted: y.map((observed, i) => observed - fit.residuals[i]),
    loss,
    residualSd: sd,
    robustWeights: own,
    plain,
  });
}

function medianAbsolute(residuals: readonly number[]): number {
  return quantileOf(
    [...residuals].map(Math.abs).sort((one, other) => one - other),
    0.5,
  );
}

function weightOf(loss: RobustLoss, u: number): number {
  const k = TUNING[loss];
  if (loss === "huber") return Math.min(1, k / Math.abs(u));
  return Math.abs(u) < k ? (1 - (u / k) ** 2) ** 2 : 0;
}

/** Derivative of weight times residual. */
function slopeOf(loss: RobustLoss, u: number): number {
  const k = TUNING[loss];
  if (loss === "huber") return Math.abs(u) <= k ? 1 : 0;
  const square = (u / k) ** 2;
  return square < 1 ? (1 - square) * (1 - 5 * square) : 0;
}
