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

export { type CalibratedConstant, type CrispCalibration, calibrateCrisp } from "./crisp/calibration/calibrate-crisp";
export type { CrispObservation } from "./crisp/calibration/crisp-observation";
export { type CrispPrior, type CrispPriorsOptions, crispPriors } from "./crisp/calibration/crisp-priors";
export type { CalibrateCrispOptions, CrispNoise } from "./crisp/calibration/crisp-residuals";
export { type ClocksOverTime, type ClocksOverTimeOptions, clocksOverTime } from "./crisp/clocks/clocks-over-time";
export { type LargestThickness, largestThickness } from "./crisp/clocks/largest-thickness";
export type { SuccessOverTime } from "./crisp/window/success-over-time";
export {
  type CrispWindow,
  type Moment,
  type RecommendedTime,
  type WindowAtOptions,
  windowAt,
} from "./crisp/window/window-at";
export {
  type WindowCoverage,
  type WindowCoverageOptions,
  type WindowCoverageRow,
  windowCoverage,
} from "./crisp/window/window-coverage";
export {
  type WindowMap,
  type WindowMapOptions,
  windowMapOverSetpoint,
  windowMapOverTime,
} from "./crisp/window/window-map";
export {
  type WindowOverThickness,
  type WindowOverThicknessOptions,
  windowOverThickness,
} from "./crisp/window/window-over-thickness";
export type { SettledSetting, WindowSetting } from "./crisp/window/window-setting";

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
} from "./heat/coefficient/air-coefficient";
export type { AirProperties } from "./heat/coefficient/air-properties";
export {
  type MetalBlockCoefficient,
  type MetalBlockOptions,
  metalBlockCoefficient,
} from "./heat/coefficient/metal-block-coefficient";
export { type RadiationOptions, radiationCoefficient } from "./heat/coefficient/radiation-coefficient";
export {
  saturationPressurePa,
  type WetSurface,
  type WetSurfaceOptions,
  wetSurface,
} from "./heat/coefficient/wet-surface";
export {
  type CoreTimeClosedForm,
  type CoreTimeClosedFormOptions,
  coreTimeClosedForm,
} from "./heat/formulas/core-time-closed-form";
export { type CrustOptions, crustDepthMm, crustMin, crustSurfaceC } from "./heat/formulas/crust-depth";
export { type CrustStart, type CrustStartOptions, crustStart } from "./heat/formulas/crust-start";
export { type EquivalentDimensionOptions, equivalentDimension } from "./heat/formulas/equivalent-dimension";
export {
  type FreezingFront,
  type FreezingFrontOptions,
  freezingFront,
  freezingFrontC,
  freezingFrontMm,
} from "./heat/formulas/freezing-front";
export {
  type FreezingTime,
  type FreezingTimeOptions,
  freezingTimeClelandEarle,
} from "./heat/formulas/freezing-time-cleland-earle";
export { type FreezingTimePhamOptions, freezingTimePham } from "./heat/formulas/freezing-time-pham";
export {
  type FreezingShape,
  type FreezingTimePlankOptions,
  freezingTimePlank,
  type PlankConstants,
  plankConstants,
} from "./heat/formulas/freezing-time-plank";
export { type SemiInfiniteOptions, semiInfiniteSolution } from "./heat/formulas/semi-infinite-solution";
export {
  type BrickSeriesOptions,
  brickSeriesSolution,
  type SeriesSolution,
  type SeriesSolutionOptions,
  seriesSolution,
} from "./heat/formulas/series-solution";
export { type SeriesShape, type SeriesTerm, seriesTerms } from "./heat/formulas/series-terms";
export { CUTTING_LIMITS, type CuttingLimits } from "./heat/freezing/cutting-limits";
export { type FlashFreeze, type FlashFreezeOptions, flashFreeze } from "./heat/freezing/flash-freeze";
export {
  type FreezeToCut,
  type FreezeToCutOptions,
  type FreezeToCutRow,
  freezeToCut,
  type TimeRange,
} from "./heat/freezing/freeze-to-cut";
export {
  type FreezerCoefficients,
  type FreezerCoefficientsOptions,
  freezerCoefficients,
} from "./heat/freezing/freezer-coefficients";
export { type CounterOptions, type TemperToCut, temperToCut } from "./heat/freezing/temper-to-cut";
export { type WorkableTime, workableTime } from "./heat/freezing/workable-time";
export { type FitProbeTrace, type FitProbeTraceOptions, fitProbeTrace } from "./heat/probe/fit-probe-trace";
export {
  type ProbeChannel,
  type ProbeTrace,
  type ReadProbeTraceOptions,
  readProbeTrace,
  type TraceGap,
} from "./heat/probe/probe-trace";
export { type CoreTime, type CoreTimeOptions, coreTime } from "./heat/solver/core-time";
export {
  type HeatColumn,
  type HeatProfile,
  type HeatRun,
  type TimeWhenOptions,
  timeWhen,
  valueAt,
} from "./heat/solver/heat-run";
export { HEATED_CORE, type HeatedCore } from "./heat/solver/heated-core";
export { type SimulatePieceOptions, simulatePiece } from "./heat/solver/simulate-piece";
export { type SimulateSlabOptions, simulateSlab } from "./heat/solver/simulate-slab";
export { type SlabOrPieceOptions, simulateSlabOrPiece } from "./heat/solver/slab-or-piece";
export type { DryingLaw } from "./heat/solver/surface-balance";
export type { AirPoint, Drying, Surroundings } from "./heat/solver/surroundings";

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

