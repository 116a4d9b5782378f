import { z } from "zod";
import { kebabSchema, nameSchema } from "../../check/text-schema";
import { type AllergenMark, EU_ALLERGENS, type EuAllergen, US_ALLERGENS, type UsAllergen } from "./allergens";
import type { Nutrients } from "./nutrients";

/** What one household measure of a food weighs. */
export interface HouseholdWeight {
  /** the measure as written: `"1 cup, packed"`, `"1 large"`, `"0.5 cup"` */
  readonly measure: string;
  /** mass of that measure (g) */
  readonly massG: number;
  /** where the weight comes from */
  readonly source: string;
}

/** Energy in one gram of each nutrient of one food (kcal/g), after Merrill & Watt (1973), as published with SR28. */
export interface EnergyFactors {
  readonly proteinKcalG: number;
  readonly fatKcalG: number;
  readonly carbohydrateKcalG: number;
}

/** A raw food of an animal, by what its core must reach; crustaceans and molluscs are `fish`, as in the Food Code. */
export type RawClass = "poultry" | "groundMeat" | "wholeMeat" | "fish" | "egg";

/**
 * What an ingredient is as it goes into the mix: raw of an animal; `plant`, which is anything without meat, fish, egg or
 * milk, whatever was done to it; or of an animal and ready to eat because it was cooked, dried or pasteurised.
 */
export type IngredientClass = RawClass | "plant" | "cooked" | "dried" | "pasteurised";

/** Every raw class. */
export const RAW_CLASSES: readonly RawClass[] = Object.freeze(["poultry", "groundMeat", "wholeMeat", "egg", "fish"]);

/** Every class that an ingredient can have. */
export const INGREDIENT_CLASSES: readonly IngredientClass[] = Object.freeze([
  ...RAW_CLASSES,
  "plant",
  "cooked",
  "dried",
  "pasteurised",
]);

/** One food that a formula can use. */
export interface Ingredient {
  /** short name that formulas use: lower case, words joined by hyphens */
  readonly id: string;
  readonly name: string;
  /** number in the USDA nutrient database, text with its leading zeros; `null` for a food from elsewhere */
  readonly ndb: string | null;
  /** `null` when it is not stated */
  readonly foodClass: IngredientClass | null;
  /** per 100 g as it goes into the mix */
  readonly per100G: Nutrients;
  readonly householdWeights: readonly HouseholdWeight[];
  /** `null` when the source gives none */
  readonly energyFactors: EnergyFactors | null;
  readonly allergensUs: readonly AllergenMark<UsAllergen>[];
  readonly allergensEu: readonly AllergenMark<EuAllergen>[];
  /** where the values come from */
  readonly source: string;
  /** price of 1 kg in the kitchen's own currency; `null` when not given */
  readonly costPerKg: number | null;
}

/** The heaviest household measure (g) and the highest price of a kilogram, in whatever currency: our judgement. */
const HEAVIEST_MEASURE_G = 100_000;
const HIGHEST_COST_PER_KG = 100_000_000;

const sourceText = z.string().min(1).max(2000);
const A_SHARE = "0 to 100 g in 100 g";
const share = z.number(A_SHARE).min(0, A_SHARE).max(100, A_SHARE).nullable();
const ENERGY = "0 to 910 kcal in 100 g (is it kJ?)";
const SODIUM = "0 to 40000 mg in 100 g (is it in g?)";
const CHOLESTEROL = "0 to 4000 mg in 100 g";

const nutrientsSchema: z.ZodType<Nutrients> = z.strictObject({
  waterG: share,
  energyKcal: z.number(ENERGY).min(0, ENERGY).max(910, ENERGY).nullable(),
  proteinG: share,
  fatG: share,
  saturatedFatG: share,
  carbohydrateG: share,
  fibreG: share,
  sugarsG: share,
  sodiumMg: z.number(SODIUM).min(0, SODIUM).max(40_000, SODIUM).nullable(),
  cholesterolMg: z.number(CHOLESTEROL).min(0, CHOLESTEROL).max(4_000, CHOLESTEROL).nullable(),
  ashG: share,
});

function markSchema<Name extends string>(names: readonly Name[]): z.ZodType<AllergenMark<Name>> {
  return z.strictObject({
    allergen: z.custom<Name>((name) => names.includes(name as Name), `expected one of ${names.join(", ")}`),
    species: z.string().max(200),
    certainty: z.enum(["inherent", "depends on the maker"]),
  });
}

/** Checks an ingredient that comes from outside; bounds are those of food itself (oil is 900 kcal, salt 38.8 g sodium). */
export const ingredientSchema: z.ZodType<Ingredient> = z.strictObject({
  id: kebabSchema(),
  name: nameSchema(),
  ndb: z
    .string()
    .regex(/^\d{5}$/, "expected five digits")
    .nullable(),
  foodClass: z.enum(INGREDIENT_CLASSES).nullable(),
  per100G: nutrientsSchema,
  householdWeights: z.array(
    z.strictObject({
      measure: nameSchema("a measure"),
      massG: z.number().positive().max(HEAVIEST_MEASURE_G),
      source: sourceText,
    }),
  ),
  energyFactors: z
    .strictObject({
      proteinKcalG: z.number().min(0).max(10),
      fatKcalG: z.number().min(0).max(10),
      carbohydrateKcalG: z.number().min(0).max(10),
    })
    .nullable(),
  allergensUs: z.array(markSchema(US_ALLERGENS)),
  allergensEu: z.array(markSchema(EU_ALLERGENS)),
  source: sourceText,
  costPerKg: z.number().min(0).max(HIGHEST_COST_PER_KG).nullable(),
});
