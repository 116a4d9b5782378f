import { fail, notNegative, positive } from "../check/check";
import { propagateUncertainty } from "../statistics/uncertainty/propagate-uncertainty";
import { rectangularInput } from "../statistics/uncertainty/uncertain-input";

/** What `cookYield` works from. */
export interface CookYieldOptions {
  /** mass of the pieces before (g) */
  readonly massBeforeG: number;
  /** mass of the same pieces after (g) */
  readonly massAfterG: number;
  /** most that one reading of the scale may be off (g); 0.5 unless given: a scale that reads to 1 g */
  readonly scaleErrorG?: number;
  /** largest gain taken for real (% of before); 2 unless given; boiled grain and pulses gain 100 and more */
  readonly largestGainPercent?: number;
}

/** Yield of one cook or reheat, with the doubt of the scale alone. */
export interface CookYield {
  /** what is left (% of the mass before) */
  readonly yieldPercent: number;
  /** what is lost (% of the mass before); negative for a gain */
  readonly lossPercent: number;
  readonly lossG: number;
  /** standard error of yield and loss (% points), from the scale; pieces differ more than this: use several trials */
  readonly standardErrorPercent: number;
  /** 95 % interval of the yield (%) */
  readonly interval95: readonly [number, number];
}

/**
 * Cooking yield and loss from two weighings, as the USDA tables of cooking yields define them (Agriculture Handbook 102;
 * USDA Table of Cooking Yields for Meat and Poultry, 2014), with the scale's doubt propagated (JCGM 100:2008).
 *
 * yield % = 100 · m_after / m_before;  loss % = 100 − yield %
 *
 * @param options the two masses and the scale
 * @returns yield and loss with standard error and interval
 * @example
 * cookYield({ massBeforeG: 100, massAfterG: 78.5 }).yieldPercent; // → 78.5
 * cookYield({ massBeforeG: 25, massAfterG: 20, scaleErrorG: 0.1 }).standardErrorPercent; // → 0.29575
 * cookYield({ massBeforeG: 100, massAfterG: 112 }); // throws "were the two masses swapped"
 */
export function cookYield(options: CookYieldOptions): CookYield {
  const massBeforeG = positive(options.massBeforeG, "cookYield: massBeforeG", "g");
  const massAfterG = positive(options.massAfterG, "cookYield: massAfterG", "g");
  const scaleErrorG = notNegative(options.scaleErrorG ?? 0.5, "cookYield: scaleErrorG", "g");
  const gain = notNegative(options.largestGainPercent ?? 2, "cookYield: largestGainPercent", "%");
  if (massAfterG > massBeforeG * (1 + gain / 100)) {
    const must = `must be at most ${gain} % above massBeforeG ${massBeforeG} g (were the two masses swapped?)`;
    fail("cookYield: massAfterG", must, massAfterG);
  }
  const measured = propagateUncertainty({
    inputs: { before: rectangularInput(massBeforeG, scaleErrorG), after: rectangularInput(massAfterG, scaleErrorG) },
    measure: ({ before, after }) => (100 * after) / before,
  });
  return Object.freeze({
    yieldPercent: measured.value,
    lossPercent: 100 - measured.value,
    lossG: massBeforeG - massAfterG,
    standardErrorPercent: measured.standardUncertainty,
    interval95: measured.interval95,
  });
}
