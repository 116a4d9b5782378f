// the notebook: files in, figures out

export { appendTrial } from "./notebook/append-trial";
export { loadFoods } from "./notebook/load-foods";
export { loadKitchen } from "./notebook/load-kitchen";
export { type Showable, show } from "./notebook/show";

// trials: what was logged, and the kitchen it was logged in

export { type Appliance, ApplianceSchema, readAppliances } from "./trials/appliance";
export { type CrispTime, type CrispTimes, type CrispTimesOptions, crispTimes } from "./trials/crisp-times";
export {
  buildKitchen,
  type Kitchen,
  type KitchenFile,
  type KitchenFiles,
  type KitchenTrial,
  type KitchenVariant,
} from "./trials/kitchen";
export { applianceOf, panOf, trialOf, variantOf } from "./trials/kitchen-lookup";
export { type ThicknessOfTrial, type ThicknessOfTrialOptions, thicknessOfTrial } from "./trials/thickness-of-trial";
export { readTrials, type Trial, TrialSchema, trialLine } from "./trials/trial";
export { readVariants, type Variant, VariantSchema } from "./trials/variant";

// advice: what to do with a batch

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
} from "./advice/compare-variants";
export { type CrispWindowOptions, crispWindow, type KitchenWindow } from "./advice/crisp-window";
export { type Advice, type Decision, decide, type Outcome } from "./advice/decide";
export {
  type ClockState,
  type ExplainTrialOptions,
  explainTrial,
  type Surprise,
  type TrialExplanation,
} from "./advice/explain-trial";
export { type LoadPlan, type LoadPlanOptions, loadPlan } from "./advice/load-plan";
export { type CandidateTrial, type NextTrial, nextTrial } from "./advice/next-trial";
export { type OtherPans, type OtherPansOptions, otherPans, type PanVerdict, type Remedy } from "./advice/other-pans";
export { type PiecesOnPan, type PiecesOnPanOptions, piecesOnPan } from "./advice/pieces-on-pan";
export { type ReheatCard, reheatCard } from "./advice/reheat-card";
export { type ExpectedYield, expectedYield, type ReheatYield, reheatYield } from "./advice/reheat-yield";
export { UNCROWDED_LOAD, type VariantCrispTime, variantCrispTime } from "./advice/variant-crisp-time";
export { type WindowCalibrationOptions, windowCalibration } from "./advice/window-calibration";

// crisp: the three clocks calibrated against trials, the window, the chance of success

export { type CalibratedConstant, type CrispCalibration, calibrateCrisp } from "./crisp/calibrate-crisp";
export { type ClocksOverTime, type ClocksOverTimeOptions, clocksOverTime } from "./crisp/clocks-over-time";
export type { CrispObservation } from "./crisp/crisp-observation";
export { type CrispPrior, type CrispPriorsOptions, crispPriors } from "./crisp/crisp-priors";
export type { CalibrateCrispOptions, CrispNoise } from "./crisp/crisp-residuals";
export { type LargestThickness, largestThickness } from "./crisp/largest-thickness";
export type { SuccessOverTime } from "./crisp/success-over-time";
export { type CrispWindow, type Moment, type RecommendedTime, type WindowAtOptions, windowAt } from "./crisp/window-at";
export {
  type WindowCoverage,
  type WindowCoverageOptions,
  type WindowCoverageRow,
  windowCoverage,
} from "./crisp/window-coverage";
export { type WindowMap, type WindowMapOptions, windowMapOverSetpoint, windowMapOverTime } from "./crisp/window-map";
export {
  type WindowOverThickness,
  type WindowOverThicknessOptions,
  windowOverThickness,
} from "./crisp/window-over-thickness";
export type { SettledSetting, WindowSetting } from "./crisp/window-setting";

// safety: limits that outrank crispness

export { type CoreLimit, coreLimit } from "./safety/core-limit";
export { type Lethality, type LethalityOptions, lethality } from "./safety/lethality";

// heat: heating, freezing, crust and surface coefficients

