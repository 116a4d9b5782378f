import { choleskyOrNull, inverseFrom } from "../../statistics/linear-algebra/cholesky";
import { dot, product, times } from "../../statistics/linear-algebra/square-matrix";
import type { CodedPoint } from "../factor/factor";
import { momentsOf } from "./design-model";

/** A continuous region to move runs in, in coordinates in which no term is far larger than another. */
export interface CoordinateProblem {
  /** regressors at a point, turned */
  readonly rowOf: (point: CodedPoint) => Float64Array;
  readonly size: number;
  /** low and high of each coordinate */
  readonly ranges: readonly (readonly [number, number])[];
  readonly allowed: (point: CodedPoint) => boolean;
  /** Σ z zᵀ of runs that stay */
  readonly kept: Float64Array;
  /** mean z zᵀ over the region, for "I"; null for "D" */
  readonly weight: Float64Array | null;
}

/** Where a search ended. */
export interface MovedRuns {
  readonly points: readonly CodedPoint[];
  /** ln |XᵀX| for "D", −trace((XᵀX)⁻¹ W) for "I": greater is better */
  readonly value: number;
}

/** Places looked at along a coordinate before the best is refined. */
const LEVELS = 21;
/** Steps of a golden section: each leaves 0.618 of the stretch, 30 of them a millionth. */
const STEPS = 30;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Passes over all runs, at most: our judgement; a search ends after ten to forty. */
const MOST_PASSES = 200;
/** Smallest gain, as a share, that counts as one. */
const GAIN = 1e-10;

/**
 * Improves a plan by moving one coordinate of one run after the other to where it gains most, until none gains (Meyer & Nachtsheim 1995,
 * from memory). A move of xᵢ to x multiplies |XᵀX| by (1 + d(x, x))(1 − d(xᵢ, xᵢ)) + d(xᵢ, x)², d(x, y) = xᵀ(XᵀX)⁻¹y.
 *
 * @param start where the runs are
 * @returns where it ended; null where the start cannot tell the terms apart
 */
export function exchangeCoordinates(problem: CoordinateProblem, start: readonly CodedPoint[]): MovedRuns | null {
  const { ranges, allowed, weight, size } = problem;
  const points = start.map((point) => [...point]);
  const rows = points.map((point) => problem.rowOf(point));
  let state = stateOf(problem, rows);
  if (state === null) return null;
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const before: number = state.value;
    for (let run = 0; run < points.length; run++)
      for (let at = 0; at < ranges.length; at++) {
        const gain = gainFor(problem, state, rows[run]);
        const best = bestAlong(ranges[at], (value) => {
          const point = points[run].map((own, place) => (place === at ? value : own));
          return allowed(point) ? gain(problem.rowOf(point)) : Number.NEGATIVE_INFINITY;
        });
        if (!(best.gain > GAIN)) continue;
        const [was, rowWas]: [number, Float64Array] = [points[run][at], rows[run]];
        points[run][at] = best.value;
        rows[run] = problem.rowOf(points[run]);
        const moved = stateOf(problem, rows);
        if (moved !== null && moved.value > state.value) state = moved;
        else {
          points[run][at] = was;
          rows[run] = rowWas;
        }
      }
    // for "I" the value is a mean variance, for "D" a logarithm: both change by a share
    const scale = weight === null ? size : Math.abs(before);
    if (state.value - before <= GAIN * scale) break;
  }
  return { points, value: state.value };
}

interface State {
  readonly inverse: Float64Array;
  /** (XᵀX)⁻¹ W (XᵀX)⁻¹; null for "D" */
  readonly spread: Float64Array | null;
  readonly trace: number;
  readonly value: number;
}

function stateOf({ size, kept, weight }: CoordinateProblem, rows: readonly Float64Array[]): State | null {
  const whole = new Float64Array(rows.length * size);
  for (const [run, row] of rows.entries()) whole.set(row, run * size);
  const information = momentsOf(whole, size);
  for (let i = 0; i < information.length; i++) information[i] += kept[i];
  const lower = choleskyOrNull(information, size, 1e-12);
  if (lower === null) return null;
  const inverse = inverseFrom(lower, size);
  if (weight === null) {
    let log = 0;
    for (let i = 0; i < size; i++) log += 2 * Math.log(lower[i * size + i]);
    return { inverse, spread: null, trace: 0, value: log };
  }
  const half = product(inverse, weight, size);
  let trace = 0;
  for (let i = 0; i < size; i++) trace += half[i * size + i];
  return { inverse, spread: product(half, inverse, size), trace, value: -trace };
}

/** By which share a move of one run gains: of the determinant for "D", of the mean variance for "I". */
function gainFor({ size }: CoordinateProblem, state: State, out: Float64Array): (row: Float64Array) => number {
  const { inverse, spread, trace } = state;
  const across = times(inverse, out, size);
  const left = 1 - dot(across, out);
  if (spread === null)
    return (row) => {
      const cross = dot(across, row);
      return (1 + form(inverse, row, size)) * left + cross * cross - 1;
    };
  const spreadAcross = times(spread, out, size);
  const spreadOwn = dot(spreadAcross, out);
  return (row) => {
    const own = 1 + form(inverse, row, size);
    const cross = dot(across, row);
    const factor = own * left + cross * cross;
    if (!(factor > 1e-8)) return Number.NEGATIVE_INFINITY;
    const fall = left * form(spread, row, size) + 2 * cross * dot(spreadAcross, row) - own * spreadOwn;
    return fall / factor / trace;
  };
}

/** The best value of one coordinate: the best of a few levels, and a golden section between its neighbours. */
function bestAlong(
  [low, high]: readonly [number, number],
  gain: (value: number) => number,
): { readonly value: number; readonly gain: number } {
  const step = (high - low) / (LEVELS - 1);
  let value = low;
  let most = Number.NEGATIVE_INFINITY;
  for (let level = 0; level < LEVELS; level++) {
    const place = level === LEVELS - 1 ? high : low + level * step;
    const found = gain(place);
    if (found > most) {
      most = found;
      value = place;
    }
  }
  let [from, to] = [Math.max(low, value - step), Math.min(high, value + step)];
  let [one, other] = [to - GOLDEN * (to - from), from + GOLDEN * (to - from)];
  let [gainOne, gainOther] = [gain(one), gain(other)];
  for (let turn = 0; turn < STEPS; turn++) {
    if (gainOne > gainOther) {
      to = other;
      [other, gainOther] = [one, gainOne];
      one = to - GOLDEN * (to - from);
      gainOne = gain(one);
    } else {
      from = one;
      [one, gainOne] = [other, gainOther];
      other = from + GOLDEN * (to - from);
      gainOther = gain(other);
    }
  }
  const [refined, found] = gainOne > gainOther ? [one, gainOne] : [other, gainOther];
  // a level such as an end or a middle stays where refining it gains nothing to speak of
  return found > most + 1e-12 * Math.max(1, Math.abs(most)) ? { value: refined, gain: found } : { value, gain: most };
}

/** xᵀAx of a symmetric A. */
function form(matrix: Float64Array, x: Float64Array, size: number): number {
  let sum = 0;
  for (let i = 0; i < size; i++) {
    let inner = 0.5 * matrix[i * size + i] * x[i];
    for (let j = 0; j < i; j++) inner += matrix[i * size + j] * x[j];
    sum += 2 * x[i] * inner;
  }
  return sum;
}
