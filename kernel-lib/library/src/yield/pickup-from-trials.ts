import { fail } from "../check/check";
import type { PickupBasis } from "../food/formula/formula";
import { studentTQuantile } from "../statistics/distributions/student-t-distribution";
import { pickup } from "./pickup";

/** One weighing of the same pieces before and after a layer. */
export interface PickupWeighing {
  readonly beforeG: number;
  readonly afterG: number;
}

/** A pickup from several weighings. */
export interface MeasuredPickup {
  readonly basis: PickupBasis;
  readonly percent: number;
  /** standard error of the mean (% points) */
  readonly standardErrorPercent: number;
  /** standard deviation between weighings (% points) */
  readonly sdPercent: number;
  /** 95 % interval of the mean (%), Student's t */
  readonly interval95: readonly [number, number];
  readonly weighings: number;
}

/**
 * Mean pickup of a layer with its doubt, from weighings of several pieces or trays.
 *
 * @param weighings two or more, before and after the layer (g)
 * @param basis what the percentage is of
 * @example
 * const measured = pickupFromTrials([{ beforeG: 20, afterG: 22.4 }, { beforeG: 21, afterG: 23.9 }, { beforeG: 19.5, afterG: 21.9 }], "substrate");
 * measured.percent; // → 12.706
 * measured.standardErrorPercent; // → 0.559
 */
export function pickupFromTrials(weighings: readonly PickupWeighing[], basis: PickupBasis): MeasuredPickup {
  const n = weighings.length;
  if (n < 2) fail("pickupFromTrials: weighings", "must be two or more to show a spread", n);
  const percents = weighings.map((one) => pickup({ ...one, basis }).percent);
  const percent = percents.reduce((sum, one) => sum + one, 0) / n;
  const sdPercent = Math.sqrt(percents.reduce((sum, one) => sum + (one - percent) ** 2, 0) / (n - 1));
  const standardErrorPercent = sdPercent / Math.sqrt(n);
  const half = studentTQuantile(0.975, n - 1) * standardErrorPercent;
  return Object.freeze({
    basis,
    percent,
    standardErrorPercent,
    sdPercent,
    interval95: Object.freeze([percent - half, percent + half] as const),
    weighings: n,
  });
}
