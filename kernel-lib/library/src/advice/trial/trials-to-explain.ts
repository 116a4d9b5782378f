import type { Kitchen, KitchenTrial } from "../../trials/kitchen";
import { panOf, variantOf } from "../../trials/kitchen-lookup";
import { thicknessOfTrial } from "../../trials/thickness-of-trial";
import { measuredFailures } from "./measured-failures";

/** What `trialsToExplain` works from. */
export interface TrialsToExplainOptions {
  readonly kitchen: Kitchen;
  /** only this variant; default: all */
  readonly variantId?: string;
}

/** Which trials of a log call for a look, the latest first. */
export interface TrialsToExplain {
  /** soft, dark, dry or cold, and not merely early */
  readonly failed: readonly KitchenTrial[];
  /** cold and not crisp: taken out long before either was there, perhaps on purpose to read a core */
  readonly early: readonly KitchenTrial[];
  /** probes and batch mass disagree */
  readonly doubtful: readonly KitchenTrial[];
}

/**
 * The trials that failed by their own measurements (`measuredFailures`), those that were only taken out early, and those whose
 * thickness is in doubt: what to give to `explainTrial`. No clock is asked.
 *
 * @example
 * trialsToExplain({ kitchen: loadKitchen() }).doubtful.map((trial) => trial.trialId); // → ["BL-14"]
 */
export function trialsToExplain({ kitchen, variantId }: TrialsToExplainOptions): TrialsToExplain {
  const trials = kitchen.trials
    .filter((trial) => variantId === undefined || trial.variantId === variantId)
    .toSorted((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0));
  const failed: KitchenTrial[] = [];
  const early: KitchenTrial[] = [];
  for (const trial of trials) {
    const { core, crust, browning, drying } = measuredFailures({ kitchen, trial });
    if (core && crust && !browning && !drying) early.push(trial);
    else if (core || crust || browning || drying) failed.push(trial);
  }
  const doubtful = trials.filter((trial) => {
    const { densityKgM3 } = variantOf(kitchen, trial.variantId);
    return thicknessOfTrial({ trial, pan: panOf(kitchen, trial.panId), densityKgM3 }).notice !== null;
  });
  return Object.freeze({ failed, early, doubtful });
}
