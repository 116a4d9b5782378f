import type { Nutrients } from "../ingredient/nutrients";

/**
 * Water + protein + fat + carbohydrate + ash (g per 100 g), which ought to be 100; `null` when one is not known.
 *
 * @example
 * proximateSumG({ waterG: 70, energyKcal: null, proteinG: 20, fatG: 8, saturatedFatG: null, carbohydrateG: 1, fibreG: null, sugarsG: null, sodiumMg: null, cholesterolMg: null, ashG: 1 }); // → 100
 */
export function proximateSumG(nutrients: Nutrients): number | null {
  const parts = [nutrients.waterG, nutrients.proteinG, nutrients.fatG, nutrients.carbohydrateG, nutrients.ashG];
  let sum = 0;
  for (const part of parts) {
    if (part === null) return null;
    sum += part;
  }
  return sum;
}