export { COMPOSITION_FIELDS, type Composition, checkComposition } from "./food/composition/composition";
export { compositionOf } from "./food/composition/composition-of";
export { proximateSumG } from "./food/composition/proximate-sum";
export { type WaterToAdd, waterToAdd, withMoisture } from "./food/composition/with-moisture";
export { type Blend, type BlendPart, blend } from "./food/formula/blend";
export {
  type CoatingLayer,
  type FoodClass,
  type Formula,
  type FormulaLine,
  formulaSchema,
  type LayerKind,
  type PickupBasis,
} from "./food/formula/formula";
export { type FormulaAllergens, formulaAllergens, type GatheredAllergen } from "./food/formula/formula-allergens";
export { type FormulaTotals, formulaComposition, formulaTotals, type LayerBlend } from "./food/formula/formula-totals";
export { gramsOf, type MeasuredFood, type MeasuredMass } from "./food/formula/grams-of";
export { parseFormula } from "./food/formula/parse-formula";
export { type ScaledFormula, type ScaledLine, type ScaleTo, scaleFormula } from "./food/formula/scale-formula";
export type { WeighedLine } from "./food/formula/weigh-lines";
export {
  type AllergenMark,
  EU_ALLERGENS,
  type EuAllergen,
  US_ALLERGENS,
  type UsAllergen,
} from "./food/ingredient/allergens";
export {
  type ForeignColumn,
  type ImportedFoods,
  type ImportFoodsOptions,
  importFoods,
} from "./food/ingredient/import-foods";
export {
  type EnergyFactors,
  type HouseholdWeight,
  type Ingredient,
  ingredientSchema,
} from "./food/ingredient/ingredient";
export { type IngredientFromFoodOptions, ingredientFromFood } from "./food/ingredient/ingredient-from-food";
export {
  type IngredientFromLabelOptions,
  ingredientFromLabel,
  type LabelPrint,
} from "./food/ingredient/ingredient-from-label";
export { ingredientOf } from "./food/ingredient/ingredient-of";
export { NUTRIENT_LABELS, NUTRIENT_NAMES, type NutrientName, type Nutrients } from "./food/ingredient/nutrients";
export { INGREDIENT_COLUMNS, parseIngredients } from "./food/ingredient/parse-ingredients";
export { SR28_REFUSED_WEIGHTS, type Sr28Food } from "./food/ingredient/parse-sr28";
export { type FoundFood, searchFoods } from "./food/ingredient/search-foods";
export { type ComponentProperties, choiOkos, type FoodComponent } from "./food/thermal/choi-okos";
export { type ConductivityModel, type MixConductivityOptions, mixConductivity } from "./food/thermal/conductivity";
export { conductivityAt } from "./food/thermal/conductivity-curve";
export { conductivityLevy, conductivityMaxwellEucken, type TwoPhases } from "./food/thermal/conductivity-two-phase";
export { enthalpyAt, temperatureFromEnthalpy } from "./food/thermal/enthalpy";
export { type EnthalpyChenOptions, enthalpyChen } from "./food/thermal/enthalpy-chen";
export { type FreezingPoint, type FreezingPointOptions, freezingPoint } from "./food/thermal/freezing-point";
export { iceFraction, iceFractionTchigeov, type TchigeovOptions } from "./food/thermal/ice-fraction";
export { type MixDensityOptions, mixDensity } from "./food/thermal/mix-density";
export {
  type ThermalModel,
  type ThermalProperties,
  type ThermalPropertiesOptions,
  thermalProperties,
} from "./food/thermal/thermal-properties";

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

