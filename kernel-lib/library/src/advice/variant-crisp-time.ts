import { compareSlabTimeForms, type SlabTimeComparison } from "../fit/compare-slab-time-forms";
import type { SlabTimeFit } from "../fit/fit-slab-time";
import { type CrispTimes, crispTimes } from "../trials/crisp-times";
import type { Kitchen } from "../trials/kitchen";
import { variantOf } from "../trials/kitchen-lookup";

/** Pieces closer than this crowd each other; such trials stay out of a variant's own curve (share of the floor). */
export const UNCROWDED_LOAD = 0.7;

/** A variant's crisp times on its own appliance and setpoint, and the curve through them. */
export interface VariantCrispTime {
  readonly times: CrispTimes;
  readonly comparison: SlabTimeComparison;
  /** the form that these trials support best, by AICc */
  readonly fit: SlabTimeFit;
}

/**
 * Fits how long one variant takes to crisp against its slab thickness, from the trials at the appliance and setpoint of
 * its reheat card (within 1 K), uncrowded (load up to 0.7 of the floor), with the form of lowest AICc.
 *
 * Throws when fewer than two thicknesses were tried, or too few trials to give an interval.
 */
export function variantCrispTime(kitchen: Kitchen, variantId: string): VariantCrispTime {
  const { applianceId, setpointC } = variantOf(kitchen, variantId);
  const times = crispTimes(kitchen.trials, { variantId, applianceId, setpointC, largestLoadFraction: UNCROWDED_LOAD });
  const timed = times.times.filter((time) => time.timeMin !== null);
  const comparison = compareSlabTimeForms({
    thicknessMm: timed.map((time) => time.thicknessMm),
    timeMin: timed.map((time) => time.timeMin as number),
  });
  return Object.freeze({ times, comparison, fit: comparison.fits[comparison.best] as SlabTimeFit });
}
