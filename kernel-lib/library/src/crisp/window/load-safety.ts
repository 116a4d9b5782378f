import { normalCdf, normalDensity } from "../../statistics/distributions/normal-distribution";
import { type CrispNoise, pieceCoreSpread, SLAB_SPREAD, THICKNESS_POWER } from "../calibration/crisp-noise";
import { NEVER_MIN } from "./window-setting";

/** Share of loads in which every piece must be at its limit at a recommended time [-]. */
export const SAFE_LOADS = 0.99;
/** Confidence in a safe time against what the trials leave uncertain [-]. */
export const SAFE_CONFIDENCE = 0.98;
/** Standard normal value of that confidence. */
const CONFIDENCE_Z = 2.0537;

/** Scatter of core times of one setting: between loads, and between the pieces of one (sd of the logarithm). */
export interface LoadScatter {
  readonly run: number;
  readonly piece: number;
  readonly pieces: number;
}

/** What `loadScatter` works from. */
export interface LoadScatterOptions {
  readonly noise: CrispNoise;
  readonly unevenness: number;
  /** pieces that go in together */
  readonly pieces: number;
  /** how much of a change in the coefficient the core's time takes part in [-]: see `coreElasticity` */
  readonly elasticity: number;
}

/** Scatter of core times from run to run, session to session and slab to slab, and from place to place and piece to piece. */
export function loadScatter({ noise, unevenness, pieces, elasticity }: LoadScatterOptions): LoadScatter {
  return {
    run: Math.hypot(elasticity * Math.hypot(noise.run, noise.session), THICKNESS_POWER * SLAB_SPREAD),
    piece: pieceCoreSpread(unevenness),
    pieces,
  };
}

/**
 * Chance that every piece of a load has its core at the limit at e^x times the typical core time:
 * ∫ φ(u)·Φ((x − s_run·u)/s_piece)ⁿ du, by the midpoint rule over ±5.
 */
export function wholeLoadSafe({ run, piece, pieces }: LoadScatter, x: number): number {
  const steps = 60;
  let sum = 0;
  for (let step = 0; step < steps; step++) {
    const u = -5 + (10 * (step + 0.5)) / steps;
    sum += normalDensity(u) * normalCdf((x - run * u) / piece) ** pieces;
  }
  return Math.min(1, (sum * 10) / steps);
}

/**
 * Factor on the typical core time after which all pieces of 99 of 100 loads are at their limit.
 *
 * @example
 * loadFactor({ run: 0.06, piece: 0.06, pieces: 12 }); // → 1.30
 */
export function loadFactor(scatter: LoadScatter): number {
  let [low, high] = [0, 3];
  for (let halving = 0; halving < 22; halving++) {
    const middle = (low + high) / 2;
    if (wholeLoadSafe(scatter, middle) < SAFE_LOADS) low = middle;
    else high = middle;
  }
  return Math.exp(high);
}

/**
 * Time from which all pieces of 99 of 100 loads are at their limit, with 98 % confidence: the larger of the drawn typical
 * core times' own quantile and that of the lognormal with their middle and spread (so that a few draws do not flatter the
 * tail), times `loadFactor`. Never, when more than one draw in fifty never gets there.
 */
export function safeFrom(typicalCoreMin: Float64Array, factor: number): number {
  const count = typicalCoreMin.length;
  const sorted = typicalCoreMin.slice().sort();
  const drawn = sorted[Math.min(count - 1, Math.ceil(SAFE_CONFIDENCE * count))];
  if (drawn >= NEVER_MIN) return NEVER_MIN;
  const shift = Math.log(sorted[count >> 1]);
  let sum = 0;
  let squares = 0;
  let reached = 0;
  for (; reached < count && sorted[reached] < NEVER_MIN; reached++) {
    const log = Math.log(sorted[reached]) - shift;
    sum += log;
    squares += log * log;
  }
  const mean = sum / reached;
  const sd = Math.sqrt(Math.max(0, squares - reached * mean * mean) / Math.max(1, reached - 1));
  return factor * Math.max(drawn, Math.exp(shift + mean + CONFIDENCE_Z * sd));
}