export { compareVariantsFigure, variantDifferencesFigure } from "./views/advice/compare-variants-figure";
export { thicknessByPanFigure } from "./views/advice/thickness-by-pan-figure";
export { clockFigure } from "./views/crisp/clock-figure";
export { crispTimeFigure } from "./views/crisp/crisp-time-figure";
export { successCoverageFigure } from "./views/crisp/success-coverage-figure";
export { successFigure } from "./views/crisp/success-figure";
export { type WindowFigureOptions, windowFigure } from "./views/crisp/window-figure";
export { windowMapFigure } from "./views/crisp/window-map-figure";
export type { Figure } from "./views/figure/figure";
export { MARKERS, PALETTE, translucent } from "./views/figure/palette";
export { svgOf } from "./views/figure/svg-of";
export { fitInfluenceFigure } from "./views/fit/fit-influence-figure";
export { fitNormalFigure } from "./views/fit/fit-normal-figure";
export { fitResidualFigure } from "./views/fit/fit-residual-figure";
export { type ProfileFigureOptions, profileFigure } from "./views/fit/profile-figure";
export { macroDoubtFigure } from "./views/food/macro-doubt-figure";
export { macrosByVariantFigure } from "./views/food/macros-by-variant-figure";
export { freezeToCutFigure } from "./views/heat/freeze-to-cut-figure";
export {
  type LoggedReadings,
  type TemperatureMark,
  type TemperatureTimeOptions,
  temperatureTimeFigure,
} from "./views/heat/temperature-time-figure";
export { batchFlowFigure } from "./views/yield/batch-flow-figure";
export { type CoatingThicknessFigureOptions, coatingThicknessFigure } from "./views/yield/coating-thickness-figure";
export { reheatYieldFigure } from "./views/yield/reheat-yield-figure";
export { type YieldLossFigureOptions, yieldLossFigure } from "./views/yield/yield-loss-figure";

// tables and reports, as plain data

export { compareVariantsTable, variantDifferencesTable } from "./views/advice/compare-variants-table";
export { decisionTable } from "./views/advice/decision-table";
export { decisionText } from "./views/advice/decision-text";
export { windowPansTable } from "./views/advice/window-pans-table";
export { crispTimeTable } from "./views/crisp/crisp-time-table";
export { windowConstantsTable } from "./views/crisp/window-constants-table";
export { windowTable } from "./views/crisp/window-table";
export { comparisonText } from "./views/fit/comparison-text";
export { fitComparisonTable } from "./views/fit/fit-comparison-table";
export { fitReport } from "./views/fit/fit-report";
export { fitTable } from "./views/fit/fit-table";
export { allergenTable } from "./views/food/allergen-table";
export { foodTable } from "./views/food/food-table";
export { formulaTable } from "./views/food/formula-table";
export { labelTable } from "./views/food/label-table";
export { macroTable } from "./views/food/macro-table";
export { freezeToCutTable } from "./views/heat/freeze-to-cut-table";
export { type CoreTimeRow, temperatureCoreTable } from "./views/heat/temperature-core-table";
export { formatCell } from "./views/table/format-cell";
export { frameOf } from "./views/table/frame-of";
export type { Column, Table } from "./views/table/table";
export { tableHtml } from "./views/table/table-html";
export { tableOf } from "./views/table/table-of";
export { tableText } from "./views/table/table-text";
export { batchFlowTable } from "./views/yield/batch-flow-table";
export { coatingPlanTable } from "./views/yield/coating-plan-table";

// fits: curves, times seen at checks, doubt, choice

