import type { KitchenVariant } from "../trials/kitchen";
import { type ChosenVariantsOptions, chosenVariants } from "./chosen-variants";
import { showHeading } from "./show-heading";
import { whereEnough } from "./where-enough";

/**
 * Runs a part of a notebook for every variant of a kitchen, each under its name; a kitchen with one variant needs no heading.
 * Where a variant's log has too little yet, what to log is shown instead, and the next one has its turn. All other errors
 * pass.
 *
 * @param options the kitchen, and one variant's id to look at that alone; else the environment variable
 *   `SLABWRIGHT_VARIANT` may name it. An id that the kitchen does not have is refused with those that it has.
 * @param part what to show of a variant
 * @example
 * const names = [];
 * eachVariant({ kitchen: loadKitchen(), variantId: "beet-lentil" }, (variant) => names.push(variant.name));
 * names; // → ["beet and lentil bites"]
 */
export function eachVariant(options: ChosenVariantsOptions, part: (variant: KitchenVariant) => void): void {
  const variants = chosenVariants(options);
  for (const variant of variants) {
    if (variants.length > 1) showHeading(variant.name);
    whereEnough(() => part(variant));
  }
}
