// the kitchen and its log

export {
  type CorrectedTrial,
  type CorrectTrialOptions,
  correctTrial,
} from "./notebook/correct-trial";
export { loadKitchen } from "./notebook/load-kitchen";
export { type LoggedTrial, type LogTrialOptions, logTrial } from "./notebook/log-trial";
export type { Kitchen, KitchenVariant } from "./trials/kitchen";
export { panOf, variantOf } from "./trials/kitchen-lookup";
export type { TypedTrial } from "./trials/log/new-trial";
export type { Trial } from "./trials/trial";
export type { KitchenUnits } from "./units/unit-table";

// show a figure, a table or a sentence

export { type EachVariantOptions, eachVariant } from "./notebook/each-variant";
export { type Showable, show } from "./notebook/show";
export { showTogether } from "./notebook/show-together";
export { whereEnough } from "./notebook/where-enough";
export type { Figure } from "./views/figure/figure";
export type { NamedFigure } from "./views/figure/small-multiples";
export type { Table } from "./views/table/table";

// pans and batches

export { type CutGrid, type CutGridOptions, cutGrid } from "./pan/cut-grid";
export type { Pan } from "./pan/pan";
export { panPreset } from "./pan/pan-preset";
export { type ScaleBatchOptions, type ScaledBatch, scaleBatch } from "./pan/scale-batch";
export { type SlabMassOptions, slabMassG } from "./pan/slab-mass";
export { type Slab, type SlabThicknessOptions, slabThickness } from "./pan/slab-thickness";

// crisp time against thickness

export {
  type VariantCrispTime,
  type VariantCrispTimeOptions,
  variantCrispTime,
} from "./advice/curve/variant-crisp-time";
export type { SlabTimeFit } from "./fit/curve/fit-slab-time";
export { predictSlabTime, type SlabTimePrediction } from "./fit/curve/predict-slab-time";
export type { CrispTimes } from "./trials/crisp-times";
export { crispTimeFigure } from "./views/crisp/crisp-time-figure";
export { crispTimeTable } from "./views/crisp/crisp-time-table";

// the setting for each product

export { type Answer, type Answers, type AnswersOptions, answers } from "./advice/answer/answers";

// every variant on every pan

export { type DecideOptions, type Decision, decide } from "./advice/window/decide";
export { decisionTable } from "./views/advice/decision-table";
export { decisionText } from "./views/advice/decision-text";
export { thicknessByPanFigure } from "./views/advice/thickness-by-pan-figure";

// the crisp window, and the same batch on other pans

export { type CrispWindowOptions, crispWindow, type KitchenWindow } from "./advice/window/crisp-window";
export { type OtherPans, type OtherPansOptions, otherPans } from "./advice/window/other-pans";
export { windowPansTable } from "./views/advice/window-pans-table";
export { clockFigure } from "./views/crisp/clock-figure";
export { successFigure } from "./views/crisp/success-figure";
export { type WindowFigureOptions, windowFigure } from "./views/crisp/window-figure";
export { windowTable } from "./views/crisp/window-table";

// the card, and the core limit that outranks it

export { type ReheatCard, reheatCard } from "./advice/card/reheat-card";
export { type CoreLimit, coreLimit } from "./safety/core-limit";

// why a trial failed, and what to try next

export { type ExplainTrialOptions, explainTrial, type TrialExplanation } from "./advice/trial/explain-trial";
export { type NextTrial, type NextTrialOptions, nextTrial } from "./advice/trial/next-trial";
export { type WhatNext, type WhatNextOptions, whatNext } from "./advice/trial/what-next";

// compare variants

export {
  type CompareVariantsOptions,
  compareVariants,
  type VariantComparison,
  type VariantMetric,
} from "./advice/compare/compare-variants";
export { compareVariantsFigure, variantDifferencesFigure } from "./views/advice/compare-variants-figure";
export { compareVariantsTable } from "./views/advice/compare-variants-table";
export { comparisonText } from "./views/advice/comparison-text";

// freeze, cut, coat

export type { Composition } from "./food/composition/composition";
export {
  type ThermalProperties,
  type ThermalPropertiesOptions,
  thermalProperties,
} from "./food/thermal/thermal-properties";
export type { CounterOptions } from "./heat/freezing/counter-runs";
export type { CuttingLimits } from "./heat/freezing/cutting-limits";
export {
  type FreezeToCut,
  type FreezeToCutOptions,
  type FreezeToCutRow,
  freezeToCut,
} from "./heat/freezing/freeze-to-cut";
export {
  type FreezerCoefficients,
  type FreezerCoefficientsOptions,
  freezerCoefficients,
} from "./heat/freezing/freezer-coefficients";
export { type TemperToCut, temperToCut } from "./heat/freezing/temper-to-cut";
export { type WorkableTime, workableTime } from "./heat/freezing/workable-time";
export { freezeToCutFigure } from "./views/heat/freeze-to-cut-figure";
export { freezeToCutTable } from "./views/heat/freeze-to-cut-table";
export { coatingPlanTable } from "./views/yield/coating-plan-table";
export { type CoatingPlan, type CoatingPlanOptions, coatingPlan } from "./yield/coating-plan";

// the formula and its allergens

export type { FoodClass, FoodState, Formula } from "./food/formula/formula";
export { type FormulaAllergens, formulaAllergens } from "./food/formula/formula-allergens";
export { type FormulaTotals, formulaTotals } from "./food/formula/formula-totals";
export { type ScaledFormula, type ScaleTo, scaleFormula } from "./food/formula/scale-formula";
export type { Ingredient, IngredientClass } from "./food/ingredient/ingredient";
export { allergenTable } from "./views/food/allergen-table";
export { formulaTable } from "./views/food/formula-table";

// macros and labels

export { type LabelValues, labelEu, labelUs } from "./macros/label-values";
export type { PieceMacrosOptions } from "./macros/macro-model";
export { type PieceMacros, pieceMacros } from "./macros/piece-macros";
export { labelTable } from "./views/food/label-table";
export { macroTable } from "./views/food/macro-table";
export { macrosByVariantFigure } from "./views/food/macros-by-variant-figure";
