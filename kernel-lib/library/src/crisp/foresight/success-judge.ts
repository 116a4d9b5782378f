import type { Judge } from "../../plan/value/value-of-information";
import { seededRandom } from "../../statistics/random/seeded-random";
import { GOOD_CHANCE } from "../window/card-time";
import { type MomentDraws, SCATTERS } from "./place-draws";

/** A setting that may be chosen, with its moments. */
export interface JudgedPlace {
  readonly moments: MomentDraws;
  /** longest time accepted (min) */
  readonly longestMin: number;
}

/** What `successJudge` works from. */
export interface SuccessJudgeOptions {
  readonly places: readonly JudgedPlace[];
  /** pieces drawn for each draw of the constants, an even number: half of them choose, half value */
  readonly pieces: number;
  readonly seed: number;
  /** a time past the accepted one may be chosen where none within it is good: for one place only */
  readonly late: boolean;
  /** success of a last alternative that no reading changes [-]; none unless given */
  readonly other?: number;
}

/** Judges every place and time by the share of pieces that are safe, crisp and not overdone. */
export interface SuccessJudge {
  readonly judge: Judge;
  /** which place and time an alternative is (min); `null` for the one that no reading changes */
  readonly alternatives: readonly ({ readonly place: number; readonly timeMin: number } | null)[];
}

/** Width of a step of the grid of times, as a share of them. */
const STEP = 0.02;
const MOST_STEPS = 160;
/** Standard normal value of the confidence in a safe time, as `load-safety` has it. */
const CONFIDENCE = 0.98;
const CONFIDENCE_Z = 2.0537;

/**
 * The judge of times: success is the share of drawn pieces that are open then and not yet closed, and a time is allowed
 * from when all pieces of 99 of 100 loads are safe with 98 % confidence, by what is known in that case: `safeFrom`'s rule for
 * a lognormal core, as a few hundred draws do not know their own fiftieth part well enough to be compared.
 */
export function successJudge({ places, pieces, seed, late, other }: SuccessJudgeOptions): SuccessJudge {
  const grids = places.map(({ moments, longestMin }) => gridOf(moments, longestMin));
  const count = places[0].moments.logs.length / 4;
  const scattered = places.map(({ moments }) => scatterOf(moments, count * pieces, seed));
  const alternatives = grids.flatMap(({ first, step, steps }, place) =>
    Array.from({ length: steps }, (_, at) => ({ place, timeMin: Math.exp(first + at * step) })),
  );
  const size = 4 * places.length;
  const utility = new Float64Array(alternatives.length + (other === undefined ? 0 : 1));
  const valued = new Float64Array(utility.length);
  const allowed = new Uint8Array(utility.length);
  if (other !== undefined) {
    utility[alternatives.length] = other;
    valued[alternatives.length] = other;
    allowed[alternatives.length] = 1;
  }
  // logs of drawn pieces about the mean of a case: core, crisp, brown, dry
  const about = places.map(() => new Float64Array(4 * count * pieces));
  const judge: Judge = (left) => {
    for (const [place, logs] of about.entries())
      for (let at = 0; at < count; at++)
        for (let piece = 0; piece < pieces; piece++)
          for (let moment = 0; moment < 4; moment++) {
            const to = 4 * (at * pieces + piece) + moment;
            logs[to] = left[at * size + 4 * place + moment] + scattered[place][to];
          }
    const safeAbove = places.map(
      ({ moments }, place) => moments.logLoad + confidentAbove(left, size, 4 * place, moments.coreMissed),
    );
    return (mean) => {
      let from = 0;
      for (let place = 0; place < places.length; place++) {
        const grid = grids[place];
        sharesOpen(about[place], 0, mean, 4 * place, grid, utility, from);
        sharesOpen(about[place], 4, mean, 4 * place, grid, valued, from);
        const safe = mean[4 * place] + safeAbove[place];
        allowTimes({ grid, safe, late, longest: Math.log(places[place].longestMin), utility, allowed, from });
        from += grid.steps;
      }
      return { utility, allowed, valued };
    };
  };
  return { judge, alternatives: other === undefined ? alternatives : [...alternatives, null] };
}

/** Times of a place, evenly in their logarithm. */
interface Grid {
  readonly first: number;
  readonly step: number;
  readonly steps: number;
}

