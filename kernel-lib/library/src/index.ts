// food
export { type AllergenMark, EU_ALLERGENS, type EuAllergen, US_ALLERGENS, type UsAllergen } from "./food/allergens";
export { COMPOSITION_FIELDS, type Composition, checkComposition } from "./food/composition";
export { type Blend, type BlendPart, blend } from "./food/blend";
export { compositionOf } from "./food/composition-of";
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
export { gramsOf, type MeasuredFood, type MeasuredMass } from "./food/grams-of";
export { type EnergyFactors, type HouseholdWeight, type Ingredient, ingredientSchema } from "./food/ingredient";
export { ingredientOf } from "./food/ingredient-of";
export { NUTRIENT_LABELS, NUTRIENT_NAMES, type NutrientName, type Nutrients } from "./food/nutrients";
export { parseFormula } from "./food/parse-formula";
export { INGREDIENT_COLUMNS, parseIngredients } from "./food/parse-ingredients";
export { SR28_REFUSED_WEIGHTS, type Sr28Food } from "./food/parse-sr28";
export { proximateSumG } from "./food/proximate-sum";
export { type WeighedLine } from "./food/weigh-lines";
export { loadFoods } from "./notebook/load-foods";

// units: what a cook types, converted once
export { type ColumnUnit, columnUnit } from "./units/column-unit";
export { type ConvertUnitOptions, convertUnit } from "./units/convert-unit";
export { inchFraction } from "./units/inch-fraction";
export { celsius, grams, kelvinDifference, kilocalories, millilitres, millimetres, minutes } from "./units/kitchen-units";
export { parseQuantity, type Quantity } from "./units/parse-quantity";
export { KITCHEN_UNIT, UNITS, type Unit, type UnitKind } from "./units/unit-table";

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

// thermal properties of food
export { type ComponentProperties, choiOkos, type FoodComponent } from "./food/choi-okos";
export { type ConductivityModel, type MixConductivityOptions, mixConductivity } from "./food/conductivity";
export { conductivityAt } from "./food/conductivity-curve";
export { conductivityLevy, conductivityMaxwellEucken, type TwoPhases } from "./food/conductivity-two-phase";
export { enthalpyAt, temperatureFromEnthalpy } from "./food/enthalpy";
export { type EnthalpyChenOptions, enthalpyChen } from "./food/enthalpy-chen";
export { type FreezingPoint, type FreezingPointOptions, freezingPoint } from "./food/freezing-point";
export { iceFraction, iceFractionTchigeov, type TchigeovOptions } from "./food/ice-fraction";
export { type MixDensityOptions, mixDensity } from "./food/mix-density";
export {
  type ThermalModel,
  type ThermalProperties,
  type ThermalPropertiesOptions,
  thermalProperties,
} from "./food/thermal-properties";
