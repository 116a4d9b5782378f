import { fail, notNegative } from "../check/check";

/** A nutrient with its own rounding rule on an EU label. */
export type EuLabelNutrient = "energy" | "fat" | "saturates" | "carbohydrate" | "sugars" | "fibre" | "protein" | "salt";

/** What `roundLabelEu` works from. */
export interface RoundLabelEuOptions {
  readonly nutrient: EuLabelNutrient;
  /** amount in 100 g (or one portion): kJ or kcal, else g */
  readonly amount: number;
}

/**
 * Rounds an amount per 100 g as the European Commission's guidance on tolerances of December 2012 advises (values from
 * memory; the Regulation itself, 1169/2011, sets no rounding).
 *
 * energy: nearest 1. Fat, carbohydrate, sugars, protein, fibre: from 10 g the nearest 1, above 0.5 the nearest 0.1, else
 * "<0.5" (0 is "0"). Saturates: the same with 0.1 in place of 0.5. Salt: from 1 g the nearest 0.1, above 0.0125 the
 * nearest 0.01, else "<0.01". Halves go up.
 *
 * An estimate for the developer, not a compliance document.
 *
 * @param options nutrient and its amount per 100 g
 * @returns what the label would print, without its unit
 * @example
 * roundLabelEu({ nutrient: "fat", amount: 12.4 }); // → "12"
 * roundLabelEu({ nutrient: "sugars", amount: 0.96 }); // → "1.0"
 * roundLabelEu({ nutrient: "salt", amount: 0.238 }); // → "0.24"
 */
export function roundLabelEu(options: RoundLabelEuOptions): string {
  const amount = notNegative(options.amount, `roundLabelEu: amount of ${options.nutrient}`, "");
  switch (options.nutrient) {
    case "energy":
      return nearest(amount, 0);
    case "fat":
    case "carbohydrate":
    case "sugars":
    case "fibre":
    case "protein":
      return stepped(amount, 10, 0.5);
    case "saturates":
      return stepped(amount, 10, 0.1);
    case "salt":
      if (amount >= 1) return nearest(amount, 1);
      if (amount > 0.0125) return nearest(amount, 2);
      return amount === 0 ? "0" : "<0.01";
    default:
      return fail("roundLabelEu: nutrient", "must be one that the guidance rounds", options.nutrient);
  }
}

function stepped(amount: number, whole: number, traces: number): string {
  if (amount >= whole) return nearest(amount, 0);
  if (amount > traces) return nearest(amount, 1);
  return amount === 0 ? "0" : `<${traces}`;
}

/** To so many decimals, halves up; the small lift keeps a half that binary cannot hold from falling. */
function nearest(amount: number, decimals: number): string {
  const scale = 10 ** decimals;
  return (Math.floor(amount * scale + 0.5 + 1e-9) / scale).toFixed(decimals);
}
