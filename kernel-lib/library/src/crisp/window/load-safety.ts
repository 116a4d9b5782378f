import { normalCdf, normalDensity } from "../../statistics/distributions/normal-distribution";
import {
  type CrispNoise,
  pieceCoreSpread,
  SLAB_SPREAD,
  THICKNESS_POWER,
  USUAL_WORTH,
} from "../calibration/crisp-noise";
import { NEVER_MIN } from "./window-setting";

/** Share of loads in which every piece must be at its limit at a recommended time [-]. */
export const SAFE_LOADS = 0.99;
/** Confidence in a safe time against what the trials leave uncertain [-]. */
export const SAFE_CONFIDENCE = 0.98;
/** Standard normal values of that confidence, and of that share of loads. */
const CONFIDENCE_Z = 2.0537;
const LOADS_Z = 2.3263;

/** Scatter of core times of one setting: between loads, and between the pieces of one (sd of the logarithm). */
export interface LoadScatter {
  readonly run: number;
  readonly piece: number;
  readonly pieces: number;
  /** standard error of ln `loadFactor`: a few trials do not know well how far runs scatter */
  readonly doubt: number;
}

/** What `loadScatter` works from. */
export interface LoadScatterOptions {
  readonly noise: CrispNoise;
  readonly unevenness: number;
  /** pieces that go in together */
  readonly pieces: number;
  /** how much of a change in the coefficient the core's time takes part in [-]: see `coreElasticity` */
  readonly elasticity: number;
  /** trials that tell of the scatter */
  readonly trials: number;
}

/** Scatter of core times from run to run, session to session and slab to slab, and from place to place and piece to piece. */
export function loadScatter(options: LoadScatterOptions): LoadScatter {
  const { noise, unevenness, pieces, elasticity, trials } = options;
  const runs = elasticity * Math.hypot(noise.run, noise.session);
  // a standard deviation from ν squares is known to 1/√(2ν); the constants take up about half of the trials'
  const known = 1 / Math.sqrt(2 * (USUAL_WORTH + trials / 2));
  return {
    run: Math.hypot(runs, THICKNESS_POWER * SLAB_SPREAD),
    piece: pieceCoreSpread(unevenness),
    pieces,
    doubt: LOADS_Z * runs * known,
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
 * loadFactor({ run: 0.06, piece: 0.06, pieces: 12, doubt: 0 }); // → 1.30
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
 * tail), times `loadFactor`, whose own doubt widens both. Never, when more than one draw in fifty never gets there.
 */
export function safeFrom(typicalCoreMin: Float64Array, factor: number, doubt: number): number {
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
  const wide = Math.hypot(sd, doubt);
  return factor * Math.max(drawn * Math.exp(CONFIDENCE_Z * (wide - sd)), Math.exp(shift + mean + CONFIDENCE_Z * wide));
}
