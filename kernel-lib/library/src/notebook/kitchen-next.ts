import { whatNext } from "../advice/trial/what-next";
import { freezeDeep } from "../check/freeze-deep";
import { loadKitchen } from "./load-kitchen";

/** What to do next with one product of a kitchen, in words. */
export interface ProductNext {
  readonly variantId: string;
  readonly stage: string;
  readonly known: readonly string[];
  readonly steps: readonly string[];
  readonly cautions: readonly string[];
}

/**
 * What to do next with each product of a kitchen, from its folder: `whatNext` for whoever has no kitchen in hand. A product for
 * which nothing can be planned has the sentence that says why as its only step.
 *
 * @param folder the kitchen's folder, which must have no slips
 *
 * @example
 * kitchenNext("data").length; // → 5
 */
export function kitchenNext(folder: string): readonly ProductNext[] {
  const kitchen = loadKitchen(folder);
  return freezeDeep(
    kitchen.variants.map(({ variantId }): ProductNext => {
      try {
        const { stage, known, steps, cautions } = whatNext({ kitchen, variantId });
        return { variantId, stage, known, steps: steps.map(({ sentence }) => sentence), cautions };
      } catch (error) {
        return { variantId, stage: "", known: [], steps: [(error as Error).message], cautions: [] };
      }
    }),
  );
}
