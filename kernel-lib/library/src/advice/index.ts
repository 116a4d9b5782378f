// advice: what to do with a batch, and why

export { type BatchOnPan, type BatchOnPanOptions, batchOnPan } from "./batch-on-pan";
export { type CardCondition, type CardEvidenceOptions, cardEvidence } from "./card-evidence";
export {
  type ComparedVariant,
  type CompareVariantsOptions,
  compareVariants,
  type MetricEstimate,
  VARIANT_METRIC_LABELS,
  VARIANT_METRICS,
  type VariantComparison,
  type VariantDifference,
  type VariantMetric,
} from "./compare-variants";
export { type CrispWindowOptions, crispWindow, type KitchenWindow } from "./crisp-window";
export { type CrispWitness, type CrispWitnessOptions, crispWitness } from "./crisp-witness";
export { type DecideOptions, type Decision, decide, type Outcome } from "./decide";
export {
  type ClockState,
  type ExplainTrialOptions,
  explainTrial,
  type Surprise,
  type TrialExplanation,
} from "./explain-trial";
export {
  type CardFollowed,
  type Forecast,
  type ForecastKind,
  type ForecastRecord,
  type ForecastRecordOptions,
  forecastRecord,
} from "./forecast-record";
export { judgeWindow, type WindowAdvice, type WindowVerdict } from "./judge-window";
export { type LoadPlan, type LoadPlanOptions, loadPlan } from "./load-plan";
export { type CandidateTrial, type NextTrial, nextTrial } from "./next-trial";
export { type OtherPans, type OtherPansOptions, otherPans, type PanVerdict, type Remedy } from "./other-pans";
export { type PackCard, packCard, populationRange } from "./pack-card";
export { type PiecesOnPan, type PiecesOnPanOptions, piecesOnPan } from "./pieces-on-pan";
export { type ReheatCard, reheatCard } from "./reheat-card";
export {
  type ExpectedYield,
  expectedYield,
  type ReheatYield,
  type ReheatYieldOptions,
  reheatYield,
} from "./reheat-yield";
export { type VariantCrispTime, type VariantCrispTimeOptions, variantCrispTime } from "./variant-crisp-time";
export { type WindowCalibrationOptions, windowCalibration } from "./window-calibration";