export {
  type AirCoefficient,
  type FlatPlateOptions,
  flatPlateCoefficient,
  type NaturalConvectionOptions,
  naturalConvectionCoefficient,
} from "./heat/air-coefficient";
export type { AirProperties } from "./heat/air-properties";
export { type CoreTime, type CoreTimeOptions, coreTime } from "./heat/core-time";
export {
  type CoreTimeClosedForm,
  type CoreTimeClosedFormOptions,
  coreTimeClosedForm,
} from "./heat/core-time-closed-form";
export { type CrustOptions, crustDepthMm, crustMin, crustSurfaceC } from "./heat/crust-depth";
export { type CrustStart, type CrustStartOptions, crustStart } from "./heat/crust-start";
export { CUTTING_LIMITS, type CuttingLimits } from "./heat/cutting-limits";
export { type EquivalentDimensionOptions, equivalentDimension } from "./heat/equivalent-dimension";
export { type FitProbeTrace, type FitProbeTraceOptions, fitProbeTrace } from "./heat/fit-probe-trace";
export { type FlashFreeze, type FlashFreezeOptions, flashFreeze } from "./heat/flash-freeze";
export {
  type FreezeToCut,
  type FreezeToCutOptions,
  type FreezeToCutRow,
  freezeToCut,
  type TimeRange,
} from "./heat/freeze-to-cut";
export {
  type FreezerCoefficients,
  type FreezerCoefficientsOptions,
  freezerCoefficients,
} from "./heat/freezer-coefficients";
export {
  type FreezingFront,
  type FreezingFrontOptions,
  freezingFront,
  freezingFrontC,
  freezingFrontMm,
} from "./heat/freezing-front";
export {
  type FreezingTime,
  type FreezingTimeOptions,
  freezingTimeClelandEarle,
} from "./heat/freezing-time-cleland-earle";
export { type FreezingTimePhamOptions, freezingTimePham } from "./heat/freezing-time-pham";
export {
  type FreezingShape,
  type FreezingTimePlankOptions,
  freezingTimePlank,
  type PlankConstants,
  plankConstants,
} from "./heat/freezing-time-plank";
export {
  type HeatColumn,
  type HeatProfile,
  type HeatRun,
  type TimeWhenOptions,
  timeWhen,
  valueAt,
} from "./heat/heat-run";
export { HEATED_CORE, type HeatedCore } from "./heat/heated-core";
export {
  type MetalBlockCoefficient,
  type MetalBlockOptions,
  metalBlockCoefficient,
} from "./heat/metal-block-coefficient";
export {
  type ProbeChannel,
  type ProbeTrace,
  type ReadProbeTraceOptions,
  readProbeTrace,
  type TraceGap,
} from "./heat/probe-trace";
export { type RadiationOptions, radiationCoefficient } from "./heat/radiation-coefficient";
export { type SemiInfiniteOptions, semiInfiniteSolution } from "./heat/semi-infinite-solution";
export {
  type BrickSeriesOptions,
  brickSeriesSolution,
  type SeriesSolution,
  type SeriesSolutionOptions,
  seriesSolution,
} from "./heat/series-solution";
export { type SeriesShape, type SeriesTerm, seriesTerms } from "./heat/series-terms";
export { type SimulatePieceOptions, simulatePiece } from "./heat/simulate-piece";
export { type SimulateSlabOptions, simulateSlab } from "./heat/simulate-slab";
export { type SlabOrPieceOptions, simulateSlabOrPiece } from "./heat/slab-or-piece";
export type { DryingLaw } from "./heat/surface-balance";
export type { AirPoint, Drying, Surroundings } from "./heat/surroundings";
export { type CounterOptions, type TemperToCut, temperToCut } from "./heat/temper-to-cut";
export { saturationPressurePa, type WetSurface, type WetSurfaceOptions, wetSurface } from "./heat/wet-surface";
export { type WorkableTime, workableTime } from "./heat/workable-time";

// yield: pickup, cook loss, retention, from bowl to plate

export { type BatchFlow, type BatchFlowOptions, batchFlow, type FlowStage, type FlowYield } from "./yield/batch-flow";
export { type CoatedPiece, type CoatPieceOptions, coatPiece, type LayerOnPiece } from "./yield/coat-piece";
export { type CoatingPlan, type CoatingPlanOptions, coatingPlan, type LayerPlan } from "./yield/coating-plan";
export { type CookChange, type CookChangeOptions, cookChange, type WaterAndFat } from "./yield/cook-change";
export { type CookYield, type CookYieldOptions, cookYield } from "./yield/cook-yield";
export {
  fitLoss,
  type LossFit,
  type LossPrediction,
  type LossPredictor,
  type LossTrial,
  predictLoss,
} from "./yield/fit-loss";
export { type OilUptake, type OilUptakeOptions, oilUptake } from "./yield/oil-uptake";
export {
  type ConvertPickupOptions,
  convertPickup,
  type Pickup,
  type PickupOptions,
  pickup,
} from "./yield/pickup";
export { type MeasuredPickup, type PickupWeighing, pickupFromTrials } from "./yield/pickup-from-trials";
export { type PieceSpread, type PieceSpreadOptions, pieceSpread } from "./yield/piece-spread";
export { type TrueRetentionOptions, trueRetention } from "./yield/true-retention";
export {
  type YieldBalance,
  type YieldFromCompositionOptions,
  yieldFromComposition,
} from "./yield/yield-from-composition";

