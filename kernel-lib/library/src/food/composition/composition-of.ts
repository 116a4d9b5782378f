import { fail } from "../../check/check";
import type { Nutrients } from "../ingredient/nutrients";
import { type Composition, checkComposition } from "./composition";

/**
 * The six mass fractions of a food from its values per 100 g: carbohydrate is by difference less fibre, and the six are
 * divided by their sum (a table's proximates sum to 100 ± 1.5 g for almost every food; for a leavening salt, whose
 * carbonate is not listed, nearly all becomes ash). Fibre that is not known counts as carbohydrate; ash that is not
 * known is what is missing from 100 g.
 *
 * @param nutrients per 100 g; water, protein, fat and carbohydrate must be known
 * @param where named in errors
 * @example
 * compositionOf({ waterG: 70, energyKcal: 200, proteinG: 10, fatG: 5, saturatedFatG: null, carbohydrateG: 14, fibreG: 4, sugarsG: null, sodiumMg: null, cholesterolMg: null, ashG: 1 }, "mix").carbohydrateFraction; // → 0.1
 */
export function compositionOf(nutrients: Nutrients, where: string): Composition {
  const { waterG, proteinG, fatG, carbohydrateG } = nutrients;
  if (waterG === null || proteinG === null || fatG === null || carbohydrateG === null) {
    fail(`compositionOf: ${where}`, "must state water, protein, fat and carbohydrate", {
      waterG,
      proteinG,
      fatG,
      carbohydrateG,
    });
  }
  const fibreG = Math.min(nutrients.fibreG ?? 0, carbohydrateG);
  const ashG = nutrients.ashG ?? Math.max(0, 100 - waterG - proteinG - fatG - carbohydrateG);
  const sum = waterG + proteinG + fatG + carbohydrateG + ashG;
  return checkComposition(
    Object.freeze({
      waterFraction: waterG / sum,
      proteinFraction: proteinG / sum,
      fatFraction: fatG / sum,
      carbohydrateFraction: (carbohydrateG - fibreG) / sum,
      fibreFraction: fibreG / sum,
      ashFraction: ashG / sum,
    }),
    `compositionOf: ${where}`,
  );
}
