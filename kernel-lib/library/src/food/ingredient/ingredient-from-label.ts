import { z } from "zod";
import { fail, positive } from "../../check/check";
import type { AllergenMark, EuAllergen, UsAllergen } from "./allergens";
import { type HouseholdWeight, type Ingredient, type IngredientClass, ingredientSchema } from "./ingredient";

/** What a label prints; leave out what it does not print. */
export interface LabelPrint {
  /** kcal */
  readonly energyKcal: number;
  readonly proteinG: number;
  readonly fatG: number;
  readonly saturatedFatG?: number;
  /** as printed: with fibre on a US label, without it on an EU label */
  readonly carbohydrateG: number;
  readonly fibreG?: number;
  readonly sugarsG?: number;
  /** give sodium or salt */
  readonly sodiumMg?: number;
  /** salt = sodium × 2.5 */
  readonly saltG?: number;
  readonly cholesterolMg?: number;
}

/** What `ingredientFromLabel` works from. */
export interface IngredientFromLabelOptions {
  /** the name that formulas will use: lower case, words joined by hyphens */
  readonly id: string;
  readonly name: string;
  /** `"US"`: carbohydrate includes fibre; `"EU"`: it does not */
  readonly style: "US" | "EU";
  /** mass that the printed values are of (g): 100, or the serving */
  readonly perG: number;
  readonly printed: LabelPrint;
  /** water by difference, 100 − protein − fat − carbohydrate − salt: needed for density and heating; false unless given */
  readonly waterByDifference?: boolean;
  /** what it is for the core limit; not stated unless given */
  readonly foodClass?: IngredientClass;
  readonly householdWeights?: readonly HouseholdWeight[];
  readonly allergensUs?: readonly AllergenMark<UsAllergen>[];
  readonly allergensEu?: readonly AllergenMark<EuAllergen>[];
  /** price of 1 kg in the kitchen's own currency */
  readonly costPerKg?: number;
}

/**
 * A food of the kitchen's own from what its pack prints, per 100 g or per serving. What the pack does not print stays
 * unknown. A label's rounding is kept: a serving of 30 g with "1 g" of fat may hold 0.5 to 1.5 g, 1.7 to 5 g per 100 g.
 *
 * @param options id, name, label style, mass, printed values
 * @returns an ingredient
 * @example
 * const flakes = ingredientFromLabel({ id: "panko", name: "panko", style: "US", perG: 30, printed: { energyKcal: 110, proteinG: 3, fatG: 1, carbohydrateG: 22, fibreG: 1, sodiumMg: 60 } });
 * flakes.per100G.proteinG; // → 10
 * ingredientFromLabel({ id: "panko", name: "panko", style: "US", perG: 30, printed: { energyKcal: 460, proteinG: 3, fatG: 1, carbohydrateG: 22 } }); // throws "is it kJ"
 */
export function ingredientFromLabel(options: IngredientFromLabelOptions): Ingredient {
  const where = `ingredientFromLabel: ${options.id}`;
  const times = 100 / positive(options.perG, `${where}: perG`, "g");
  const { printed } = options;
  if (options.style !== "US" && options.style !== "EU") fail(`${where}: style`, 'must be "US" or "EU"', options.style);
  if (printed.sodiumMg !== undefined && printed.saltG !== undefined) {
    fail(`${where}: printed`, "must give sodiumMg or saltG, not both", {
      sodiumMg: printed.sodiumMg,
      saltG: printed.saltG,
    });
  }
  const known = (value: number | undefined): number | null => (value === undefined ? null : value * times);
  const fibreG = known(printed.fibreG);
  const carbohydrateG = printed.carbohydrateG * times + (options.style === "EU" ? (fibreG ?? 0) : 0);
  const sodiumMg = known(printed.sodiumMg ?? (printed.saltG === undefined ? undefined : 400 * printed.saltG));
  const proteinG = printed.proteinG * times;
  const fatG = printed.fatG * times;
  const energyKcal = printed.energyKcal * times;
  const solidsG = proteinG + fatG + carbohydrateG;
  if (solidsG > 103) {
    fail(
      `${where}: printed`,
      `must hold at most 100 g of protein, fat and carbohydrate in 100 g (is perG ${options.perG} g right?)`,
      solidsG,
    );
  }
  const general = 4 * proteinG + 9 * fatG + 4 * carbohydrateG;
  if (general > 40 && (energyKcal > 1.5 * general || energyKcal < 0.4 * general)) {
    fail(
      `${where}: energyKcal`,
      `must be near the ${general.toFixed(0)} kcal per 100 g that 4-9-4 gives (is it kJ?)`,
      energyKcal,
    );
  }
  const ashG = sodiumMg === null ? null : (2.5 * sodiumMg) / 1000;
  const checked = ingredientSchema.safeParse({
    id: options.id,
    name: options.name,
    ndb: null,
    foodClass: options.foodClass ?? null,
    per100G: {
      waterG: options.waterByDifference ? Math.max(0, 100 - solidsG - (ashG ?? 0)) : null,
      energyKcal,
      proteinG,
      fatG,
      saturatedFatG: known(printed.saturatedFatG),
      carbohydrateG,
      fibreG,
      sugarsG: known(printed.sugarsG),
      sodiumMg,
      cholesterolMg: known(printed.cholesterolMg),
      ashG,
    },
    householdWeights: options.householdWeights ?? [],
    energyFactors: null,
    allergensUs: options.allergensUs ?? [],
    allergensEu: options.allergensEu ?? [],
    source: `label, ${options.style} style, per ${options.perG} g${options.waterByDifference ? "; water by difference" : ""}`,
    costPerKg: options.costPerKg ?? null,
  });
  if (!checked.success) throw new RangeError(`${where}: ${z.prettifyError(checked.error)}`);
  return Object.freeze(checked.data);
}