// macros: what is in a piece, and how sure

export { type Energy, type EnergyBasis, type EnergyOfOptions, energyOf } from "./macros/energy-of";
export { type LabelLine, type LabelValues, labelEu, labelUs } from "./macros/label-values";
export type { MacroDoubt, PieceMacrosOptions, StageYield } from "./macros/macro-model";
export { type Amount, type MacroAmounts, type PieceMacros, pieceMacros } from "./macros/piece-macros";
export { type PieceMacrosMonteCarloOptions, pieceMacrosMonteCarlo } from "./macros/piece-macros-monte-carlo";
export { type EuLabelNutrient, type RoundLabelEuOptions, roundLabelEu } from "./macros/round-label-eu";
export { type RoundLabelUsOptions, roundLabelUs, type UsLabelNutrient } from "./macros/round-label-us";

// food: ingredients, formulas, thermal properties

export { type AllergenMark, EU_ALLERGENS, type EuAllergen, US_ALLERGENS, type UsAllergen } from "./food/allergens";
export { type Blend, type BlendPart, blend } from "./food/blend";
export { type ComponentProperties, choiOkos, type FoodComponent } from "./food/choi-okos";
export { COMPOSITION_FIELDS, type Composition, checkComposition } from "./food/composition";
export { compositionOf } from "./food/composition-of";
export { type ConductivityModel, type MixConductivityOptions, mixConductivity } from "./food/conductivity";
export { conductivityAt } from "./food/conductivity-curve";
export { conductivityLevy, conductivityMaxwellEucken, type TwoPhases } from "./food/conductivity-two-phase";
export { enthalpyAt, temperatureFromEnthalpy } from "./food/enthalpy";
export { type EnthalpyChenOptions, enthalpyChen } from "./food/enthalpy-chen";
export {
  type CoatingLayer,
  type FoodClass,
  type Formula,
  type FormulaLine,
  formulaSchema,
  type LayerKind,
  type PickupBasis,
} from "./food/formula";
export { type FormulaAllergens, formulaAllergens, type GatheredAllergen } from "./food/formula-allergens";
export { type FormulaTotals, formulaComposition, formulaTotals, type LayerBlend } from "./food/formula-totals";
export { type FreezingPoint, type FreezingPointOptions, freezingPoint } from "./food/freezing-point";
export { gramsOf, type MeasuredFood, type MeasuredMass } from "./food/grams-of";
export { iceFraction, iceFractionTchigeov, type TchigeovOptions } from "./food/ice-fraction";
export { type ForeignColumn, type ImportedFoods, type ImportFoodsOptions, importFoods } from "./food/import-foods";
export { type EnergyFactors, type HouseholdWeight, type Ingredient, ingredientSchema } from "./food/ingredient";
export { type IngredientFromFoodOptions, ingredientFromFood } from "./food/ingredient-from-food";
export { type IngredientFromLabelOptions, ingredientFromLabel, type LabelPrint } from "./food/ingredient-from-label";
export { ingredientOf } from "./food/ingredient-of";
export { type MixDensityOptions, mixDensity } from "./food/mix-density";
export { NUTRIENT_LABELS, NUTRIENT_NAMES, type NutrientName, type Nutrients } from "./food/nutrients";
export { parseFormula } from "./food/parse-formula";
export { INGREDIENT_COLUMNS, parseIngredients } from "./food/parse-ingredients";
export { SR28_REFUSED_WEIGHTS, type Sr28Food } from "./food/parse-sr28";
export { proximateSumG } from "./food/proximate-sum";
export { type ScaledFormula, type ScaledLine, type ScaleTo, scaleFormula } from "./food/scale-formula";
export { type FoundFood, searchFoods } from "./food/search-foods";
export {
  type ThermalModel,
  type ThermalProperties,
  type ThermalPropertiesOptions,
  thermalProperties,
} from "./food/thermal-properties";
export type { WeighedLine } from "./food/weigh-lines";
export { type WaterToAdd, waterToAdd, withMoisture } from "./food/with-moisture";

// pans: sizes, slab thickness, the cut, the piece

