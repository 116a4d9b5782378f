import { fail } from "../../check/check";
import type { Pan } from "../../pan/pan";
import { slabMassG } from "../../pan/slab-mass";
import type { Kitchen, KitchenVariant } from "../../trials/kitchen";
import { panOf } from "../../trials/kitchen-lookup";
import { type BatchOnPan, batchOnPan } from "../../trials/pieces/batch-on-pan";
import { roundToScale } from "../../units/round-to-scale";

/** A slab to spread: which pan, how much mix, and what comes of it. */
export interface PlannedSlab {
  readonly panId: string;
  /** as a person says it */
  readonly panName: string;
  /** mix to weigh out, in steps of a scale (g) */
  readonly batchG: number;
  readonly thicknessMm: number;
  readonly rows: number;
  readonly columns: number;
  readonly pieces: number;
  /** sides of a piece; in a well the diameter twice (mm) */
  readonly sidesMm: readonly [number, number];
}

/** What tells one slab of a plan from another. */
export function slabKey({ panId, batchG }: Pick<PlannedSlab, "panId" | "batchG">): string {
  return `${panId} ${batchG}`;
}

/** What `plannedSlab` works from. */
export interface PlannedSlabOptions {
  readonly kitchen: Kitchen;
  readonly variant: KitchenVariant;
  readonly pan: Pan;
  /** the thickness wanted (mm); less where the pan is shallower */
  readonly thicknessMm: number;
  /** share of the pan's depth that it may fill; default 0.95 for a slab, 0.75 for a batter */
  readonly full?: number;
}

/** A slab fills so much of a pan's depth at most, to be carried level; our judgement. */
export const LEVEL_FULL = 0.95;
/** A batter rises: wells are filled to three quarters at most; common practice, no source. */
const RISING_FULL = 0.75;

/**
 * The batch that makes a wanted thickness on a pan, as a scale is read, and no more than the pan should be filled. `null` where the
 * variant cannot be cut on that pan.
 */
export function plannedSlab(options: PlannedSlabOptions): PlannedSlab | null {
  const { kitchen, variant, pan, thicknessMm } = options;
  const { densityKgM3, form } = variant;
  const full = options.full ?? (form === "batter" ? RISING_FULL : LEVEL_FULL);
  const most = full * pan.depthMm;
  const exactG = slabMassG({ pan, thicknessMm: Math.min(thicknessMm, most), densityKgM3 });
  const nearestG = roundToScale(exactG, kitchen.units);
  const mostG = slabMassG({ pan, thicknessMm: most, densityKgM3 });
  const batchG = nearestG > mostG ? roundToScale(exactG, kitchen.units, "down") : nearestG;
  if (batchG <= 0) return null;
  const batch = orNull(() => batchOnPan({ kitchen, variant, pan, batchG }));
  if (batch === null) return null;
  const { rows, columns, pieces } = batch.pieces;
  return {
    panId: pan.id,
    panName: pan.name,
    batchG,
    thicknessMm: batch.slab.thicknessMm,
    rows,
    columns,
    pieces,
    sidesMm: batch.sidesMm,
  };
}

/** A variant's own batch on its own pan; throws where nothing is left to cut, and says where to look. */
export function ownBatch(kitchen: Kitchen, variant: KitchenVariant): BatchOnPan {
  const pan = panOf(kitchen, variant.panId);
  const batch = orNull(() => batchOnPan({ kitchen, variant, pan, batchG: variant.batchG }));
  if (batch !== null) return batch;
  const must = "must leave pieces to cut on its pan: look at its batch, rows, columns and trim";
  return fail(`variant ${variant.variantId}`, must, pan.name);
}

/** A pan on which the trim leaves nothing to cut is no pan for it. */
function orNull(cut: () => BatchOnPan): BatchOnPan | null {
  try {
    return cut();
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
