import { type PieceTimes, type SuccessOverTime, successOverTime } from "./success-over-time";

/** From this chance of success on a setting is kept, and a card may be printed; our judgement. The one place it stands. */
export const GOOD_CHANCE = 0.9;
/** The best time is the first whose chance is so little below the greatest: later only costs yield [-]. */
const NEARLY_BEST = 0.005;
/** Rounding may cost so much of the chance [-]. */
const ROUNDING_COST = 0.02;
/** The card's time is a whole multiple of the first of these that costs no more than that (min). */
const CARD_STEPS_MIN: readonly number[] = [0.5, 0.25, 0.1];

/** What `cardTime` works from. */
export interface CardTimeOptions {
  readonly pieces: PieceTimes;
  /** their chances over time, fine enough to find the best */
  readonly chances: SuccessOverTime;
  /** longest time accepted (min) */
  readonly longestMin: number;
}

/** The time to print, and how often it will do. */
export interface CardTime {
  /** best time subject to safety (min) */
  readonly timeMin: number;
  /** rounded up to half a minute, or finer where the window is narrow: never before the core is safe (min) */
  readonly cardMin: number;
  /** a piece is safe, crisp and not overdone at the card time [-] */
  readonly success: number;
  /** a piece has its core at the limit at the card time [-] */
  readonly safe: number;
  /** every piece of a load has [-] */
  readonly safeLoads: number;
}

/**
 * The time to print on a card: the best one from the safe time on, rounded the safe way, up, to half a minute; to a
 * quarter or a tenth where half would cost more than two points of success or pass the accepted time.
 */
export function cardTime({ pieces, chances, longestMin }: CardTimeOptions): CardTime {
  const timeMin = bestTime(chances, longestMin);
  const rounded = CARD_STEPS_MIN.map((stepMin) => Math.ceil(timeMin / stepMin - 1e-9) * stepMin);
  const { success, safe, safeLoads } = successOverTime(pieces, [timeMin, ...rounded]);
  const inTime = (cardMin: number): boolean => cardMin <= longestMin || timeMin > longestMin;
  const asGood = rounded.findIndex((min, at) => inTime(min) && success[at + 1] >= success[0] - ROUNDING_COST);
  const pick = asGood === -1 ? rounded.length - 1 : asGood;
  return {
    timeMin,
    cardMin: Number(rounded[pick].toFixed(2)),
    success: success[pick + 1],
    safe: safe[pick + 1],
    safeLoads: safeLoads[pick + 1],
  };
}

/**
 * The first time nearly as good as the best, from the safe time on. Times past the accepted one are looked at only when
 * none up to it has a good chance.
 */
function bestTime({ timesMin, success, safeFromMin }: SuccessOverTime, longestMin: number): number {
  const bestUpTo = (lastMin: number): number =>
    timesMin.reduce((top, time, at) => (time >= safeFromMin && time <= lastMin ? Math.max(top, success[at]) : top), 0);
  const inTime = bestUpTo(longestMin);
  const best = inTime >= GOOD_CHANCE ? inTime : bestUpTo(Number.POSITIVE_INFINITY);
  if (best === 0) return safeFromMin;
  return timesMin.find((time, at) => time >= safeFromMin && success[at] >= best - NEARLY_BEST) ?? safeFromMin;
}