function gridOf({ logs, coreMissed, logLoad }: MomentDraws, longestMin: number): Grid {
  const count = logs.length / 4;
  const opens = new Float64Array(count);
  const cores = new Float64Array(count);
  for (let at = 0; at < count; at++) {
    cores[at] = logs[4 * at];
    opens[at] = Math.max(logs[4 * at], logs[4 * at + 1]);
  }
  opens.sort();
  cores.sort();
  const first = opens[Math.floor(0.01 * count)] - 0.15;
  const safe = cores[Math.ceil(CONFIDENCE * count) - 1] + CONFIDENCE_Z * coreMissed + logLoad;
  const most = Math.log(4 * longestMin);
  const last = Math.min(most, Math.max(safe, opens[Math.floor(0.99 * count)]) + 0.3);
  const steps = Math.min(MOST_STEPS, Math.max(2, Math.ceil((last - first) / STEP) + 1));
  return { first, step: Math.max(1e-6, (last - first) / (steps - 1)), steps };
}

/** What scatters the moments of drawn pieces, piece by piece. */
function scatterOf({ scatter }: MomentDraws, count: number, seed: number): Float64Array {
  const random = seededRandom(seed);
  const out = new Float64Array(4 * count);
  for (let piece = 0; piece < count; piece++)
    for (let way = 0; way < SCATTERS; way++) {
      const size = random.normal();
      for (let moment = 0; moment < 4; moment++) out[4 * piece + moment] += size * scatter[way][moment];
    }
  return out;
}

/** By how much ln of the typical core's time may lie above its mean, with the confidence of a safe time. */
function confidentAbove(left: Float64Array, size: number, column: number, missed: number): number {
  const count = left.length / size;
  let squares = 0;
  for (let at = column; at < left.length; at += size) squares += left[at] * left[at];
  return CONFIDENCE_Z * Math.sqrt(squares / (count - 1) + missed * missed);
}

/** Share of every second piece that is open at each time of a grid, written from a place on. */
function sharesOpen(
  about: Float64Array,
  start: 0 | 4,
  mean: Float64Array,
  column: number,
  { first, step, steps }: Grid,
  utility: Float64Array,
  from: number,
): void {
  const count = about.length / 8;
  const [core, crisp, brown, dry] = [mean[column], mean[column + 1], mean[column + 2], mean[column + 3]];
  for (let at = 0; at < steps; at++) utility[from + at] = 0;
  let opened = 0;
  for (let piece = start; piece < about.length; piece += 8) {
    const coreAt = core + about[piece];
    const crispAt = crisp + about[piece + 1];
    const brownAt = brown + about[piece + 2];
    const dryAt = dry + about[piece + 3];
    const opens = Math.max(coreAt, crispAt);
    const closes = Math.min(brownAt, dryAt);
    if (opens > closes) continue;
    const begin = Math.ceil((opens - first) / step);
    const end = Math.ceil((closes - first) / step);
    if (begin >= steps || end <= 0) continue;
    if (begin <= 0) opened++;
    else utility[from + begin]++;
    if (end < steps) utility[from + end]--;
  }
  let now = opened;
  for (let at = 0; at < steps; at++) {
    now += utility[from + at];
    utility[from + at] = now / count;
  }
}

interface AllowTimesOptions {
  readonly grid: Grid;
  /** ln of the safe time */
  readonly safe: number;
  readonly longest: number;
  readonly late: boolean;
  readonly utility: Float64Array;
  readonly allowed: Uint8Array;
  readonly from: number;
}

/** Safe times within the accepted one; where `late` and none of them is good, those past it too. */
function allowTimes({ grid, safe, longest, late, utility, allowed, from }: AllowTimesOptions): void {
  const { first, step, steps } = grid;
  let best = 0;
  for (let at = 0; at < steps; at++) {
    const time = first + at * step;
    const fits = time >= safe && time <= longest;
    allowed[from + at] = fits ? 1 : 0;
    if (fits && utility[from + at] > best) best = utility[from + at];
  }
  if (!late || best >= GOOD_CHANCE) return;
  for (let at = 0; at < steps; at++) if (first + at * step >= safe) allowed[from + at] = 1;
}
