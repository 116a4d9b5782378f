// food

// figures and tables as data
export type { Figure } from "./figures/figure";
export { MARKERS, PALETTE, translucent } from "./figures/palette";
// fits: least squares, curves, the slab time
export { type ComparedFit, compareFits, type FitComparison } from "./fit/compare-fits";
export { compareSlabTimeForms, type SlabTimeComparison } from "./fit/compare-slab-time-forms";
export { type CurveModel, type CurveModelOptions, curveModel, type ParameterRange } from "./fit/curve-model";
export { type Derived, deltaMethod } from "./fit/delta-method";
export type { Estimates, Fit, ParameterEstimate, Values } from "./fit/fit";
export { type CurveData, type CurveFit, type FitCurveOptions, fitCurve } from "./fit/fit-curve";
export { fitSlabTime, type SlabTimeFit, type SlabTimeOptions } from "./fit/fit-slab-time";
export { type LeastSquaresOptions, leastSquares } from "./fit/least-squares";
export type { ParameterSetting } from "./fit/named-problem";
export { type NormalPrior, type PosteriorMode, type PosteriorModeOptions, posteriorMode } from "./fit/posterior-mode";
export { type Prediction, predictCurve, predictCurveAt } from "./fit/predict-curve";
export { predictSlabTime, type SlabTimePrediction } from "./fit/predict-slab-time";
export type { SlabTimeForm } from "./fit/slab-time-model";
export { type AllergenMark, EU_ALLERGENS, type EuAllergen, US_ALLERGENS, type UsAllergen } from "./food/allergens";
export { type Blend, type BlendPart, blend } from "./food/blend";
// thermal properties of food
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
export { type FormulaTotals, formulaComposition, formulaTotals, type LayerBlend } from "./food/formula-totals";
export { type FreezingPoint, type FreezingPointOptions, freezingPoint } from "./food/freezing-point";
export { gramsOf, type MeasuredFood, type MeasuredMass } from "./food/grams-of";
export { iceFraction, iceFractionTchigeov, type TchigeovOptions } from "./food/ice-fraction";
export { type EnergyFactors, type HouseholdWeight, type Ingredient, ingredientSchema } from "./food/ingredient";
export { ingredientOf } from "./food/ingredient-of";
export { type MixDensityOptions, mixDensity } from "./food/mix-density";
export { NUTRIENT_LABELS, NUTRIENT_NAMES, type NutrientName, type Nutrients } from "./food/nutrients";
export { parseFormula } from "./food/parse-formula";
export { INGREDIENT_COLUMNS, parseIngredients } from "./food/parse-ingredients";
export { SR28_REFUSED_WEIGHTS, type Sr28Food } from "./food/parse-sr28";
export { proximateSumG } from "./food/proximate-sum";
export {
  type ThermalModel,
  type ThermalProperties,
  type ThermalPropertiesOptions,
  thermalProperties,
} from "./food/thermal-properties";
export type { WeighedLine } from "./food/weigh-lines";
export { loadFoods } from "./notebook/load-foods";
// the notebook: files in, figures out
export { loadKitchen } from "./notebook/load-kitchen";
export { type Showable, show } from "./notebook/show";
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
// statistics: distributions, random draws from a seed
export { chiSquaredCdf, chiSquaredPValue, chiSquaredQuantile } from "./statistics/chi-squared-distribution";
export { fCdf, fPValue, fQuantile } from "./statistics/f-distribution";
export { normalCdf, normalDensity, normalQuantile } from "./statistics/normal-distribution";
export { type SeededRandom, seededRandom } from "./statistics/seeded-random";
export { studentTCdf, studentTPValue, studentTQuantile } from "./statistics/student-t-distribution";
export { type SymmetricEigen, symmetricEigen } from "./statistics/symmetric-eigen";
export { formatCell } from "./tables/format-cell";
export { frameOf } from "./tables/frame-of";
export type { Column, Table } from "./tables/table";
export { tableHtml } from "./tables/table-html";
export { tableText } from "./tables/table-text";
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
export { readTrials, type Trial, TrialSchema } from "./trials/trial";
export { readVariants, type Variant, VariantSchema } from "./trials/variant";
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

// safety: limits that outrank crispness
export { type CoreLimit, coreLimit } from "./safety/core-limit";
export { type Lethality, type LethalityOptions, lethality } from "./safety/lethality";