export { type ComparedFit, compareFits, type FitComparison } from "./fit/choice/compare-fits";
export { compareNested, type NestedTest } from "./fit/choice/compare-nested";
export { compareSlabTimeForms, type SlabTimeComparison } from "./fit/choice/compare-slab-time-forms";
export { type CurveData, type CurveFit, type FitCurveOptions, fitCurve } from "./fit/curve/fit-curve";
export { type FitLinearOptions, fitLinear, type LinearFit } from "./fit/curve/fit-linear";
export { type FitPolynomialOptions, fitPolynomial, type PolynomialFit } from "./fit/curve/fit-polynomial";
export { fitRobustCurve, type RobustCurveFit, type RobustLoss } from "./fit/curve/fit-robust-curve";
export { fitSlabTime, type SlabTimeFit, type SlabTimeOptions, type SlabTimeScatter } from "./fit/curve/fit-slab-time";
export { type Prediction, predictCurve, predictCurveAt } from "./fit/curve/predict-curve";
export { type LinearPrediction, predictLinear } from "./fit/curve/predict-linear";
export { predictPolynomial } from "./fit/curve/predict-polynomial";
export { predictSlabTime, type SlabTimePrediction } from "./fit/curve/predict-slab-time";
export {
  type Bootstrap,
  type BootstrapOptions,
  type BootstrapParameter,
  bootstrapCurve,
} from "./fit/doubt/bootstrap-curve";
export { type Derived, deltaMethod } from "./fit/doubt/delta-method";
export { type Influence, influence, type PointInfluence } from "./fit/doubt/influence";
export { type LackOfFit, lackOfFit } from "./fit/doubt/lack-of-fit";
export { type ProfileInterval, profileInterval } from "./fit/doubt/profile-interval";
export { type SerialPattern, serialPattern } from "./fit/doubt/serial-pattern";
export type { Estimates, Fit, ParameterEstimate, Values } from "./fit/fit";
export { type LeastSquaresOptions, leastSquares } from "./fit/least-squares/least-squares";
export type { ParameterSetting } from "./fit/least-squares/named-problem";
export { type CurveModel, type CurveModelOptions, curveModel, type ParameterRange } from "./fit/models/curve-model";
export { type Curves, curves } from "./fit/models/curves";
export type { Covariates } from "./fit/models/design-columns";
export { type GroupedModelOptions, type GroupedPoint, groupedModel } from "./fit/models/grouped-model";
export { type SetpointModelOptions, type SetpointPoint, setpointModel } from "./fit/models/setpoint-model";
export type { SlabTimeForm } from "./fit/models/slab-time-model";
export { type CensoredProbability, censoredProbability } from "./fit/outcomes/censored-probability";
export {
  type CensoredQuantile,
  type CensoredQuantileOptions,
  censoredQuantile,
} from "./fit/outcomes/censored-quantile";
export {
  type CensoredTimesFit,
  type FitCensoredTimesOptions,
  fitCensoredTimes,
} from "./fit/outcomes/fit-censored-times";
export {
  type FitOrderedScoresOptions,
  fitOrderedScores,
  type OrderedScoresFit,
} from "./fit/outcomes/fit-ordered-scores";
export { type FitYesNoOptions, fitYesNo, type YesNoFit } from "./fit/outcomes/fit-yes-no";
export {
  type NormalPrior,
  type PosteriorMode,
  type PosteriorModeOptions,
  posteriorMode,
} from "./fit/outcomes/posterior-mode";
export { type OrderedScoresPrediction, predictOrderedScores } from "./fit/outcomes/predict-ordered-scores";
export { predictYesNo, type YesNoPrediction } from "./fit/outcomes/predict-yes-no";
export type { TimeDistributionName } from "./fit/outcomes/time-distribution";
export { type ValueAtShare, type ValueAtShareOptions, valueAtShare } from "./fit/outcomes/value-at-share";

// statistics: distributions, uncertainty, random draws from a seed

export {
  chiSquaredCdf,
  chiSquaredPValue,
  chiSquaredQuantile,
} from "./statistics/distributions/chi-squared-distribution";
export { fCdf, fPValue, fQuantile } from "./statistics/distributions/f-distribution";
export { noncentralFCdf, noncentralTCdf } from "./statistics/distributions/noncentral-distributions";
export { normalCdf, normalDensity, normalQuantile } from "./statistics/distributions/normal-distribution";
export { studentTCdf, studentTPValue, studentTQuantile } from "./statistics/distributions/student-t-distribution";
export { type SymmetricEigen, symmetricEigen } from "./statistics/linear-algebra/symmetric-eigen";
export { type MonteCarloOptions, type MonteCarloResult, monteCarlo } from "./statistics/random/monte-carlo";
export { type SeededRandom, seededRandom } from "./statistics/random/seeded-random";
export {
  powerOfTwoMeans,
  type SeveralMeans,
  type TwoMeans,
  type TwoShares,
  trialsForSeveralMeans,
  trialsForTwoMeans,
  trialsForTwoShares,
} from "./statistics/trials-needed";
export {
  type Propagated,
  type PropagateOptions,
  propagateUncertainty,
} from "./statistics/uncertainty/propagate-uncertainty";
export { rectangularInput, triangularInput, type UncertainInput } from "./statistics/uncertainty/uncertain-input";

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