export { type Cut, type CutGrid, type CutGridOptions, cutGrid } from "./pan/cut-grid";
export { type Evenness, evenness } from "./pan/evenness";
export { checkPan, type Pan, type RectanglePan, type RoundPan, type WellPan } from "./pan/pan";
export { PAN_PRESETS, panPreset } from "./pan/pan-preset";
export { faceAreaMm2, panVolumeMl } from "./pan/pan-volume";
export { type Piece, type PieceOptions, pieceOf } from "./pan/piece";
export { readPans } from "./pan/read-pans";
export { type ScaleBatchOptions, type ScaledBatch, scaleBatch } from "./pan/scale-batch";
export { type SlabMassOptions, slabMassG } from "./pan/slab-mass";
export { type Slab, type SlabThicknessOptions, slabThickness } from "./pan/slab-thickness";

// figures, as plain data

export { batchFlowFigure } from "./figures/batch-flow-figure";
export { clockFigure } from "./figures/clock-figure";
export { type CoatingThicknessFigureOptions, coatingThicknessFigure } from "./figures/coating-thickness-figure";
export { compareVariantsFigure, variantDifferencesFigure } from "./figures/compare-variants-figure";
export { crispTimeFigure } from "./figures/crisp-time-figure";
export type { Figure } from "./figures/figure";
export { fitInfluenceFigure } from "./figures/fit-influence-figure";
export { fitNormalFigure } from "./figures/fit-normal-figure";
export { fitResidualFigure } from "./figures/fit-residual-figure";
export { freezeToCutFigure } from "./figures/freeze-to-cut-figure";
export { macroDoubtFigure } from "./figures/macro-doubt-figure";
export { macrosByVariantFigure } from "./figures/macros-by-variant-figure";
export { MARKERS, PALETTE, translucent } from "./figures/palette";
export { type ProfileFigureOptions, profileFigure } from "./figures/profile-figure";
export { reheatYieldFigure } from "./figures/reheat-yield-figure";
export { successCoverageFigure } from "./figures/success-coverage-figure";
export { successFigure } from "./figures/success-figure";
export { svgOf } from "./figures/svg-of";
export {
  type LoggedReadings,
  type TemperatureMark,
  type TemperatureTimeOptions,
  temperatureTimeFigure,
} from "./figures/temperature-time-figure";
export { thicknessByPanFigure } from "./figures/thickness-by-pan-figure";
export { type WindowFigureOptions, windowFigure } from "./figures/window-figure";
export { windowMapFigure } from "./figures/window-map-figure";
export { type YieldLossFigureOptions, yieldLossFigure } from "./figures/yield-loss-figure";

// tables and reports, as plain data

export { allergenTable } from "./tables/allergen-table";
export { batchFlowTable } from "./tables/batch-flow-table";
export { coatingPlanTable } from "./tables/coating-plan-table";
export { compareVariantsTable, variantDifferencesTable } from "./tables/compare-variants-table";
export { comparisonText } from "./tables/comparison-text";
export { crispTimeTable } from "./tables/crisp-time-table";
export { decisionTable } from "./tables/decision-table";
export { decisionText } from "./tables/decision-text";
export { fitComparisonTable } from "./tables/fit-comparison-table";
export { fitReport } from "./tables/fit-report";
export { fitTable } from "./tables/fit-table";
export { foodTable } from "./tables/food-table";
export { formatCell } from "./tables/format-cell";
export { formulaTable } from "./tables/formula-table";
export { frameOf } from "./tables/frame-of";
export { freezeToCutTable } from "./tables/freeze-to-cut-table";
export { labelTable } from "./tables/label-table";
export { macroTable } from "./tables/macro-table";
export type { Column, Table } from "./tables/table";
export { tableHtml } from "./tables/table-html";
export { tableOf } from "./tables/table-of";
export { tableText } from "./tables/table-text";
export { type CoreTimeRow, temperatureCoreTable } from "./tables/temperature-core-table";
export { windowConstantsTable } from "./tables/window-constants-table";
export { windowPansTable } from "./tables/window-pans-table";
export { windowTable } from "./tables/window-table";

// fits: curves, times seen at checks, doubt, choice

