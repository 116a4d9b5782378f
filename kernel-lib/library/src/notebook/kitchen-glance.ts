import { freezeDeep } from "../check/freeze-deep";
import { checkKitchen, type KitchenCheck } from "../trials/check-kitchen";
import type { Kitchen } from "../trials/kitchen";
import { readKitchenFolder } from "./read-kitchen-folder";

/** One product of a kitchen, and how much is logged of it. */
export interface ProductGlance {
  readonly variantId: string;
  readonly name: string;
  readonly trials: number;
}

/** Ids of a kitchen for an example to be tried on. */
export interface ExampleIds {
  /** those with the most trials first */
  readonly variantIds: readonly string[];
  /** that of the first of them, then the others */
  readonly panIds: readonly string[];
  /** a trial that was never crisp, where there is one; empty where nothing is logged */
  readonly trialIds: readonly string[];
}

/** What can be said of a kitchen at once: its slips, what it makes, what is logged. */
export interface KitchenGlance extends Omit<KitchenCheck, "kitchen" | "aside"> {
  /** empty while there are problems */
  readonly products: readonly ProductGlance[];
  /** null while there are problems */
  readonly exampleIds: ExampleIds | null;
}

/**
 * Reads a kitchen's folder and says what is wrong with it, what it makes and how much is logged; nothing is worked out.
 *
 * @param folder the kitchen's folder
 *
 * @example
 * kitchenGlance("data").products.length; // → 5
 */
export function kitchenGlance(folder: string): KitchenGlance {
  const { kitchen, problems, notices, summary } = checkKitchen(readKitchenFolder(folder, "kitchenGlance: folder"));
  if (kitchen === null) return freezeDeep({ problems, notices, summary, products: [], exampleIds: null });
  const count = (variantId: string): number => kitchen.trials.filter((trial) => trial.variantId === variantId).length;
  const products = kitchen.variants.map(({ variantId, name }) => ({ variantId, name, trials: count(variantId) }));
  return freezeDeep({ problems, notices, summary, products, exampleIds: exampleIdsOf(kitchen, products) });
}

function exampleIdsOf(kitchen: Kitchen, products: readonly ProductGlance[]): ExampleIds {
  const variantIds = [...products].sort((one, other) => other.trials - one.trials).map(({ variantId }) => variantId);
  const main = kitchen.variants.find(({ variantId }) => variantId === variantIds[0]);
  const first = (id: string | undefined, ids: readonly string[]): string[] =>
    id === undefined ? [...ids] : [id, ...ids.filter((other) => other !== id)];
  const ids = kitchen.trials.map(({ trialId }) => trialId);
  return {
    variantIds,
    panIds: first(
      main?.panId,
      kitchen.pans.map(({ id }) => id),
    ),
    trialIds: first(kitchen.trials.find(({ crispMin }) => crispMin === null)?.trialId, ids).slice(0, 1),
  };
}
