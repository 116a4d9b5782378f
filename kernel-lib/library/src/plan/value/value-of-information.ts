import { fail } from "../../check/check";
import type { Learning } from "./learning-from";
import type { TargetDraws } from "./target-draws";

/** What every alternative is worth, and which of them may be chosen (not 0). */
export interface Judged {
  readonly utility: ArrayLike<number>;
  /** all of them unless given */
  readonly allowed?: ArrayLike<number>;
  /** the same by other draws: what was chosen by the first is valued by these, so that chance in the draws is no gain */
  readonly valued?: ArrayLike<number>;
}

/**
 * Judges the alternatives by draws of the targets. It is given the draws about their mean once, draw by draw, as they are
 * left after the readings, and then the mean of each case. What it returns may be the same arrays every time, and a judge
 * given other draws may forget the ones before.
 */
export type Judge = (left: Float64Array) => (mean: Float64Array) => Judged;

/** What `valueOfInformation` works from. */
export interface ValueOfInformationOptions {
  readonly targets: TargetDraws;
  /** from `learningFrom` */
  readonly learning: Learning;
  readonly judge: Judge;
  /** outcomes of the readings that are worked through; every draw unless given */
  readonly cases?: number;
  /** the first alternative that is so little below the best is chosen; 0 unless given */
  readonly nearly?: number;
  /** which alternatives may be chosen now; judged by all draws unless given */
  readonly allowedNow?: ArrayLike<number>;
  /** whether two alternatives are two decisions; whenever they are not the same one unless given */
  readonly differs?: (now: number, then: number) => boolean;
}

/** What readings are worth to a decision. */
export interface ValueOfInformation {
  /** expected utility of the decision after the readings, less that of the decision now */
  readonly gain: number;
  /** standard error of that from the number of cases */
  readonly gainSe: number;
  /** chance that the decision changes [-] */
  readonly chanceOfChange: number;
  /** the alternative chosen now, −1 where none is allowed */
  readonly now: number;
  readonly utilityNow: number;
  /** what is chosen in each case, −1 where nothing is allowed, and its utility there */
  readonly then: Int32Array;
  readonly utilityThen: Float64Array;
}

/**
 * Expected gain in utility from readings: E[max U | readings] − max E[U], over the alternatives that are allowed then and
 * now. In each of the cases the draws are moved to what the readings told there and narrowed to what they leave
 * (`Learning`), and judged again. The gain is 0 for readings that tell nothing, and that of perfect knowledge for those that
 * tell all; both hold exactly, whatever the shape of the draws.
 *
 * Where what may be chosen depends on what is known, the gain may be below 0: readings can forbid.
 *
 * @example
 * const targets = targetDraws([[-1], [0], [1]]);
 * const learning = learningFrom({ targets, readings: [[-1, 0, 1]], matched: true });
 * const judge = judgeByMean(([gain]) => [0, gain]);
 * valueOfInformation({ targets, learning, judge }).gain; // → 0.236
 *
 * Reference: preposterior analysis after Raiffa & Schlaifer (1961), in the form of the knowledge gradient of Frazier, Powell &
 * Dayanik (2009); the draws are moved as in a square-root ensemble filter, Tippett et al. (2003); all from memory.
 */
