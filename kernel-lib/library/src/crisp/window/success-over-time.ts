import { seededRandom } from "../../statistics/random/seeded-random";
import type { CrispCalibration } from "../calibration/calibrate-crisp";
import type { ClockBasis, SlabConstants } from "../clocks/slab-clocks";
import { drawSlabs, type SlabPlace } from "./draw-slabs";
import { type DryingTimes, dryingTimesOf, momentsOf, type SettledSetting } from "./window-setting";

/** A recommended time must leave the core safe with at least this chance [-]. */
export const SAFE_CHANCE = 0.995;

/** Moments of many drawn pieces (min), one place a piece. */
export interface PieceTimes {
  readonly coreMin: Float64Array;
  readonly crispMin: Float64Array;
  readonly opensMin: Float64Array;
  readonly closesMin: Float64Array;
}

/** What all pieces of a calibration may differ in, drawn once for any thickness and setpoint. */
export interface PieceStock {
  readonly slabs: readonly SlabConstants[];
  /** thickness of each piece over the slab's [-] */
  readonly thicknessFactors: Float64Array;
  /** crisp time of each run over the model's [-] */
  readonly timeFactors: Float64Array;
}

/** What `pieceStock` draws from. */
export interface PieceStockOptions {
  readonly calibration: CrispCalibration;
  readonly place: SlabPlace;
  /** relative error of the core's short form [-], from the clock basis */
  readonly coreError: number;
  readonly count: number;
  readonly seed: number;
}

/**
 * Pieces as they will come: constants from what the trials leave uncertain, thickness with the slab's unevenness, and
 * the scatter of crisp times from one run to the next.
 */
export function pieceStock(options: PieceStockOptions): PieceStock {
  const { calibration, place, coreError, count, seed } = options;
  const random = seededRandom(seed + 1);
  const slabs = drawSlabs(calibration, place, { count, seed, coreError });
  const { unevenness, noise } = calibration;
  return {
    slabs,
    thicknessFactors: Float64Array.from(slabs, () => Math.max(0.3, 1 + unevenness * random.normal())),
    timeFactors: Float64Array.from(slabs, () => Math.exp(noise.crispTime * random.normal())),
  };
}

/** The moments of every piece of a stock at one setting; `drying` when a map has worked it out already. */
export function piecesAt(
  stock: PieceStock,
  basis: ClockBasis,
  setting: SettledSetting,
  drying?: readonly DryingTimes[],
): PieceTimes {
  const { slabs, thicknessFactors, timeFactors } = stock;
  const count = slabs.length;
  const times = {
    coreMin: new Float64Array(count),
    crispMin: new Float64Array(count),
    opensMin: new Float64Array(count),
    closesMin: new Float64Array(count),
  };
  for (let at = 0; at < count; at++) {
    const thicknessMm = setting.thicknessMm * thicknessFactors[at];
    const own = drying === undefined ? dryingTimesOf(basis, slabs[at], setting) : drying[at];
    const moments = momentsOf(basis, slabs[at], thicknessMm, setting, own);
    times.coreMin[at] = moments.coreMin;
    times.crispMin[at] = moments.crispMin * timeFactors[at];
    times.opensMin[at] = Math.max(moments.coreMin, times.crispMin[at]);
    times.closesMin[at] = Math.min(moments.brownMin, moments.dryMin);
  }
  return times;
}

/** Chance of success at every time, and what each part of it does. */
export interface SuccessOverTime {
  readonly kind: "success over time";
  readonly timesMin: readonly number[];
  /** a piece is safe, crisp and not overdone [-] */
  readonly success: readonly number[];
  readonly safe: readonly number[];
  readonly crisp: readonly number[];
  readonly overdone: readonly number[];
  /** from here on the core is safe with a chance of at least 99.5 % (min) */
  readonly safeFromMin: number;
  /** number of pieces drawn */
  readonly draws: number;
}

/** Chances at the given times from drawn pieces. */
export function successOverTime(pieces: PieceTimes, timesMin: readonly number[]): SuccessOverTime {
  const count = pieces.coreMin.length;
  const share = (values: Float64Array): ((timeMin: number) => number) => {
    const sorted = values.slice().sort();
    return (timeMin) => countBelow(sorted, timeMin) / count;
  };
  const open = (_: number, at: number): boolean => pieces.opensMin[at] <= pieces.closesMin[at];
  const opened = share(pieces.opensMin.filter(open));
  const closed = share(pieces.closesMin.filter(open));
  const safe = share(pieces.coreMin);
  const crisp = share(pieces.crispMin);
  const overdone = share(pieces.closesMin);
  return Object.freeze({
    kind: "success over time",
    timesMin,
    success: timesMin.map((time) => Math.max(0, opened(time) - closed(time))),
    safe: timesMin.map(safe),
    crisp: timesMin.map(crisp),
    overdone: timesMin.map(overdone),
    safeFromMin: safeFromMin(pieces.coreMin),
    draws: count,
  });
}

/**
 * Time from which the core is safe with a chance of 99.5 %: the larger of the draws' own quantile and that of the
 * lognormal with their mean and spread, so that a few draws do not flatter the tail.
 */
export function safeFromMin(coreMin: Float64Array): number {
  const count = coreMin.length;
  const sorted = coreMin.slice().sort();
  let sum = 0;
  let squares = 0;
  const shift = Math.log(sorted[count >> 1]);
  for (let at = 0; at < count; at++) {
    const log = Math.log(coreMin[at]) - shift;
    sum += log;
    squares += log * log;
  }
  const mean = sum / count;
  const sd = Math.sqrt(Math.max(0, squares - count * mean * mean) / Math.max(1, count - 1));
  return Math.max(sorted[Math.min(count - 1, Math.ceil(SAFE_CHANCE * count))], Math.exp(shift + mean + 2.5758 * sd));
}

function countBelow(sorted: Float64Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle] <= value) low = middle + 1;
    else high = middle;
  }
  return low;
}
