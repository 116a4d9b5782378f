import type { Pan } from "../../pan/pan";
import { type Slab, slabThickness } from "../../pan/slab-thickness";
import type { Kitchen, KitchenVariant } from "../kitchen";
import { type PiecesOnPan, piecesOnPan } from "./pieces-on-pan";

/** A batch on its pan: how thick, how it is cut, and the sides of a piece. */
export interface BatchOnPan {
  readonly pan: Pan;
  readonly slab: Slab;
  readonly pieces: PiecesOnPan;
  /** lateral sides of a piece (mm); in wells the diameter twice */
  readonly sidesMm: readonly [number, number];
}

/** What `batchOnPan` works from. */
export interface BatchOnPanOptions {
  readonly kitchen: Pick<Kitchen, "pans">;
  readonly variant: KitchenVariant;
  readonly pan: Pan;
  readonly batchG: number;
}

/** A variant's mix spread on a pan and cut: worked out once, and handed to clocks, loss, macros and card. */
export function batchOnPan({ kitchen, variant, pan, batchG }: BatchOnPanOptions): BatchOnPan {
  const slab = slabThickness({ pan, batchG, densityKgM3: variant.densityKgM3 });
  const pieces = piecesOnPan({ kitchen, variant, pan, slab });
  return Object.freeze({ pan, slab, pieces, sidesMm: [pieces.pieceLengthMm, pieces.pieceWidthMm] as const });
}
