// food
export { type ComponentProperties, choiOkos, type FoodComponent } from "./food/choi-okos";
export { COMPOSITION_FIELDS, type Composition, checkComposition } from "./food/composition";
export { type MixDensityOptions, mixDensity } from "./food/mix-density";

// pans: sizes, slab thickness, the cut, the piece
export { type Cut, type CutGrid, type CutGridOptions, cutGrid } from "./pan/cut-grid";
export { type Evenness, evenness } from "./pan/evenness";
export { checkPan, type Pan, type RectanglePan, type RoundPan, type WellPan } from "./pan/pan";
export { PAN_PRESETS, panPreset } from "./pan/pan-preset";
export { faceAreaMm2, panVolumeMl } from "./pan/pan-volume";
export { type Piece, type PieceOptions, pieceOf } from "./pan/piece";
export { type ScaleBatchOptions, type ScaledBatch, scaleBatch } from "./pan/scale-batch";
export { type SlabMassOptions, slabMassG } from "./pan/slab-mass";
export { type Slab, type SlabThicknessOptions, slabThickness } from "./pan/slab-thickness";
