import { fail } from "../../check/check";
import { solveLower } from "../../statistics/linear-algebra/cholesky";
import { type SeededRandom, seededRandom } from "../../statistics/random/seeded-random";
import type { CodedPoint } from "../factor/factor";
import { type DesignModel, dependentTerm, factorOf, momentsOf, rowsOf } from "./design-model";
import { type DesignQuality, designQuality } from "./design-quality";
import { type CoordinateProblem, exchangeCoordinates, type MovedRuns } from "./exchange-coordinates";
import { gridOf } from "./grid-of";
import { optimalDesign } from "./optimal-design";

/** Where runs may lie, and for what. */
export interface ContinuousDesignOptions {
  /** `termsModel({ … })`, or for a curve `{ terms: model.terms, row: ([x]) => model.row(x) }` of a `gradientModel` */
  readonly model: DesignModel<CodedPoint>;
  /** low and high of each factor */
  readonly ranges: readonly (readonly [number, number])[];
  /** how many runs to choose, the forced ones among them */
  readonly runs: number;
  /** what may be run at all within the ranges; everything unless given */
  readonly allowed?: (point: CodedPoint) => boolean;
  /** "D" (unless given) for well-known coefficients, "I" for well-known forecasts over the region */
  readonly criterion?: "D" | "I";
  /** runs that were made and count, such as those of a log; none unless given */
  readonly kept?: readonly CodedPoint[];
  /** runs that must be among the chosen, such as the middle or today's setting; none unless given */
  readonly forced?: readonly CodedPoint[];
  /** where forecasts are wanted; a grid of what is allowed unless given */
  readonly region?: readonly CodedPoint[];
  /** how many times the search begins anew; 20 unless given */
  readonly starts?: number;
  /** 1 unless given; the same seed gives the same plan everywhere */
  readonly seed?: number;
}

/** The best plan that was found. */
export interface ContinuousDesign {
  /** the forced runs, then the chosen ones, in rising order of the first factor; `kept` is not repeated */
  readonly points: readonly CodedPoint[];
  readonly criterion: "D" | "I";
  /** of kept and chosen runs together, over the region */
  readonly quality: DesignQuality;
  readonly starts: number;
  /** starts that ended in a plan as good as this one: where few did, a better one may be missed; give more starts */
  readonly startsAgreeing: number;
}

/** Draws until one is allowed, at most. */
const MOST_DRAWS = 2000;

/**
 * Chooses runs anywhere in a continuous region, by moving one coordinate of one run at a time (Meyer & Nachtsheim 1995, from memory):
 * "D" makes |XᵀX| as great as it can, "I" the mean of xᵀ(XᵀX)⁻¹x over the region as small as it can. The first start is the best plan
 * on a grid (`optimalDesign`), so that it is never worse than that; the others are drawn.
 *
 * @returns the runs, their quality, how many starts agree; throws one sentence where no plan can be made
 * @example
 * const factors = ["air", "time"];
 * const model = termsModel({ factors, terms: polynomialTerms(factors) });
 * const plan = continuousDesign({ model, ranges: [[-1, 1], [-1, 1]], runs: 6 });
 * plan.quality.determinant; // → 268
 *
 * Reference: Meyer & Nachtsheim (1995), Technometrics 37, 60.
 */
export function continuousDesign(options: ContinuousDesignOptions): ContinuousDesign {
  const where = "continuousDesign";
  const { model, ranges, runs, allowed = () => true, criterion = "D", kept = [], forced = [], starts = 20 } = options;
  if (ranges.length === 0) fail(`${where}: ranges`, "must hold the low and high of at least one factor", ranges);
  for (const [at, [low, high]] of ranges.entries())
    if (!(Number.isFinite(low) && Number.isFinite(high) && low < high))
      fail(`${where}: ranges`, `must give factor ${at + 1} a low and a higher high, or leave it out of the model`, [
        low,
        high,
      ]);
  if (criterion !== "D" && criterion !== "I") fail(`${where}: criterion`, 'must be "D" or "I"', criterion);
  if (!(Number.isInteger(starts) && starts >= 1 && starts <= 10_000))
    fail(`${where}: starts`, "must be a whole number from 1 to 10000", starts);
  if (!(Number.isInteger(runs) && runs >= 1)) fail(`${where}: runs`, "must be a whole number >= 1", runs);
  const size = model.terms.length;
  if (runs + kept.length < size)
    fail(
      `${where}: runs`,
      `must be at least ${size - kept.length} for the ${size} terms${kept.length > 0 ? `, beside ${kept.length} kept` : ""}: give more runs or leave terms out`,
      runs,
    );
  const strange = forced.find((point) => !isWithin(point, ranges) || !allowed(point));
  if (strange !== undefined)
    fail(
      `${where}: forced`,
      "must hold points within the ranges that are allowed: move it, or loosen what is allowed",
      strange,
    );
  if (forced.length > runs)
    fail(
      `${where}: runs`,
      `must be at least the ${forced.length} that are forced: give more runs or force fewer`,
      runs,
    );
  const grid = gridOf(ranges).filter(allowed);
  if (grid.length === 0)
    fail(
      `${where}: allowed`,
      "must leave some of the region to run in: nothing of its grid is allowed; loosen what is allowed, or move the ranges",
      ranges,
    );
  const region = options.region ?? grid;
  const free = runs - forced.length;
  const stays = [...kept, ...forced];
  const problem = problemOf({ where, model, ranges, allowed, grid, stays, region, criterion });
  const { best, agreeing } =
    free === 0
      ? { best: { points: [], value: 0 }, agreeing: starts }
      : search({ problem, model, grid, stays, region, free, criterion, starts, seed: options.seed ?? 1 });
  if (best === null)
    fail(
      `${where}: runs`,
      `must be more, as the ${stays.length} kept and forced runs repeat themselves: give more runs or leave terms out`,
      runs,
    );
  const chosen = [...best.points].sort((a, b) => {
    const at = a.findIndex((value, factor) => value !== b[factor]);
    return at < 0 ? 0 : a[at] - b[at];
  });
  const points = [...forced, ...chosen].map((point) => Object.freeze([...point]));
  return Object.freeze({
    points: Object.freeze(points),
    criterion,
    quality: designQuality({ points: [...kept, ...points], model, region }),
    starts,
    startsAgreeing: agreeing,
  });
}

