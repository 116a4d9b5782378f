import { fail } from "../check/check";
import type { Pan } from "../pan/pan";
import type { Appliance } from "./appliance";
import type { Kitchen, KitchenTrial, KitchenVariant } from "./kitchen";

/**
 * The variant of that id; throws when the kitchen has none, naming those it has.
 *
 * @example
 * variantOf(loadKitchen(), "beet-lentil").batchG; // → 1150
 */
export function variantOf(kitchen: Pick<Kitchen, "variants">, variantId: string): KitchenVariant {
  return found(kitchen.variants, (variant) => variant.variantId, variantId, "variantOf: variantId");
}

/**
 * The pan of that id; throws when the kitchen has none, naming those it has.
 *
 * @example
 * panOf(loadKitchen(), "half-sheet").depthMm; // → 25
 */
export function panOf(kitchen: Pick<Kitchen, "pans">, panId: string): Pan {
  return found(kitchen.pans, (pan) => pan.id, panId, "panOf: panId");
}

/** The appliance of that id; throws when the kitchen has none, naming those it has. */
export function applianceOf(kitchen: Kitchen, applianceId: string): Appliance {
  return found(kitchen.appliances, (appliance) => appliance.applianceId, applianceId, "applianceOf: applianceId");
}

/** The trial of that name; throws when the kitchen has none, naming those it has. */
export function trialOf(kitchen: Kitchen, trialId: string): KitchenTrial {
  return found(kitchen.trials, (trial) => trial.trialId, trialId, "trialOf: trialId");
}

function found<T>(all: readonly T[], idOf: (each: T) => string, id: string, where: string): T {
  return all.find((each) => idOf(each) === id) ?? fail(where, `must be one of ${all.map(idOf).join(", ")}`, id);
}
