import { fail } from "../../check/check";
import { orTooLittle } from "../../check/or-too-little";
import { tooLittle } from "../../check/too-little";
import { censoredQuantile } from "../../fit/outcomes/censored-quantile";
import { fitCensoredTimes } from "../../fit/outcomes/fit-censored-times";
import type { Kitchen } from "../../trials/kitchen";
import { variantOf } from "../../trials/kitchen-lookup";
import { ownCrispTimes } from "./variant-crisp-time";

/** What `crispByShare` works from. */
export interface CrispByShareOptions {
  readonly kitchen: Kitchen;
  readonly variantId: string;
  readonly thicknessMm: number;
  /** share of slabs that are to be crisp, above 0 and below 1; default 0.9 */
  readonly share?: number;
}

/** By when a share of slabs is crisp. */
export interface CrispByShare {
  readonly share: number;
  readonly thicknessMm: number;
  readonly timeMin: number;
  readonly interval95: readonly [number, number];
  /** trials that it rests on */
  readonly n: number;
}

/** Runs scatter more than this share of their time; looks that show less are too far apart to tell, our judgement [-]. */
const LEAST_SCATTER = 0.02;

/**
 * By when a share of a variant's slabs is crisp at its card's setting, from every look as it was: not yet at one, crisp at the
 * next, and trials that ended before they were crisp for what they rule out (`fitCensoredTimes`, lognormal, over the logarithm
 * of the thickness). It knows no core: the core limit outranks it.
 *
 * Throws `TooLittle` where the looks do not tell it: too few, of one thickness, or so far apart that one curve passes between all
 * of them and no scatter is seen.
 *
 * @example
 * crispByShare({ kitchen: loadKitchen(), variantId: "turkey-sage", thicknessMm: 11.5 }).timeMin; // → 11.2
 */
export function crispByShare(options: CrispByShareOptions): CrispByShare {
  const { kitchen, variantId, thicknessMm, share = 0.9 } = options;
  if (!(share > 0 && share < 1)) fail("crispByShare: share", "must be above 0 and below 1", share);
  const { name } = variantOf(kitchen, variantId);
  const { times } = ownCrispTimes({ kitchen, variantId });
  const sentence = (): string =>
    `The looks at ${name} do not tell yet by when ${Math.round(100 * share)} % are crisp: log trials of two thicknesses, alike ones too, with a look a minute or so before they are crisp and one when they are.`;
  const { fit, time, confidence95 } = orTooLittle("crispByShare", sentence, () => {
    const censored = fitCensoredTimes({
      lower: times.map(({ lowerMin }) => lowerMin),
      upper: times.map(({ upperMin }) => upperMin ?? Number.POSITIVE_INFINITY),
      covariates: { logThickness: times.map((one) => Math.log(one.thicknessMm)) },
      distribution: "lognormal",
    });
    const at = { logThickness: Math.log(thicknessMm) };
    return { fit: censored, ...censoredQuantile(censored, { probability: share, at }) };
  });
  if (fit.parameters.scale.estimate < LEAST_SCATTER) tooLittle("crispByShare", sentence());
  return Object.freeze({ share, thicknessMm, timeMin: time, interval95: confidence95, n: times.length });
}