function isWithin(point: CodedPoint, ranges: readonly (readonly [number, number])[]): boolean {
  return point.length === ranges.length && ranges.every(([low, high], at) => point[at] >= low && point[at] <= high);
}

interface ProblemOptions {
  readonly where: string;
  readonly model: DesignModel<CodedPoint>;
  readonly ranges: readonly (readonly [number, number])[];
  readonly allowed: (point: CodedPoint) => boolean;
  readonly grid: readonly CodedPoint[];
  readonly stays: readonly CodedPoint[];
  readonly region: readonly CodedPoint[];
  readonly criterion: "D" | "I";
}

/** Rows in coordinates in which grid and staying runs have mean z zᵀ = 1, as `optimalDesign` turns them. */
function problemOf({
  where,
  model,
  ranges,
  allowed,
  grid,
  stays,
  region,
  criterion,
}: ProblemOptions): CoordinateProblem {
  const size = model.terms.length;
  const all = [...grid, ...stays];
  const moments = momentsOf(rowsOf(`${where}: ranges`, model, all), size).map((sum) => sum / all.length);
  const lower =
    factorOf(moments, size) ??
    fail(
      `${where}: ranges`,
      `must tell "${model.terms[dependentTerm(moments, size)]}" from the terms before it: widen what is allowed, or leave the term out`,
      ranges,
    );
  const rowOf = (point: CodedPoint): Float64Array => {
    const given = model.row(point);
    const row = new Float64Array(size);
    for (let at = 0; at < size; at++) {
      if (!Number.isFinite(given[at]))
        fail(where, "must give finite regressors everywhere in the region", { point, row: given });
      row[at] = given[at];
    }
    return solveLower(lower, size, row);
  };
  const summed = (points: readonly CodedPoint[]): Float64Array => {
    const rows = new Float64Array(points.length * size);
    for (const [at, point] of points.entries()) rows.set(rowOf(point), at * size);
    return momentsOf(rows, size);
  };
  return {
    rowOf,
    size,
    ranges,
    allowed,
    kept: summed(stays),
    weight: criterion === "I" ? summed(region).map((sum) => sum / region.length) : null,
  };
}

interface SearchOptions {
  readonly problem: CoordinateProblem;
  readonly model: DesignModel<CodedPoint>;
  readonly grid: readonly CodedPoint[];
  readonly stays: readonly CodedPoint[];
  readonly region: readonly CodedPoint[];
  /** runs to choose */
  readonly free: number;
  readonly criterion: "D" | "I";
  readonly starts: number;
  readonly seed: number;
}

function search(options: SearchOptions): { readonly best: MovedRuns | null; readonly agreeing: number } {
  const { problem, model, grid, stays, region, free, criterion, starts, seed } = options;
  const random = seededRandom(seed);
  let best: MovedRuns | null = null;
  let agreeing = 0;
  for (let start = 0; start < starts; start++) {
    const from =
      start === 0
        ? onGrid({ candidates: grid, model, runs: free, criterion, kept: stays, region, seed })
        : Array.from({ length: free }, () => drawn(problem, grid, random));
    const found = from === null ? null : exchangeCoordinates(problem, from);
    if (found === null) continue;
    const lead: number = best === null ? 1 : found.value - best.value;
    const near: number = best === null ? 0 : 1e-6 * Math.max(1, Math.abs(best.value));
    if (lead > near) agreeing = 1;
    else if (lead > -near) agreeing++;
    if (lead > 0) best = found;
  }
  return { best, agreeing };
}

/** The best plan on the grid; null where the grid has none. */
function onGrid(options: Parameters<typeof optimalDesign<CodedPoint>>[0]): readonly CodedPoint[] | null {
  try {
    return optimalDesign({ ...options, starts: 3 }).points;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** A point that is allowed: drawn within the ranges, or of the grid where little is allowed. */
function drawn({ ranges, allowed }: CoordinateProblem, grid: readonly CodedPoint[], random: SeededRandom): CodedPoint {
  for (let draw = 0; draw < MOST_DRAWS; draw++) {
    const point = ranges.map(([low, high]) => low + (high - low) * random.uniform());
    if (allowed(point)) return point;
  }
  return grid[random.integer(grid.length)];
}
