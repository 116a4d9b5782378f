import { freezeDeep } from "../../check/freeze-deep";
import type { PlannedTrial } from "./bench-sheet";
import type { PlannedLoad } from "./first-morning";
import type { WhatNext } from "./what-next";

const PURPOSES: Readonly<Record<PlannedLoad["purpose"], string>> = {
  early: "out while the core still climbs: not to be eaten",
  watched: "look until crisp",
  late: "a quarter longer",
};

/**
 * The trials that `whatNext` asks for, as a bench sheet takes them: the loads of the first morning, or the next trial.
 *
 * @param next from `whatNext`
 * @example
 * plannedTrials(whatNext({ kitchen: loadKitchen(), variantId: "beet-lentil" })).length; // → 1
 */
export function plannedTrials({ variantId, morning, next }: WhatNext): readonly PlannedTrial[] {
  if (morning !== null)
    return freezeDeep(
      morning.loads.map((load) => {
        const { panId, batchG, thicknessMm } = morning.slabs[load.slab];
        return {
          variantId,
          applianceId: morning.applianceId,
          panId,
          batchG,
          thicknessMm,
          setpointC: morning.setpointC,
          loadFraction: load.loadFraction,
          looksMin: load.looksMin,
          timeMin: load.takeOutMin,
          purpose: PURPOSES[load.purpose],
        };
      }),
    );
  const applianceId = next?.window.setting.applianceId;
  const best = next?.candidates.slice(0, 1) ?? [];
  return freezeDeep(
    best.map(({ panId, batchG, thicknessMm, setpointC, loadFraction, looksMin, timeMin }) => {
      return { variantId, applianceId, panId, batchG, thicknessMm, setpointC, loadFraction, looksMin, timeMin };
    }),
  );
}
