import { fail, within } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { fCdf, fQuantile } from "../../statistics/distributions/f-distribution";
import { choleskyOrNull, solveLower } from "../../statistics/linear-algebra/cholesky";
import { canonicalAnalysis } from "./canonical-analysis";
import { type SurfaceFit, termsOf } from "./fit-surface";
import { checkPoint } from "./surface-at";

/** Where the true stationary point may lie. */
export interface StationaryRegion {
  readonly confidence: number;
  /** what the statistic must not exceed inside the region */
  readonly limit: number;
  /** share of the searched points that lie in the region [-] */
  readonly share: number;
  /** least and greatest of each factor among them; null where none of them does */
  readonly bounds: readonly (readonly [number, number])[] | null;
  /** the region reaches the edge of what was searched: it may go on beyond */
  readonly reachesEdge: boolean;
  /** searched points and their statistic, the first factor fastest */
  readonly levels: readonly (readonly number[])[];
  /** one value a combination of levels, in that order */
  readonly statistics: readonly number[];
  readonly reading: string;
}

/** What `stationaryRegion` works from. */
export interface StationaryRegionOptions {
  readonly fit: SurfaceFit;
  /** 0.95 unless given */
  readonly confidence?: number;
  /** how far to search along every factor, coded units; 1.5 times the trials' range about its middle unless given */
  readonly search?: readonly (readonly [number, number])[];
  /** levels searched along each factor; 41 for two factors, 21 for three, 11 for more unless given */
  readonly levels?: number;
}

const MOST_SEARCHED = 200_000;

/**
 * Confidence region of the stationary point of a quadratic surface (Box & Hunter 1954, from memory): all x at which the slopes
 * d(x) = b + 2Bx may be zero, d'[Var d]⁻¹d ≤ k F(confidence; k, ν). The slopes are linear in the coefficients, so that its coverage is
 * exact under normal errors, whatever the shape; it may be open where the surface hardly bends along some axis.
 *
 * @returns the region on a grid of points, how much of it there is, whether it reaches the edge
 * @example
 * const points = [[-1, -1], [1, -1], [-1, 1], [1, 1], [-1, 0], [1, 0], [0, -1], [0, 1], [0, 0], [0, 0]];
 * const y = points.map(([a, b], at) => 5 + a - a * a - 2 * b * b + 0.02 * (at % 3));
 * stationaryRegion({ fit: fitSurface({ factors: ["air", "time"], points, y }) }).reachesEdge; // → false
 */
export function stationaryRegion(options: StationaryRegionOptions): StationaryRegion {
  const where = "stationaryRegion";
  const { fit, confidence = 0.95 } = options;
  within(confidence, 0.01, 0.9999, `${where}: confidence`, "");
  const size = fit.factors.length;
  const steps = options.levels ?? (size <= 2 ? 41 : size === 3 ? 21 : 11);
  if (!(Number.isInteger(steps) && steps >= 2 && steps ** size <= MOST_SEARCHED))
    fail(`${where}: levels`, `must be a whole number >= 2, and make at most ${MOST_SEARCHED} points in all`, steps);
  const { stationary } = canonicalAnalysis(fit);
  const search =
    options.search ??
    fit.factors.map((name) => {
      const [low, high] = fit.ranges[name];
      return [(low + high) / 2 - 0.75 * (high - low), (low + high) / 2 + 0.75 * (high - low)] as const;
    });
  if (search.length !== size || search.some(([low, high]) => !(low < high)))
    fail(`${where}: search`, `must hold a low and a higher number for each of ${fit.factors.join(", ")}`, search);
  const levels = search.map(([low, high]) =>
    Array.from({ length: steps }, (_, at) => low + ((high - low) * at) / (steps - 1)),
  );
  const limit = size * fQuantile(confidence, size, fit.degreesOfFreedom);
  const statistics: number[] = [];
  const ends = levels.map(() => [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]);
  let inRegion = 0;
  let reachesEdge = false;
  const count = steps ** size;
  for (let cell = 0; cell < count; cell++) {
    const places = levels.map((_, at) => Math.floor(cell / steps ** at) % steps);
    const point = places.map((place, at) => levels[at][place]);
    const statistic = slopeStatistic(fit, point);
    statistics.push(statistic);
    if (statistic > limit) continue;
    inRegion++;
    reachesEdge ||= places.some((place) => place === 0 || place === steps - 1);
    point.forEach((value, at) => {
      ends[at] = [Math.min(ends[at][0], value), Math.max(ends[at][1], value)];
    });
  }
  reachesEdge ||= stationary.some((value, at) => value < search[at][0] || value > search[at][1]);
  const bounds = inRegion === 0 ? null : ends.map(([low, high]) => [low, high] as const);
  return freezeDeep({
    confidence,
    limit,
    share: inRegion / count,
    bounds,
    reachesEdge,
    levels,
    statistics,
    reading: reachesEdge
      ? "The stationary point is badly known: its region goes on beyond what was searched."
      : bounds === null
        ? "The stationary point is known more closely than the grid that was searched."
        : `The stationary point lies ${fit.factors.map((name, at) => `at ${name} ${bounds[at][0].toFixed(2)} to ${bounds[at][1].toFixed(2)}`).join(", ")} (coded), with ${Math.round(100 * confidence)} % confidence.`,
  });
}

/**
 * How strongly the trials speak against a point being the stationary one.
 *
 * @returns the statistic d'[Var d]⁻¹d, k F-distributed at the true point, and the chance of one as large there
 */
export function againstStationary(
  fit: SurfaceFit,
  point: readonly number[],
): { readonly statistic: number; readonly pValue: number } {
  checkPoint("againstStationary", fit, point);
  const size = fit.factors.length;
  const statistic = slopeStatistic(fit, point);
  return Object.freeze({ statistic, pValue: 1 - fCdf(statistic / size, size, fit.degreesOfFreedom) });
}

/** d'[Var d]⁻¹d of the slopes d at a point. */
function slopeStatistic(fit: SurfaceFit, point: readonly number[]): number {
  const size = fit.factors.length;
  const rows = slopeRows(fit, point);
  const slopes = Float64Array.from(rows, (row) =>
    row.reduce((sum, value, at) => sum + value * fit.parameters[fit.names[at]].estimate, 0),
  );
  const variance = new Float64Array(size * size);
  for (let i = 0; i < size; i++)
    for (let j = 0; j < size; j++)
      for (let p = 0; p < rows[i].length; p++) {
        if (rows[i][p] === 0) continue;
        for (let q = 0; q < rows[j].length; q++)
          variance[i * size + j] += rows[i][p] * rows[j][q] * fit.covariance[p][q];
      }
  const lower = choleskyOrNull(variance, size);
  if (lower === null) return Number.POSITIVE_INFINITY;
  return solveLower(lower, size, slopes).reduce((sum, value) => sum + value * value, 0);
}

/** For each factor the entries that the coefficients are multiplied by in ∂y/∂x. */
function slopeRows(fit: SurfaceFit, point: readonly number[]): readonly (readonly number[])[] {
  const powers = new Map(termsOf(fit.factors, fit.form).map(({ name, powers: of }) => [name, of]));
  return fit.factors.map((_, factor) =>
    fit.names.map((name) => {
      const of = powers.get(name) ?? [];
      if (!of.includes(factor)) return 0;
      if (of.length === 1) return 1;
      const [one, other] = of;
      return one === other ? 2 * point[factor] : point[one === factor ? other : one];
    }),
  );
}
