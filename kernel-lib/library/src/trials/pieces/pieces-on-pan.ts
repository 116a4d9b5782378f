import { type CutGrid, cutGrid } from "../../pan/cut-grid";
import type { Pan } from "../../pan/pan";
import { faceAreaMm2 } from "../../pan/pan-volume";
import { pieceOf } from "../../pan/piece";
import { type Slab, slabThickness } from "../../pan/slab-thickness";
import type { Kitchen, KitchenVariant } from "../kitchen";
import { panOf } from "../kitchen-lookup";

/** The pieces that one pan of a variant gives. */
export interface PiecesOnPan {
  readonly rows: number;
  readonly columns: number;
  readonly pieces: number;
  /** longer side of the cut, or the diameter of the batter's upper face in a well (mm) */
  readonly pieceLengthMm: number;
  /** shorter side of the cut; in a well the diameter again (mm) */
  readonly pieceWidthMm: number;
  /** one bare piece (g) */
  readonly pieceG: number;
  /** all faces of one bare piece (mm²) */
  readonly surfaceMm2: number;
  /** share of the batch that becomes pieces, 0 to 1: the rest is trim */
  readonly yieldFraction: number;
}

/** What `piecesOnPan` works from. */
export interface PiecesOnPanOptions {
  readonly kitchen: Pick<Kitchen, "pans">;
  readonly variant: KitchenVariant;
  readonly pan: Pan;
  /** the variant's batch on that pan, from `slabThickness` */
  readonly slab: Slab;
}

/**
 * The pieces that a slab of a variant gives on a pan. On its own pan the variant's rows and columns are cut; on another
 * the grid whose pieces come nearest to the same size. Each well of a pan of wells is one piece.
 */
export function piecesOnPan(options: PiecesOnPanOptions): PiecesOnPan {
  const { variant, pan, slab } = options;
  const { thicknessMm, batchG, densityKgM3 } = slab;
  if (pan.shape === "wells") {
    const upperMm2 = faceAreaMm2(pan, thicknessMm) / pan.wells;
    const lowerMm2 = faceAreaMm2(pan, 0) / pan.wells;
    const diameterMm = 2 * Math.sqrt(upperMm2 / Math.PI);
    const slantMm = thicknessMm / Math.cos((pan.wallTaperDeg * Math.PI) / 180);
    const sideMm2 = (Math.PI * (diameterMm + pan.bottomDiameterMm) * slantMm) / 2;
    return Object.freeze({
      rows: 1,
      columns: pan.wells,
      pieces: pan.wells,
      pieceLengthMm: diameterMm,
      pieceWidthMm: diameterMm,
      pieceG: batchG / pan.wells,
      surfaceMm2: upperMm2 + lowerMm2 + sideMm2,
      yieldFraction: 1,
    });
  }
  const grid = pan.id === variant.panId ? cutAsTuned(variant, pan, slab) : cutToSize(options);
  const piece = pieceOf({ lengthMm: grid.pieceLengthMm, widthMm: grid.pieceWidthMm, thicknessMm, densityKgM3 });
  return Object.freeze({ ...grid, pieceG: piece.massG, surfaceMm2: piece.surfaceMm2 });
}

function cutAsTuned(variant: KitchenVariant, pan: Pan, slab: Slab): CutGrid {
  const { rows, columns, trimMm } = variant;
  return cutGrid({ ...slabSides(pan, slab), cut: { rows, columns }, trimMm });
}

function cutToSize({ kitchen, variant, pan, slab }: PiecesOnPanOptions): CutGrid {
  const own = panOf(kitchen, variant.panId);
  const ownSlab = slabThickness({ pan: own, batchG: variant.batchG, densityKgM3: variant.densityKgM3 });
  const { pieceLengthMm, pieceWidthMm } = cutAsTuned(variant, own, ownSlab);
  return cutGrid({ ...slabSides(pan, slab), cut: { pieceLengthMm, pieceWidthMm }, trimMm: variant.trimMm });
}

/** Sides of the rectangle that holds the slab's mean face; a round slab is cut as the square of the same area. */
function slabSides(pan: Pan, slab: Slab): { slabLengthMm: number; slabWidthMm: number } {
  if (pan.shape !== "rectangle") {
    const side = Math.sqrt(slab.meanAreaMm2);
    return { slabLengthMm: side, slabWidthMm: side };
  }
  const longer = Math.max(pan.bottomLengthMm, pan.bottomWidthMm);
  const shorter = Math.min(pan.bottomLengthMm, pan.bottomWidthMm);
  const leanMm = slab.thicknessMm * Math.tan((pan.wallTaperDeg * Math.PI) / 180);
  return { slabLengthMm: longer + leanMm, slabWidthMm: shorter + leanMm };
}
