// yield: pickup, cook loss, retention, from bowl to plate

export { type BatchFlow, type BatchFlowOptions, batchFlow, type FlowStage, type FlowYield } from "./batch-flow";
export { type CoatedPiece, type CoatPieceOptions, coatPiece, type LayerOnPiece } from "./coat-piece";
export { type CoatingPlan, type CoatingPlanOptions, coatingPlan, type LayerPlan } from "./coating-plan";
export { type CookChange, type CookChangeOptions, cookChange, type WaterAndFat } from "./cook-change";
export { type CookYield, type CookYieldOptions, cookYield } from "./cook-yield";
export {
  fitLoss,
  type LossFit,
  type LossPrediction,
  type LossPredictor,
  type LossTrial,
  predictLoss,
} from "./fit-loss";
export { type OilUptake, type OilUptakeOptions, oilUptake } from "./oil-uptake";
export { type ConvertPickupOptions, convertPickup, type Pickup, type PickupOptions, pickup } from "./pickup";
export { type MeasuredPickup, type PickupWeighing, pickupFromTrials } from "./pickup-from-trials";
export { type PieceSpread, type PieceSpreadOptions, pieceSpread } from "./piece-spread";
export { type TrueRetentionOptions, trueRetention } from "./true-retention";
export { type YieldBalance, type YieldFromCompositionOptions, yieldFromComposition } from "./yield-from-composition";
