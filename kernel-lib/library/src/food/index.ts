// ingredients: foods, labels, allergens, nutrients

export type { AllergenMark, EuAllergen, UsAllergen } from "./ingredient/allergens";
export {
  type ForeignColumn,
  type ImportedFoods,
  type ImportFoodsOptions,
  importFoods,
} from "./ingredient/import-foods";
export {
  type EnergyFactors,
  type HouseholdWeight,
  INGREDIENT_CLASSES,
  type Ingredient,
  type IngredientClass,
  type RawClass,
} from "./ingredient/ingredient";
export { CLASS_COLUMN, INGREDIENT_COLUMNS } from "./ingredient/ingredient-columns";
export { type IngredientFromFoodOptions, ingredientFromFood } from "./ingredient/ingredient-from-food";
export {
  type IngredientFromLabelOptions,
  ingredientFromLabel,
  type LabelPrint,
} from "./ingredient/ingredient-from-label";
export { ingredientOf } from "./ingredient/ingredient-of";
export { NUTRIENT_LABELS, NUTRIENT_NAMES, type NutrientName, type Nutrients } from "./ingredient/nutrients";
export { parseIngredients } from "./ingredient/parse-ingredients";
export type { Sr28Food } from "./ingredient/parse-sr28";
export { type FoundFood, searchFoods } from "./ingredient/search-foods";

// formulas: what goes in, weighed, scaled, added up

export { type Blend, type BlendPart, blend } from "./formula/blend";
export type { CookedPot } from "./formula/cooked-pots";
export type {
  CoatingLayer,
  FoodClass,
  FoodState,
  Formula,
  FormulaLine,
  LayerKind,
  MixLine,
  PickupBasis,
} from "./formula/formula";
export { type FormulaAllergens, formulaAllergens, type GatheredAllergen } from "./formula/formula-allergens";
export { type FormulaTotals, formulaComposition, formulaTotals, type LayerBlend } from "./formula/formula-totals";
export { gramsOf, type MeasuredFood, type MeasuredMass } from "./formula/grams-of";
export { parseFormula } from "./formula/read/parse-formula";
export { type ScaledFormula, type ScaledLine, type ScaleTo, scaleFormula } from "./formula/scale-formula";
export type { TypedMass } from "./formula/typed-mass";
export type { WeighedLine } from "./formula/weigh-lines";

// composition: water, protein, fat, carbohydrate, fibre, ash

export { COMPOSITION_FIELDS, type Composition } from "./composition/composition";
export { compositionOf } from "./composition/composition-of";
export { proximateSumG } from "./composition/proximate-sum";
export { type WaterToAdd, waterToAdd, withMoisture } from "./composition/with-moisture";

// thermal properties: ice, enthalpy, conductivity, density

export { type ComponentProperties, choiOkos, type FoodComponent } from "./thermal/choi-okos";
export { type ConductivityModel, type MixConductivityOptions, mixConductivity } from "./thermal/conductivity";
export { conductivityAt } from "./thermal/conductivity-curve";
export { conductivityLevy, conductivityMaxwellEucken, type TwoPhases } from "./thermal/conductivity-two-phase";
export { enthalpyAt, temperatureFromEnthalpy } from "./thermal/enthalpy";
export { type EnthalpyChenOptions, enthalpyChen } from "./thermal/enthalpy-chen";
export { type FreezingPoint, type FreezingPointOptions, freezingPoint } from "./thermal/freezing-point";
export { iceFraction, iceFractionTchigeov, type TchigeovOptions } from "./thermal/ice-fraction";
export { type MixDensityOptions, mixDensity } from "./thermal/mix-density";
export {
  type ThermalModel,
  type ThermalProperties,
  type ThermalPropertiesOptions,
  thermalProperties,
} from "./thermal/thermal-properties";
