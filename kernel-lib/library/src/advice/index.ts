// advice: what to do with a batch, and why

export type { AnswerState } from "./answer/answer-state";
export { type Answer, type Answers, type AnswersOptions, answers } from "./answer/answers";
export { type CardCondition, type CardEvidenceOptions, cardEvidence } from "./card/card-evidence";
export { latestTime } from "./card/latest-time";
export { type PackCard, packCard, populationRange } from "./card/pack-card";
export { type PackLabel, type PackLabelOptions, packLabel } from "./card/pack-label";
export { type ReheatCard, reheatCard } from "./card/reheat-card";
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
} from "./compare/compare-variants";
export { type CrispByShare, type CrispByShareOptions, crispByShare } from "./curve/crisp-by-share";
export { type CrispWitness, type CrispWitnessOptions, crispWitness } from "./curve/crisp-witness";
export {
  type ExpectedYield,
  expectedYield,
  type ReheatYield,
  type ReheatYieldOptions,
  reheatYield,
} from "./curve/reheat-yield";
export { type VariantCrispTime, type VariantCrispTimeOptions, variantCrispTime } from "./curve/variant-crisp-time";
export { type MatchPlanOptions, matchPlan, type PlanMatch, type PlanRow } from "./run-sheet/match-plan";
export { readPlan } from "./run-sheet/plan-text";
export { type RunLine, type RunSheet, type RunSheetOptions, runSheet } from "./run-sheet/run-sheet";
export { type PlannedRun, type TrialPlan, type TrialPlanOptions, trialPlan } from "./run-sheet/trial-plan";
export { type Told, type TrialScatter, type TrialScatterOptions, trialScatter } from "./tell/trial-scatter";
export {
  type ChanceToTell,
  type ToTell,
  type TrialsToTell,
  type TrialsToTellOptions,
  trialsToTell,
} from "./tell/trials-to-tell";
export {
  type BenchCell,
  type BenchRow,
  type BenchSheet,
  type BenchSheetOptions,
  benchSheet,
  type PlannedTrial,
} from "./trial/bench-sheet";
export {
  type ClockState,
  type ExplainTrialOptions,
  explainTrial,
  type Surprise,
  type TrialExplanation,
} from "./trial/explain-trial";
export { type FirstMorning, type FirstMorningOptions, firstMorning, type PlannedLoad } from "./trial/first-morning";
export {
  type CardFollowed,
  type Forecast,
  type ForecastKind,
  type ForecastRecord,
  type ForecastRecordOptions,
  forecastRecord,
} from "./trial/forecast-record";
export { type MeasuredFailures, type MeasuredFailuresOptions, measuredFailures } from "./trial/measured-failures";
export {
  type CandidateTrial,
  type NextTrial,
  type NextTrialOptions,
  nextTrial,
  type StandingDecision,
} from "./trial/next-trial";
export { type MorningPlan, type MorningTrial, type PlanMorningOptions, planMorning } from "./trial/plan-morning";
export type { PlanStep, StepOf } from "./trial/plan-words";
export type { PlannedSlab } from "./trial/planned-slab";
export { plannedTrials } from "./trial/planned-trials";
export { TRIAL_OUTCOMES, type TrialOutcome, trialOutcome } from "./trial/trial-outcome";
export { type TrialTraceFit, type TrialTraceFitOptions, trialTraceFit } from "./trial/trial-trace-fit";
export { type TrialsToExplain, type TrialsToExplainOptions, trialsToExplain } from "./trial/trials-to-explain";
export { type WhatNext, type WhatNextOptions, whatNext } from "./trial/what-next";
export type { OpenQuestion } from "./value/open-question";
export type { Stopping } from "./value/stopping";
export { type TrialCost, USUAL_COST } from "./value/trial-cost";
export type { AskTrialsOptions } from "./value/valued-trials";
export { type CrispWindowOptions, crispWindow, type KitchenWindow } from "./window/crisp-window";
export { type DecideOptions, type Decision, decide, decideOwnPan, type Outcome } from "./window/decide";
export { judgeWindow, type WindowAdvice, type WindowVerdict } from "./window/judge-window";
export { type LoadPlan, type LoadPlanOptions, loadPlan } from "./window/load-plan";
export { type OtherPans, type OtherPansOptions, otherPans, type PanVerdict, type Remedy } from "./window/other-pans";
export { type WindowCalibrationOptions, windowCalibration } from "./window/window-calibration";

// a batch day: what to do when

export { type BatchDayOptions, batchDay, type DayPlan } from "./day/batch-day";
export {
  type BatchTimes,
  type BatchTimesOptions,
  batchTimes,
  type CoreCurve,
  type DayBatch,
  type DayCooking,
  type FreezingHeat,
} from "./day/batch-times";
export { type DayFreezer, WARMEST_STORED_C } from "./day/day-freezer";
export type { DayLimits } from "./day/day-limits";
export { type DayMinutes, type DayPlaces, type SettledPlaces, settlePlaces, USUAL_DAY } from "./day/day-places";
export type { BatchCurves, DayStepKind, PlannedStep } from "./day/day-problem";
export type { DayStep } from "./day/day-step";
export { type KitchenPlacesOptions, kitchenPlaces } from "./day/kitchen-places";
export { recoveryMin } from "./day/recovery-min";
export { type ReplanDayOptions, replanDay } from "./day/replan-day";

// stock: the packs in the freezer

export { type PackLife, type PackStock, type PackStockOptions, type ProductStock, packStock } from "./stock/pack-stock";

// loads: one oven tray against ten basket loads

export { type LoadChoice, type LoadChoices, type LoadChoicesOptions, loadChoices } from "./load/load-choices";

// cost: what a batch takes and costs

export { type BatchCost, type BatchCostOptions, batchCost, type Cost, type CostPart } from "./cost/batch-cost";
export type { BatchToMake } from "./cost/ingredients-needed";
export { type Price, priceOf } from "./cost/price-of";
export { type ShoppingLine, type ShoppingList, type ShoppingListOptions, shoppingList } from "./cost/shopping-list";
