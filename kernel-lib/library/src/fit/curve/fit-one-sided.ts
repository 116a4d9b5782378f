import { normalCdf, normalDensity } from "../../statistics/distributions/normal-distribution";
import { valuesOf } from "../doubt/delta-method";
import { intervalFactor } from "../doubt/interval-factor";
import type { ParameterEstimate, Values } from "../fit";
import type { FitCurveOptions } from "../least-squares/solve-curve";
import { correctedAic, waldInterval } from "../least-squares/summarise-fit";
import type { CurveModel } from "../models/curve-model";
import { type CurveData, type CurveFit, fitCurveFor, outlierNotices } from "./fit-curve";

/** What is known of a y that was not seen: that it lies above, or below, some value. */
export interface OneSidedPoint {
  readonly x: number;
  readonly limit: number;
  readonly lies: "above" | "below";
  /** as of a point that was seen */
  readonly weight: number;
}

/** The point that stands for a one-sided one at the solution: same slope and curvature of the likelihood. */
export interface StandIn {
  /** [-], 0 when the curve lies so far on the right side that the point tells nothing */
  readonly weight: number;
  /** above the curve */
  readonly residual: number;
}

/** A curve fit that also counts points of which only one side is known. */
export interface OneSidedFit<Name extends string> {
  /** its observations, residuals and degrees of freedom are those of the points that were seen */
  readonly fit: CurveFit<Name>;
  readonly standIns: readonly StandIn[];
}

/**
 * `fitCurve` with points of which only a side is known (Tobin 1958): each adds log Φ((curve − limit)/sd) to the likelihood,
 * or Φ of the negative where it lies below. Newton's method, written as least squares with a stand-in for each such point
 * whose weight and residual give the likelihood's slope and curvature there. The scatter's square is (Σ w r² of the points
 * seen + sd² Σ E[z² | side])/(all points − parameters), which for points seen alone is the usual one.
 */
export function fitOneSided<Name extends string>(
  where: string,
  model: CurveModel<Name>,
  data: CurveData,
  points: readonly OneSidedPoint[],
  options: FitCurveOptions<Name>,
): OneSidedFit<Name> {
  const seen = fitCurveFor(where, model, data, options);
  const smallest = (1e-6 * seen.y.reduce((sum, value) => sum + Math.abs(value), 0)) / seen.n;
  let values: Values<Name> = valuesOf(seen);
  let residualSd = seen.residualSd;
  let whole = seen;
  let standIns: StandIn[] = [];
  let move = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS && move > SETTLED; round++) {
    const before = points.map(({ x }) => model.evaluate(x, values));
    standIns = points.map((point, i) => standInFor(point, before[i], Math.max(residualSd, smallest)));
    const told = points.flatMap((point, i) =>
      standIns[i].weight > 0 ? [{ ...point, ...standIns[i], at: before[i] }] : [],
    );
    whole = fitCurveFor(
      where,
      model,
      {
        x: [...seen.x, ...told.map(({ x }) => x)],
        y: [...seen.y, ...told.map(({ at, residual }) => at + residual)],
        weights: [...seen.weights, ...told.map(({ weight }) => weight)],
      },
      { ...options, start: values },
    );
    values = valuesOf(whole);
    const sd = scatterOf(rssOf(model, seen, values), seen.degreesOfFreedom, residualSd, (scatter) =>
      points.map((point) => placeOf(point, model.evaluate(point.x, values), Math.max(scatter, smallest))),
    );
    move = Math.abs(sd - residualSd) / Math.max(sd, smallest);
    points.forEach(({ x, weight }, i) => {
      const shift = Math.abs(model.evaluate(x, values) - before[i]) * Math.sqrt(weight);
      move = Math.max(move, shift / Math.max(sd, smallest));
    });
    residualSd = sd;
  }
  return { fit: named(model, seen, whole, { values, residualSd, points, settled: move <= SETTLED }), standIns };
}

/** Newton rounds at most; it takes about six. */
const ROUNDS = 100;
/** Moves of the curve below this share of the scatter end the search. */
const SETTLED = 1e-9;

/** How many sd the curve lies on the right side of the limit. */
function placeOf({ limit, lies, weight }: OneSidedPoint, curve: number, residualSd: number): number {
  return ((lies === "above" ? curve - limit : limit - curve) * Math.sqrt(weight)) / residualSd;
}

/** φ(z)/Φ(z), and that plus z, which cancels far below zero: there by its asymptotic series. */
function pullAt(z: number): { pull: number; rest: number } {
  if (z < -25) return { pull: -z - 1 / z, rest: -1 / z };
  const pull = normalDensity(z) / normalCdf(z);
  return { pull, rest: pull + z };
}

