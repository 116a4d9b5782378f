import { choleskyOrNull, inverseFrom } from "../../statistics/linear-algebra/cholesky";
import { product } from "../../statistics/linear-algebra/square-matrix";
import { momentsOf } from "./design-model";
import { variancesAt } from "./design-quality";
import { stepInverse } from "./step-inverse";

/** Rows to choose from, in coordinates in which no term is far larger than another. */
export interface ExchangeProblem {
  /** regressors of the candidates, row by row */
  readonly rows: Float64Array;
  /** how many regressors */
  readonly size: number;
  /** Σ z zᵀ of runs that stay */
  readonly kept: Float64Array;
  /** mean z zᵀ over the region, for "I"; null for "D" */
  readonly weight: Float64Array | null;
}

/** Where a search ended. */
export interface Exchanged {
  /** candidate of each run */
  readonly chosen: Int32Array;
  /** ln |XᵀX| for "D", −trace((XᵀX)⁻¹ W) for "I": greater is better */
  readonly value: number;
}

/** Passes over all runs, at most: our judgement; a search ends after three to ten. */
const MOST_PASSES = 100;
/** Smallest gain, as a share, that counts as one. */
const GAIN = 1e-9;

/**
 * Improves a plan by exchanging one run after the other for the candidate that gains most, until none gains (Fedorov 1972, run by
 * run as Cook & Nachtsheim 1980 do). With d(x, y) = xᵀ(XᵀX)⁻¹y, an exchange of xᵢ for xⱼ multiplies |XᵀX| by
 * (1 + d(xⱼ, xⱼ))(1 − d(xᵢ, xᵢ)) + d(xᵢ, xⱼ)²; inverse and d are brought up to date by rank-one steps (`stepInverse`).
 *
 * @param start candidate of each run; is changed
 * @returns where it ended; null where the start cannot tell the terms apart
 */
export function exchangeRuns(problem: ExchangeProblem, start: Int32Array): Exchanged | null {
  const { rows, size, weight } = problem;
  const count = rows.length / size;
  const chosen = start;
  const across = new Float64Array(count);
  let inverse = inverseOf(problem, chosen);
  if (inverse === null) return null;
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    let exchanged = false;
    const own = variancesAt(inverse, rows, size);
    let spread = weight === null ? null : spreadOf(problem, inverse, weight);
    for (let run = 0; run < chosen.length; run++) {
      const out = chosen[run];
      crossInto(across, rows, timesRow(inverse, rows, out, size), size);
      const best =
        spread === null ? bestForDeterminant(own, across, out) : bestForSpread(rows, size, own, across, spread, out);
      if (best < 0) continue;
      exchanged = true;
      chosen[run] = best;
      stepInverse(inverse, own, rows, best, 1);
      stepInverse(inverse, own, rows, out, -1);
      if (weight !== null) spread = spreadOf(problem, inverse, weight);
    }
    // afresh, so that the rounding of many steps does not add up
    inverse = inverseOf(problem, chosen);
    if (inverse === null) return null;
    if (!exchanged) break;
  }
  return { chosen, value: criterionOf(problem, chosen, inverse) };
}

/** The candidate by which the determinant grows most; −1 where it grows with none. */
function bestForDeterminant(own: Float64Array, across: Float64Array, out: number): number {
  let best = -1;
  let most = 1 + GAIN;
  const left = 1 - own[out];
  for (let at = 0; at < own.length; at++) {
    const factor = (1 + own[at]) * left + across[at] * across[at];
    if (factor > most) {
      most = factor;
      best = at;
    }
  }
  return best;
}

/** B = (XᵀX)⁻¹ W (XᵀX)⁻¹, zᵀ B z of every candidate, and the trace of (XᵀX)⁻¹ W. */
interface Spread {
  readonly matrix: Float64Array;
  readonly own: Float64Array;
  readonly trace: number;
}

function spreadOf({ rows, size }: ExchangeProblem, inverse: Float64Array, weight: Float64Array): Spread {
  const half = product(inverse, weight, size);
  const matrix = product(half, inverse, size);
  let trace = 0;
  for (let i = 0; i < size; i++) trace += half[i * size + i];
  return { matrix, own: variancesAt(matrix, rows, size), trace };
}

/** The candidate by which the mean variance falls most; −1 where it falls with none. */
function bestForSpread(
  rows: Float64Array,
  size: number,
  own: Float64Array,
  across: Float64Array,
  spread: Spread,
  out: number,
): number {
  const spreadAcross = new Float64Array(own.length);
  crossInto(spreadAcross, rows, timesRow(spread.matrix, rows, out, size), size);
  let best = -1;
  let most = GAIN * spread.trace;
  const left = 1 - own[out];
  for (let at = 0; at < own.length; at++) {
    const factor = (1 + own[at]) * left + across[at] * across[at];
    if (!(factor > 1e-8)) continue;
    const fall = left * spread.own[at] + 2 * across[at] * spreadAcross[at] - (1 + own[at]) * spread.own[out];
    if (fall > most * factor) {
      most = fall / factor;
      best = at;
    }
  }
  return best;
}

function informationOf({ rows, size, kept }: ExchangeProblem, chosen: Int32Array): Float64Array {
  const taken = new Float64Array(chosen.length * size);
  for (const [run, at] of chosen.entries()) taken.set(rows.subarray(at * size, (at + 1) * size), run * size);
  const information = momentsOf(taken, size);
  for (let i = 0; i < information.length; i++) information[i] += kept[i];
  return information;
}

function inverseOf(problem: ExchangeProblem, chosen: Int32Array): Float64Array | null {
  const lower = choleskyOrNull(informationOf(problem, chosen), problem.size, 1e-12);
  return lower === null ? null : inverseFrom(lower, problem.size);
}

function criterionOf(problem: ExchangeProblem, chosen: Int32Array, inverse: Float64Array): number {
  const { size, weight } = problem;
  if (weight !== null) return -spreadOf(problem, inverse, weight).trace;
  const lower = choleskyOrNull(informationOf(problem, chosen), size);
  let log = 0;
  for (let i = 0; i < size; i++) log += 2 * Math.log(lower?.[i * size + i] ?? 0);
  return log;
}

function timesRow(matrix: Float64Array, rows: Float64Array, at: number, size: number): Float64Array {
  const out = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    let sum = 0;
    for (let j = 0; j < size; j++) sum += matrix[i * size + j] * rows[at * size + j];
    out[i] = sum;
  }
  return out;
}

function crossInto(out: Float64Array, rows: Float64Array, vector: Float64Array, size: number): void {
  for (let row = 0; row < out.length; row++) {
    let sum = 0;
    for (let i = 0; i < size; i++) sum += vector[i] * rows[row * size + i];
    out[row] = sum;
  }
}
