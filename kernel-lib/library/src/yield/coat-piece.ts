import { positive } from "../check/check";
import type { CoatingLayer, LayerKind } from "../food/formula/formula";
import { convertPickup } from "./pickup";

/** What `coatPiece` works from. */
export interface CoatPieceOptions {
  /** layers in the order in which they go on */
  readonly layers: readonly CoatingLayer[];
  /** mass of the bare piece (g) */
  readonly pieceG: number;
  /** surface of the bare piece, all faces (mm²); left out: the stated pickups are taken as they are */
  readonly surfaceMm2?: number;
}

/** One layer on one piece. */
export interface LayerOnPiece {
  readonly layer: LayerKind;
  /** mass of the layer (g) */
  readonly layerG: number;
  /** standard uncertainty of that mass (g), from the pickup's */
  readonly layerSeG: number;
  /** mass of the piece after this layer (g) */
  readonly afterG: number;
  /** pickup of this piece on the weight before the layer (%) */
  readonly substratePercent: number;
  /** pickup of this piece on the weight after the layer (%) */
  readonly finishedPercent: number;
  /** this piece's surface over mass, divided by that of the pieces that the pickup was seen on; 1 when not scaled */
  readonly surfaceScale: number;
}

/** A coated piece. */
export interface CoatedPiece {
  readonly pieceG: number;
  readonly layers: readonly LayerOnPiece[];
  /** with all layers (g) */
  readonly coatedG: number;
  /** all layers on the coated weight (%) */
  readonly coatingPercent: number;
}

/**
 * Puts coating layers on a piece. A layer covers surface, so its pickup grows with surface over mass: a thin slab or a
 * small piece takes more for each gram than the pieces the pickup was weighed on.
 *
 * layer = m_before · p · (S/m) / (S/m)_ref, with p on the weight before the layer and S/m of the bare piece
 *
 * Assumes the same mass of layer on every square centimetre; true for predust, wash and spray, roughly so for coarse
 * crumbs.
 *
 * @param options layers, bare mass (g) and surface (mm²)
 * @returns each layer's mass and pickup, and the coated piece
 * @example
 * const crumbs = { layer: "breading", lines: [], pickupPercent: 12, pickupBasis: "substrate", pickupSePercent: 2, atSurfaceCm2PerG: 2 };
 * coatPiece({ layers: [crumbs], pieceG: 20, surfaceMm2: 4000 }).coatedG; // → 22.4
 * coatPiece({ layers: [crumbs], pieceG: 10, surfaceMm2: 3000 }).coatedG; // → 11.8
 */
export function coatPiece(options: CoatPieceOptions): CoatedPiece {
  const pieceG = positive(options.pieceG, "coatPiece: pieceG", "g");
  const surfaceCm2PerG =
    options.surfaceMm2 === undefined
      ? null
      : positive(options.surfaceMm2, "coatPiece: surfaceMm2", "mm2") / 100 / pieceG;
  let beforeG = pieceG;
  const layers = options.layers.map((layer): LayerOnPiece => {
    const statedPercent = convertPickup({ percent: layer.pickupPercent, from: layer.pickupBasis, to: "substrate" });
    const surfaceScale =
      surfaceCm2PerG === null || layer.atSurfaceCm2PerG === undefined ? 1 : surfaceCm2PerG / layer.atSurfaceCm2PerG;
    const substratePercent = statedPercent * surfaceScale;
    const layerG = (beforeG * substratePercent) / 100;
    const afterG = beforeG + layerG;
    const slope = layer.pickupBasis === "substrate" ? 1 : (1 + statedPercent / 100) ** 2;
    const onPiece = {
      layer: layer.layer,
      layerG,
      layerSeG: (beforeG * surfaceScale * slope * layer.pickupSePercent) / 100,
      afterG,
      substratePercent,
      finishedPercent: (100 * layerG) / afterG,
      surfaceScale,
    };
    beforeG = afterG;
    return Object.freeze(onPiece);
  });
  return Object.freeze({
    pieceG,
    layers: Object.freeze(layers),
    coatedG: beforeG,
    coatingPercent: (100 * (beforeG - pieceG)) / beforeG,
  });
}
