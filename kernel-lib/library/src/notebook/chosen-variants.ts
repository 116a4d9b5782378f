import { fail } from "../check/check";
import { nearestName } from "../check/nearest-name";
import type { Kitchen, KitchenVariant } from "../trials/kitchen";

/** Which variants a notebook speaks of. */
export interface ChosenVariantsOptions {
  /** from `loadKitchen` */
  readonly kitchen: Kitchen;
  /** this one alone; left out, the one that the environment variable `SLABWRIGHT_VARIANT` names, or else all */
  readonly variantId?: string;
}

/** The variants that a notebook speaks of, in the order of the kitchen; throws for an id that it does not have, naming those it has. */
export function chosenVariants({ kitchen, variantId }: ChosenVariantsOptions): readonly KitchenVariant[] {
  const wanted = variantId ?? process.env.SLABWRIGHT_VARIANT ?? "";
  if (wanted === "") return kitchen.variants;
  const found = kitchen.variants.filter((variant) => variant.variantId === wanted);
  if (found.length > 0) return found;
  const known = kitchen.variants.map((variant) => variant.variantId);
  const where = variantId === undefined ? "SLABWRIGHT_VARIANT" : "chosenVariants: variantId";
  const nearest = nearestName(wanted, known);
  const hint = nearest === null ? "" : ` (nearest: ${nearest})`;
  return fail(where, `must be one of the kitchen's variants, ${known.join(", ")}${hint}`, wanted);
}
