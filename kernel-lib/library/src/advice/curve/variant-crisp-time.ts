import { orTooLittle } from "../../check/or-too-little";
import { tooLittle } from "../../check/too-little";
import { LARGEST_CURVE_LOAD } from "../../crisp/clocks/load-effect";
import { compareSlabTimeForms, type SlabTimeComparison } from "../../fit/choice/compare-slab-time-forms";
import { fitSlabTime, type SlabTimeFit } from "../../fit/curve/fit-slab-time";
import { type CrispTime, type CrispTimes, crispTimes } from "../../trials/crisp-times";
import type { Kitchen } from "../../trials/kitchen";
import { applianceOf, variantOf } from "../../trials/kitchen-lookup";

/** What `variantCrispTime` works from. */
export interface VariantCrispTimeOptions {
  readonly kitchen: Kitchen;
  readonly variantId: string;
}

/** A variant's crisp times on its own appliance and setpoint, and the curve through them. */
export interface VariantCrispTime {
  readonly times: CrispTimes;
  /** every form side by side on the trials seen from both sides: what they support and what they cannot tell */
  readonly comparison: SlabTimeComparison;
  /**
   * the widest form that these trials carry, with scatter in proportion to the time; trials that never were crisp while they
   * were watched, or were at the first look, count for what they rule out
   */
  readonly fit: SlabTimeFit;
}

/**
 * Fits how long one variant takes to crisp against its slab thickness, from the trials at the appliance and setpoint of
 * its reheat card (within 1 K), uncrowded (load up to 0.7 of the floor).
 *
 * Predictions rest on the widest form that the trials carry, t = c0 + aL + bL², not on the form of lowest AICc: picking
 * a form by the same trials makes the bands too narrow at the ends (in simulated kitchens the 95 % band of the picked
 * form held the truth in 83 to 96 of 100, that of the full form in 92 to 97). Where trials at two thicknesses carry no more
 * than a line, its bands still allow a bend.
 *
 * Throws `TooLittle`, saying what to log, below three trials with a look on both sides, or when they are of one thickness.
 *
 * @example
 * const { fit } = variantCrispTime({ kitchen: loadKitchen(), variantId: "beet-lentil" });
 * predictSlabTime(fit, 10).timeMin; // → 9.7
 */
export function variantCrispTime({ kitchen, variantId }: VariantCrispTimeOptions): VariantCrispTime {
  const times = ownCrispTimes({ kitchen, variantId });
  const timed = times.times.filter((time) => time.timeMin !== null);
  const sentence = (): string => askForTimes({ kitchen, variantId }, timed);
  if (timed.length < LEAST_TIMES || thicknessesOf(timed) < 2) tooLittle("variantCrispTime", sentence());
  return orTooLittle("variantCrispTime", sentence, () => fitCrispTimes(times));
}

/** Trials between two looks that a curve with its doubt takes. */
const LEAST_TIMES = 3;

/** A variant's crisp times at its card's appliance and setpoint, uncrowded; throws `TooLittle` when there is none. */
export function ownCrispTimes({ kitchen, variantId }: VariantCrispTimeOptions): CrispTimes {
  const { applianceId, setpointC } = variantOf(kitchen, variantId);
  return orTooLittle(
    "variantCrispTime",
    () => askForTimes({ kitchen, variantId }, []),
    () =>
      crispTimes(kitchen.trials, {
        variantId,
        applianceId,
        setpointC,
        largestLoadFraction: LARGEST_CURVE_LOAD,
        units: kitchen.units,
      }),
  );
}

function thicknessesOf(times: readonly CrispTime[]): number {
  return new Set(times.map((time) => time.thicknessMm)).size;
}

/** What is there, and what to log next for a curve. */
function askForTimes({ kitchen, variantId }: VariantCrispTimeOptions, timed: readonly CrispTime[]): string {
  const { name, applianceId } = variantOf(kitchen, variantId);
  const at = `in the ${applianceOf(kitchen, applianceId).name} at the card's setpoint`;
  const looks = "each with the last look at which it was not crisp and the first at which it was";
  if (timed.length === 0)
    return `No crisp time of ${name} ${at} is logged yet: reheat pieces of two slabs, one a third thicker than the other, ${LEAST_TIMES} times in all or more, ${looks}.`;
  const had =
    timed.length === 1 ? `One crisp time of ${name} ${at} is` : `${timed.length} crisp times of ${name} ${at} are`;
  const more = Math.max(1, LEAST_TIMES - timed.length);
  const trials = more === 1 ? "one more trial" : `${more} more trials`;
  const thickness = thicknessesOf(timed) < 2 ? " of a slab a third thicker or thinner" : " of another thickness";
  return `${had} too few to tell how the time grows with thickness: log ${trials}${thickness}, ${looks}.`;
}

/** The curve through crisp times; see `variantCrispTime`. */
export function fitCrispTimes(times: CrispTimes): VariantCrispTime {
  const timed = times.times.filter((time) => time.timeMin !== null);
  const seen = {
    thicknessMm: timed.map((time) => time.thicknessMm),
    timeMin: timed.map((time) => time.timeMin as number),
    scatter: "proportional",
  } as const;
  const comparison = compareSlabTimeForms(seen);
  const { full, linear } = comparison.fits;
  const oneSided = times.times.filter((time) => time.timeMin === null);
  const fit = fitSlabTime({
    ...seen,
    form: full ? "full" : linear ? "linear" : comparison.best,
    bandForm: "full",
    oneSided: oneSided.map(({ thicknessMm, lowerMin, upperMin }) => ({ thicknessMm, lowerMin, upperMin })),
  });
  return Object.freeze({ times, comparison, fit });
}
