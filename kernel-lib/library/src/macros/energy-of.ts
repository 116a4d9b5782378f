import { fail } from "../check/check";
import type { EnergyFactors } from "../food/ingredient/ingredient";
import type { Nutrients } from "../food/ingredient/nutrients";

/**
 * How energy is counted. `"published"`: as the table prints it. `"general 4-9-4"`: 21 CFR 101.9(c)(1)(i)(B).
 * `"EU Annex XIV"`: Regulation (EU) 1169/2011. `"food factors"`: each food's own factors, after Merrill & Watt (1973).
 */
export type EnergyBasis = "published" | "general 4-9-4" | "EU Annex XIV" | "food factors";

/** Energy of 100 g, or of whatever mass the nutrients are of. */
export interface Energy {
  readonly kcal: number;
  /** counted with the kJ factors on the EU basis; kcal × 4.184 on the others */
  readonly kJ: number;
}

/** What `energyOf` works from. */
export interface EnergyOfOptions {
  readonly nutrients: Pick<Nutrients, "energyKcal" | "proteinG" | "fatG" | "carbohydrateG" | "fibreG">;
  readonly basis: EnergyBasis;
  /** the food's own factors, for `"food factors"` */
  readonly energyFactors?: EnergyFactors | null;
}

/**
 * Energy from nutrients by the chosen basis. Published values use factors of each food, so plain 4-9-4 runs 15 to 60 %
 * high on greens, brans and dried spices.
 *
 * general: 4 P + 9 F + 4 C kcal, C by difference with fibre. EU: P 17 kJ / 4 kcal, F 37 / 9, available carbohydrate
 * (C less fibre) 17 / 4, fibre 8 / 2, kJ and kcal each from its own factors. No alcohol, polyols or organic acids: the
 * source table does not list them.
 *
 * @param options nutrients (g), basis, factors
 * @returns kcal and kJ
 * @example
 * const meal = { energyKcal: null, proteinG: 15.1, fatG: 12.4, carbohydrateG: 19.5, fibreG: 1.3 };
 * energyOf({ nutrients: meal, basis: "EU Annex XIV" }).kJ; // → 1035.3
 * energyOf({ nutrients: meal, basis: "EU Annex XIV" }).kcal; // → 247.4
 * energyOf({ nutrients: meal, basis: "published" }); // throws "must state energyKcal"
 */
export function energyOf(options: EnergyOfOptions): Energy {
  const { nutrients, basis, energyFactors } = options;
  if (basis === "published") {
    if (nutrients.energyKcal === null)
      fail("energyOf: nutrients", "must state energyKcal for the published basis", null);
    return Object.freeze({ kcal: nutrients.energyKcal, kJ: nutrients.energyKcal * 4.184 });
  }
  const { proteinG, fatG, carbohydrateG } = nutrients;
  if (proteinG === null || fatG === null || carbohydrateG === null) {
    fail("energyOf: nutrients", "must state protein, fat and carbohydrate", { proteinG, fatG, carbohydrateG });
  }
  if (basis === "EU Annex XIV") {
    if (nutrients.fibreG === null) fail("energyOf: nutrients", "must state fibreG for the EU basis", null);
    const fibreG = Math.min(nutrients.fibreG, carbohydrateG);
    const availableG = carbohydrateG - fibreG;
    return Object.freeze({
      kcal: 4 * proteinG + 9 * fatG + 4 * availableG + 2 * fibreG,
      kJ: 17 * proteinG + 37 * fatG + 17 * availableG + 8 * fibreG,
    });
  }
  if (basis === "food factors") {
    if (!energyFactors) fail("energyOf: energyFactors", "must be given for the food factors basis", energyFactors);
    const kcal =
      energyFactors.proteinKcalG * proteinG +
      energyFactors.fatKcalG * fatG +
      energyFactors.carbohydrateKcalG * carbohydrateG;
    return Object.freeze({ kcal, kJ: kcal * 4.184 });
  }
  if (basis !== "general 4-9-4") {
    fail("energyOf: basis", "must be published, general 4-9-4, EU Annex XIV or food factors", basis);
  }
  const kcal = 4 * proteinG + 9 * fatG + 4 * carbohydrateG;
  return Object.freeze({ kcal, kJ: kcal * 4.184 });
}
