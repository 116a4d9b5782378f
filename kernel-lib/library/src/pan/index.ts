// pans: sizes, slab thickness, the cut, the piece

export { type Cut, type CutGrid, type CutGridOptions, cutGrid } from "./cut-grid";
export { type Evenness, evenness } from "./evenness";
export {
  type FittedThing,
  type FreezerFit,
  type FreezerFitOptions,
  type FreezerShelves,
  type FreezerThing,
  freezerFit,
  panOutline,
} from "./freezer-fit";
export { heldText } from "./held-text";
export { checkPan, type Pan, type RectanglePan, type RoundPan, type WellPan } from "./pan";
export { PAN_PRESETS, panPreset } from "./pan-preset";
export { faceAreaMm2, panVolumeMl } from "./pan-volume";
export { type Piece, type PieceOptions, pieceOf } from "./piece";
export { readPans } from "./read-pans";
export { type ScaleBatchOptions, type ScaledBatch, scaleBatch } from "./scale-batch";
export { type SlabMassOptions, slabMassG } from "./slab-mass";
export { type Slab, type SlabThicknessOptions, slabThickness } from "./slab-thickness";
export {
  type Floor,
  type LyingPiece,
  type PiecePlace,
  type WholePieces,
  type WholePiecesOptions,
  wholePieces,
} from "./whole-pieces";
