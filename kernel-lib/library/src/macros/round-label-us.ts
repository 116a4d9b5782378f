import { fail, notNegative } from "../check/check";

/** A nutrient with its own rounding rule on a US label. */
export type UsLabelNutrient =
  | "calories"
  | "fat"
  | "saturated fat"
  | "cholesterol"
  | "sodium"
  | "carbohydrate"
  | "fibre"
  | "sugars"
  | "protein";

/** What `roundLabelUs` works from. */
export interface RoundLabelUsOptions {
  readonly nutrient: UsLabelNutrient;
  /** amount in one serving: kcal, g, or mg for cholesterol and sodium */
  readonly amount: number;
}

/**
 * Rounds one serving's amount as 21 CFR 101.9(c) asks (read in FDA's Food Labeling Guide, appendix H).
 *
 * calories: below 5 is 0, to 50 the nearest 5, above it the nearest 10. Fat and saturated fat: below 0.5 is 0, below 5
 * the nearest 0.5, else the nearest 1. Cholesterol: below 2 is 0, 2 to 5 is "less than 5 mg", else the nearest 5. Sodium:
 * below 5 is 0, 5 to 140 the nearest 5, above it the nearest 10. Carbohydrate, fibre, sugars, protein: below 0.5 is 0,
 * below 1 is "less than 1 g", else the nearest 1. The rule says nothing of ties: halves go up here.
 *
 * An estimate for the developer, not a compliance document.
 *
 * @param options nutrient and its amount per serving
 * @returns what the label would print, without its unit
 * @example
 * roundLabelUs({ nutrient: "calories", amount: 233.7 }); // → "230"
 * roundLabelUs({ nutrient: "fat", amount: 4.74 }); // → "4.5"
 * roundLabelUs({ nutrient: "fibre", amount: 0.7 }); // → "<1"
 */
export function roundLabelUs(options: RoundLabelUsOptions): string {
  const amount = notNegative(options.amount, `roundLabelUs: amount of ${options.nutrient}`, "");
  switch (options.nutrient) {
    case "calories":
      return amount < 5 ? "0" : nearest(amount, amount <= 50 ? 5 : 10);
    case "fat":
    case "saturated fat":
      return amount < 0.5 ? "0" : nearest(amount, amount < 5 ? 0.5 : 1);
    case "cholesterol":
      if (amount < 2) return "0";
      return amount <= 5 ? "<5" : nearest(amount, 5);
    case "sodium":
      return amount < 5 ? "0" : nearest(amount, amount <= 140 ? 5 : 10);
    case "carbohydrate":
    case "fibre":
    case "sugars":
    case "protein":
      if (amount < 0.5) return "0";
      return amount < 1 ? "<1" : nearest(amount, 1);
    default:
      return fail("roundLabelUs: nutrient", "must be one that 21 CFR 101.9(c) rounds", options.nutrient);
  }
}

/** The nearest multiple of `step`, halves up, as text; the small lift keeps 0.15 / 0.05 from falling below its half. */
function nearest(amount: number, step: number): string {
  return String(Math.floor(amount / step + 0.5 + 1e-9) * step);
}
