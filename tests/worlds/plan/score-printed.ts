import { bestSafe, SAFE_LOADS, shareAt } from "../score";
import type { SettingTruth } from "../setting-truth";

/** How a printed time stands to the truth of its setting. */
export interface PrintedScore {
  readonly cardMin: number;
  /** true share of good pieces then, less the best at any safe time */
  readonly lost: number;
  /** from the nearest time that is as good as the best (min) */
  readonly offMin: number;
  /** share of loads that are wholly safe then */
  readonly safeLoads: number;
  /** near enough, good enough and safe */
  readonly settled: boolean;
}

/** Near enough, in minutes and in share of good pieces. */
export const NEAR_MIN = 1;
export const NEAR_SHARE = 0.05;
/** Times so little below the best are as good as the best. */
const AS_GOOD = 0.005;

/**
 * Holds a printed time against the truth of its setting: the nearest of the safe times that are as good as the best there, to half
 * a point; and its share of good pieces against the best of this setting or of all that were to choose from.
 */
export function scorePrinted(
  truth: Omit<SettingTruth, "emulatorError">,
  cardMin: number,
  bestOfAll: number = bestSafe(truth),
): PrintedScore {
  const best = bestSafe(truth);
  const offMin = truth.timesMin.reduce(
    (least, time, at) =>
      truth.safeLoads[at] >= SAFE_LOADS && truth.good[at] >= best - AS_GOOD
        ? Math.min(least, Math.abs(time - cardMin))
        : least,
    Number.POSITIVE_INFINITY,
  );
  const lost = bestOfAll - shareAt(truth, truth.good, cardMin);
  const safeLoads = shareAt(truth, truth.safeLoads, cardMin);
  return {
    cardMin,
    lost,
    offMin,
    safeLoads,
    settled: offMin <= NEAR_MIN && lost <= NEAR_SHARE && safeLoads >= SAFE_LOADS,
  };
}