export { type Bootstrap, type BootstrapOptions, type BootstrapParameter, bootstrapCurve } from "./fit/bootstrap-curve";
export { type CensoredProbability, censoredProbability } from "./fit/censored-probability";
export { type CensoredQuantile, type CensoredQuantileOptions, censoredQuantile } from "./fit/censored-quantile";
export { type ComparedFit, compareFits, type FitComparison } from "./fit/compare-fits";
export { compareNested, type NestedTest } from "./fit/compare-nested";
export { compareSlabTimeForms, type SlabTimeComparison } from "./fit/compare-slab-time-forms";
export { type CurveModel, type CurveModelOptions, curveModel, type ParameterRange } from "./fit/curve-model";
export { type Curves, curves } from "./fit/curves";
export { type Derived, deltaMethod } from "./fit/delta-method";
export type { Covariates } from "./fit/design-columns";
export type { Estimates, Fit, ParameterEstimate, Values } from "./fit/fit";
export { type CensoredTimesFit, type FitCensoredTimesOptions, fitCensoredTimes } from "./fit/fit-censored-times";
export { type CurveData, type CurveFit, type FitCurveOptions, fitCurve } from "./fit/fit-curve";
export { type FitLinearOptions, fitLinear, type LinearFit } from "./fit/fit-linear";
export { type FitOrderedScoresOptions, fitOrderedScores, type OrderedScoresFit } from "./fit/fit-ordered-scores";
export { type FitPolynomialOptions, fitPolynomial, type PolynomialFit } from "./fit/fit-polynomial";
export { fitRobustCurve, type RobustCurveFit, type RobustLoss } from "./fit/fit-robust-curve";
export { fitSlabTime, type SlabTimeFit, type SlabTimeOptions, type SlabTimeScatter } from "./fit/fit-slab-time";
export { type FitYesNoOptions, fitYesNo, type YesNoFit } from "./fit/fit-yes-no";
export { type GroupedModelOptions, type GroupedPoint, groupedModel } from "./fit/grouped-model";
export { type Influence, influence, type PointInfluence } from "./fit/influence";
export { type LackOfFit, lackOfFit } from "./fit/lack-of-fit";
export { type LeastSquaresOptions, leastSquares } from "./fit/least-squares";
export type { ParameterSetting } from "./fit/named-problem";
export { type NormalPrior, type PosteriorMode, type PosteriorModeOptions, posteriorMode } from "./fit/posterior-mode";
export { type Prediction, predictCurve, predictCurveAt } from "./fit/predict-curve";
export { type LinearPrediction, predictLinear } from "./fit/predict-linear";
export { type OrderedScoresPrediction, predictOrderedScores } from "./fit/predict-ordered-scores";
export { predictPolynomial } from "./fit/predict-polynomial";
export { predictSlabTime, type SlabTimePrediction } from "./fit/predict-slab-time";
export { predictYesNo, type YesNoPrediction } from "./fit/predict-yes-no";
export { type ProfileInterval, profileInterval } from "./fit/profile-interval";
export { type SerialPattern, serialPattern } from "./fit/serial-pattern";
export { type SetpointModelOptions, type SetpointPoint, setpointModel } from "./fit/setpoint-model";
export type { SlabTimeForm } from "./fit/slab-time-model";
export type { TimeDistributionName } from "./fit/time-distribution";
export { type ValueAtShare, type ValueAtShareOptions, valueAtShare } from "./fit/value-at-share";

// statistics: distributions, uncertainty, random draws from a seed

export { chiSquaredCdf, chiSquaredPValue, chiSquaredQuantile } from "./statistics/chi-squared-distribution";
export { fCdf, fPValue, fQuantile } from "./statistics/f-distribution";
export { type MonteCarloOptions, type MonteCarloResult, monteCarlo } from "./statistics/monte-carlo";
export { noncentralFCdf, noncentralTCdf } from "./statistics/noncentral-distributions";
export { normalCdf, normalDensity, normalQuantile } from "./statistics/normal-distribution";
export { type Propagated, type PropagateOptions, propagateUncertainty } from "./statistics/propagate-uncertainty";
export { type SeededRandom, seededRandom } from "./statistics/seeded-random";
export { studentTCdf, studentTPValue, studentTQuantile } from "./statistics/student-t-distribution";
export { type SymmetricEigen, symmetricEigen } from "./statistics/symmetric-eigen";
export {
  powerOfTwoMeans,
  type SeveralMeans,
  type TwoMeans,
  type TwoShares,
  trialsForSeveralMeans,
  trialsForTwoMeans,
  trialsForTwoShares,
} from "./statistics/trials-needed";
export { rectangularInput, triangularInput, type UncertainInput } from "./statistics/uncertain-input";

// units: what a cook types, converted once

export { type ColumnUnit, columnUnit } from "./units/column-unit";
export { type ConvertUnitOptions, convertUnit } from "./units/convert-unit";
export { inchFraction } from "./units/inch-fraction";
export {
  celsius,
  grams,
  kelvinDifference,
  kilocalories,
  millilitres,
  millimetres,
  minutes,
} from "./units/kitchen-units";
export { parseQuantity, type Quantity } from "./units/parse-quantity";
export type { ColumnPlan, ColumnPlans, ReadRecords } from "./units/read-records";
export { KITCHEN_UNIT, UNITS, type Unit, type UnitKind } from "./units/unit-table";