function standInFor(point: OneSidedPoint, curve: number, residualSd: number): StandIn {
  const z = placeOf(point, curve, residualSd);
  if (z > 8) return { weight: 0, residual: 0 };
  const { pull, rest } = pullAt(z);
  const sd = residualSd / Math.sqrt(point.weight);
  return { weight: point.weight * pull * rest, residual: (point.lies === "above" ? sd : -sd) / rest };
}

/** The scatter at which it is what its own formula gives, the curve held: E[z² | side] = 1 − z φ(z)/Φ(z). */
function scatterOf(rss: number, df: number, start: number, places: (scatter: number) => readonly number[]): number {
  let scatter = start;
  for (let round = 0; round < 1000; round++) {
    const at = places(scatter);
    const expected = at.reduce((sum, z) => sum + 1 - z * pullAt(z).pull, 0);
    const next = Math.sqrt((rss + scatter * scatter * expected) / (df + at.length));
    const move = Math.abs(next - scatter);
    scatter = next;
    if (move <= 1e-12 * scatter) break;
  }
  return scatter;
}

function rssOf<Name extends string>(model: CurveModel<Name>, seen: CurveFit<Name>, values: Values<Name>): number {
  return seen.x.reduce((sum, x, i) => sum + seen.weights[i] * (seen.y[i] - model.evaluate(x, values)) ** 2, 0);
}

interface Solved<Name extends string> {
  readonly values: Values<Name>;
  readonly residualSd: number;
  readonly points: readonly OneSidedPoint[];
  readonly settled: boolean;
}

/** The whole's estimates and doubt, the scatter and counts of the points that were seen. */
function named<Name extends string>(
  model: CurveModel<Name>,
  seen: CurveFit<Name>,
  whole: CurveFit<Name>,
  { values, residualSd, points, settled }: Solved<Name>,
): CurveFit<Name> {
  const { n, degreesOfFreedom } = seen;
  const share = whole.residualSd > 0 ? (residualSd / whole.residualSd) ** 2 : 0;
  const covariance = whole.covariance.map((row) => row.map((value) => share * value));
  const half = intervalFactor(seen);
  const parameters = {} as Record<Name, ParameterEstimate>;
  whole.names.forEach((name, j) => {
    const own: ParameterEstimate = whole.parameters[name];
    const standardError = own.standardError === null ? null : Math.sqrt(covariance[j][j]);
    const setting = { start: own.estimate, ...model.parameters[name] };
    const interval95 = standardError === null ? null : waldInterval(own.estimate, half * standardError, setting);
    parameters[name] = { ...own, standardError, interval95 };
  });
  const fitted = seen.x.map((x) => model.evaluate(x, values));
  const residuals = seen.y.map((y, i) => y - fitted[i]);
  const rss = rssOf(model, seen, values);
  const sides = points.map((point) =>
    Math.log(Math.max(normalCdf(placeOf(point, model.evaluate(point.x, values), residualSd)), 1e-300)),
  );
  const logLikelihood =
    0.5 * seen.weights.reduce((sum, weight) => sum + Math.log(weight), 0) -
    0.5 * n * (Math.log((2 * Math.PI * rss) / n) + 1) +
    sides.reduce((sum, value) => sum + value, 0);
  const estimated = whole.names.filter((name) => {
    const own: ParameterEstimate = whole.parameters[name];
    return !own.fixed && own.atBound === null;
  });
  const count = estimated.length + 1;
  const ofWhole = new Set(outlierNotices(whole, whole.x, whole.y, whole.weights));
  const fit: CurveFit<Name> = {
    ...whole,
    model: `${model.name}, some points seen from one side`,
    parameters,
    covariance,
    n,
    degreesOfFreedom,
    rangeX: seen.rangeX,
    logLikelihood,
    aicc: correctedAic(logLikelihood, count, n),
    bic: -2 * logLikelihood + count * Math.log(n),
    converged: whole.converged && settled,
    reason: settled ? whole.reason : "stopped: the points seen from one side kept moving the curve",
    notices: [],
    rss,
    residualSd,
    residuals,
    leverage: whole.leverage.slice(0, n),
    x: seen.x,
    y: seen.y,
    weights: seen.weights,
    fitted,
    options: seen.options,
  };
  const outliers = outlierNotices(fit, fit.x, fit.y, fit.weights);
  return { ...fit, notices: [...whole.notices.filter((notice) => !ofWhole.has(notice)), ...outliers] };
}
