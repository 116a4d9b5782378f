import { fail, within } from "../../check/check";

/**
 * Mass fractions of a food or mix [-], 0 to 1, summing to 1. Carbohydrate is what is left after fibre:
 * a nutrient table's "carbohydrate by difference" minus its fibre. Air has no mass and stands apart,
 * as an air fraction by volume, wherever a density is asked for.
 */
export interface Composition {
  /** water, frozen or not */
  readonly waterFraction: number;
  readonly proteinFraction: number;
  readonly fatFraction: number;
  /** carbohydrate without fibre */
  readonly carbohydrateFraction: number;
  readonly fibreFraction: number;
  readonly ashFraction: number;
}

/** The fields of a `Composition`, in the order that tables print them. */
export const COMPOSITION_FIELDS: readonly (keyof Composition)[] = [
  "waterFraction",
  "proteinFraction",
  "fatFraction",
  "carbohydrateFraction",
  "fibreFraction",
  "ashFraction",
];

/**
 * Returns the composition unchanged when every fraction is between 0 and 1 and they sum to 1 within 0.001;
 * otherwise throws, saying by how much the sum misses and what each field holds.
 *
 * @example
 * const lean = { waterFraction: 0.72, proteinFraction: 0.21, fatFraction: 0.06, carbohydrateFraction: 0, fibreFraction: 0, ashFraction: 0.01 };
 * checkComposition(lean, "mix").waterFraction; // → 0.72
 * checkComposition({ ...lean, fatFraction: 0.16 }, "mix"); // throws "must sum to 1 (they are over by 0.1000)"
 */
export function checkComposition(composition: Composition, where: string): Composition {
  let sum = 0;
  for (const field of COMPOSITION_FIELDS) sum += within(composition[field], 0, 1, `${where}: ${field}`, "");
  if (Math.abs(sum - 1) > 0.001) {
    const off = `${sum > 1 ? "over" : "under"} by ${Math.abs(sum - 1).toFixed(4)}`;
    fail(`${where}: the six mass fractions`, `must sum to 1 (they are ${off})`, composition);
  }
  return composition;
}