export function valueOfInformation(options: ValueOfInformationOptions): ValueOfInformation {
  const { targets, learning, judge, nearly = 0, differs = (now, then) => now !== then } = options;
  const { count, size, mean, centred } = targets;
  const cases = options.cases ?? count;
  if (!(Number.isInteger(cases) && cases >= 2 && cases <= count))
    fail("valueOfInformation: cases", `must be a whole number from 2 to ${count}`, cases);
  const shifts = shiftsOf(targets, learning, cases);
  const judged = judge(moved(centred, learning.leaves, size, count));
  const first = judged(mean);
  const alternatives = first.utility.length;
  const sums = new Float64Array(alternatives);
  const utilities = new Float64Array(cases * alternatives);
  const then = new Int32Array(cases);
  const utilityThen = new Float64Array(cases);
  const at = new Float64Array(size);
  for (let one = 0; one < cases; one++) {
    for (let target = 0; target < size; target++) at[target] = mean[target] + shifts[one * size + target];
    const { utility, allowed, valued = utility } = judged(at);
    for (let alternative = 0; alternative < alternatives; alternative++) {
      utilities[one * alternatives + alternative] = valued[alternative];
      sums[alternative] += utility[alternative] / cases;
    }
    then[one] = chosenOf(utility, allowed, nearly);
    utilityThen[one] = then[one] < 0 ? 0 : valued[then[one]];
  }
  const now = chosenOf(sums, options.allowedNow ?? judge(centred)(mean).allowed, nearly);
  let gain = 0;
  let utilityNow = 0;
  let changed = 0;
  for (let one = 0; one < cases; one++) {
    const stayed = now < 0 ? 0 : utilities[one * alternatives + now];
    gain += (utilityThen[one] - stayed) / cases;
    utilityNow += stayed / cases;
    if (then[one] !== now && (then[one] < 0 || now < 0 || differs(now, then[one]))) changed++;
  }
  let squares = 0;
  for (let one = 0; one < cases; one++)
    squares += (utilityThen[one] - (now < 0 ? 0 : utilities[one * alternatives + now]) - gain) ** 2;
  return {
    gain,
    gainSe: Math.sqrt(squares / (cases - 1) / cases),
    chanceOfChange: changed / cases,
    now,
    utilityNow,
    then,
    utilityThen,
  };
}

/** A judge that takes the mean of a utility over the draws; every alternative is allowed. */
export function judgeByMean(utilityOf: (target: Float64Array) => readonly number[]): Judge {
  return (left) => (mean) => {
    const size = mean.length;
    const count = left.length / size;
    const target = new Float64Array(size);
    let sums: number[] = [];
    for (let row = 0; row < count; row++) {
      for (let at = 0; at < size; at++) target[at] = mean[at] + left[row * size + at];
      const utility = utilityOf(target);
      sums = utility.map((value, alternative) => (sums[alternative] ?? 0) + value / count);
    }
    return { utility: sums };
  };
}

/** The first of the allowed alternatives that is nearly as good as the best of them; −1 where none is allowed. */
function chosenOf(utility: ArrayLike<number>, allowed: ArrayLike<number> | undefined, nearly: number): number {
  let best = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < utility.length; at++)
    if ((allowed === undefined || allowed[at] !== 0) && utility[at] > best) best = utility[at];
  for (let at = 0; at < utility.length; at++)
    if ((allowed === undefined || allowed[at] !== 0) && utility[at] >= best - nearly) return at;
  return -1;
}

/** Means of the cases less the mean now: draws spread evenly along the direction that is told best, moved and centred. */
function shiftsOf(targets: TargetDraws, { tells, direction }: Learning, cases: number): Float64Array {
  const { count, size, centred, inverseRoot } = targets;
  const along = new Float64Array(size);
  for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) along[j] += direction[i] * inverseRoot[i * size + j];
  const place = Float64Array.from({ length: count }, (_, row) => {
    let sum = 0;
    for (let at = 0; at < size; at++) sum += along[at] * centred[row * size + at];
    return sum;
  });
  const order = Int32Array.from({ length: count }, (_, row) => row).sort((a, b) => place[a] - place[b] || a - b);
  const picked = new Float64Array(cases * size);
  for (let one = 0; one < cases; one++) {
    const row = order[Math.floor(((one + 0.5) * count) / cases)];
    picked.set(centred.subarray(row * size, (row + 1) * size), one * size);
  }
  const shifts = moved(picked, tells, size, cases);
  for (let target = 0; target < size; target++) {
    let middle = 0;
    for (let one = 0; one < cases; one++) middle += shifts[one * size + target] / cases;
    for (let one = 0; one < cases; one++) shifts[one * size + target] -= middle;
  }
  return shifts;
}

/** M·x for each row x. */
function moved(rows: Float64Array, matrix: Float64Array, size: number, count: number): Float64Array {
  const out = new Float64Array(rows.length);
  for (let row = 0; row < count; row++)
    for (let i = 0; i < size; i++) {
      let sum = 0;
      for (let j = 0; j < size; j++) sum += matrix[i * size + j] * rows[row * size + j];
      out[row * size + i] = sum;
    }
  return out;
}
