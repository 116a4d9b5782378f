import type { KitchenVariant } from "../trials/kitchen";
import { type ChosenVariantsOptions, chosenVariants } from "./chosen-variants";
import { showHeading } from "./show-heading";
import { whereEnough } from "./where-enough";

/** What `eachVariant` goes through, and how. */
export interface EachVariantOptions extends ChosenVariantsOptions {
  /** each variant's name above its part; default: where there are several variants */
  readonly headings?: boolean;
}

/**
 * Runs a part of a notebook for every variant of a kitchen, each under its name. Where a variant's log has too little yet, what to
 * log is shown instead, and the next one has its turn. All other errors pass.
 *
 * @param options the kitchen, and one variant's id to look at that alone; else the environment variable
 *   `SLABWRIGHT_VARIANT` may name it. An id that the kitchen does not have is refused with those that it has.
 * @param part what to show of a variant, or to work out from it
 * @returns what the part gave for each variant that had enough, for a figure of all of them
 * @example
 * eachVariant({ kitchen: loadKitchen(), headings: false }, (variant) => variant.name).length; // → 5
 */
export function eachVariant<T>(options: EachVariantOptions, part: (variant: KitchenVariant) => T): readonly T[] {
  const variants = chosenVariants(options);
  const { headings = variants.length > 1 } = options;
  const given: T[] = [];
  for (const variant of variants) {
    if (headings) showHeading(variant.name);
    whereEnough(() => given.push(part(variant)));
  }
  return Object.freeze(given);
}
