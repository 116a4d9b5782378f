import { slabMassG } from "../../pan/slab-mass";
import type { Kitchen, KitchenTrial } from "../kitchen";
import { panOf, variantOf } from "../kitchen-lookup";
import { batchOnPan } from "./batch-on-pan";

/** Sides of the pieces of a trial (mm): as logged, or as the variant cuts a slab of that thickness on that pan. */
export function sidesOfTrial(
  kitchen: Pick<Kitchen, "pans" | "variants">,
  trial: KitchenTrial,
): readonly [number, number] {
  if (trial.pieceLengthMm !== null && trial.pieceWidthMm !== null) return [trial.pieceLengthMm, trial.pieceWidthMm];
  const variant = variantOf(kitchen, trial.variantId);
  const pan = panOf(kitchen, trial.panId);
  const thicknessMm = Math.min(trial.thicknessMm, pan.depthMm);
  const batchG = slabMassG({ pan, thicknessMm, densityKgM3: variant.densityKgM3 });
  return batchOnPan({ kitchen, variant, pan, batchG }).sidesMm;
}
