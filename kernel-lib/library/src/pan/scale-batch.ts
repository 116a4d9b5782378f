import type { Pan } from "./pan";
import { slabMassG } from "./slab-mass";
import { slabThickness } from "./slab-thickness";

/** What `scaleBatch` works from. */
export interface ScaleBatchOptions {
  /** the pan the batch was tuned on */
  readonly fromPan: Pan;
  readonly toPan: Pan;
  /** mass of mix on `fromPan` (g) */
  readonly batchG: number;
  /** density of the mix as spread, air included (kg/m³) */
  readonly densityKgM3: number;
}

/** A batch for another pan at the same thickness. */
export interface ScaledBatch {
  /** mass of mix for `toPan` (g) */
  readonly batchG: number;
  /** multiply every ingredient by this */
  readonly factor: number;
  readonly thicknessMm: number;
}

/**
 * The batch that gives another pan the same slab thickness, and the factor for every ingredient.
 *
 * @example
 * const scaled = scaleBatch({ fromPan: panPreset("half sheet"), toPan: panPreset("quarter sheet"), batchG: 1200, densityKgM3: 1050 });
 * scaled.factor; // → 0.4848
 */
export function scaleBatch(options: ScaleBatchOptions): ScaledBatch {
  const { fromPan, toPan, batchG, densityKgM3 } = options;
  const { thicknessMm } = slabThickness({ pan: fromPan, batchG, densityKgM3 });
  const scaledG = slabMassG({ pan: toPan, thicknessMm, densityKgM3 });
  return Object.freeze({ batchG: scaledG, factor: scaledG / batchG, thicknessMm });
}
