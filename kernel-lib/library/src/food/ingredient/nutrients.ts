/**
 * What is in 100 g of a food. `null` means not known, never zero. Carbohydrate is by difference and includes fibre, as
 * in USDA tables; energy is the published value (food-specific factors) unless a source says otherwise.
 */
export interface Nutrients {
  /** g per 100 g */
  readonly waterG: number | null;
  /** kcal per 100 g */
  readonly energyKcal: number | null;
  /** g per 100 g */
  readonly proteinG: number | null;
  /** g per 100 g */
  readonly fatG: number | null;
  /** g per 100 g, part of `fatG` */
  readonly saturatedFatG: number | null;
  /** g per 100 g, by difference, fibre included */
  readonly carbohydrateG: number | null;
  /** g per 100 g, part of `carbohydrateG` */
  readonly fibreG: number | null;
  /** g per 100 g, part of `carbohydrateG` */
  readonly sugarsG: number | null;
  /** mg per 100 g */
  readonly sodiumMg: number | null;
  /** mg per 100 g */
  readonly cholesterolMg: number | null;
  /** g per 100 g */
  readonly ashG: number | null;
}

/** The name of one nutrient field. */
export type NutrientName = keyof Nutrients;

/** The nutrient fields in the order that tables print them. */
export const NUTRIENT_NAMES: readonly NutrientName[] = Object.freeze([
  "waterG",
  "energyKcal",
  "proteinG",
  "fatG",
  "saturatedFatG",
  "carbohydrateG",
  "fibreG",
  "sugarsG",
  "sodiumMg",
  "cholesterolMg",
  "ashG",
] as const);

/** How a person reads each field, with its unit. */
export const NUTRIENT_LABELS: Readonly<Record<NutrientName, string>> = Object.freeze({
  waterG: "water (g)",
  energyKcal: "energy (kcal)",
  proteinG: "protein (g)",
  fatG: "fat (g)",
  saturatedFatG: "saturated fat (g)",
  carbohydrateG: "carbohydrate (g)",
  fibreG: "fibre (g)",
  sugarsG: "sugars (g)",
  sodiumMg: "sodium (mg)",
  cholesterolMg: "cholesterol (mg)",
  ashG: "ash (g)",
});
