import { positive } from "../../check/check";
import type { Ingredient } from "../ingredient/ingredient";
import { NUTRIENT_NAMES, type NutrientName, type Nutrients } from "../ingredient/nutrients";

/** A mass of one ingredient, or of anything else with values per 100 g. */
export interface BlendPart {
  readonly ingredient: Pick<Ingredient, "name" | "per100G">;
  readonly massG: number;
}

/** What a blend holds, and what is not known about it. */
export interface Blend {
  readonly massG: number;
  /** totals in the blend, in each nutrient's own unit (g, mg, kcal); a nutrient that no part states is `null` */
  readonly totals: Nutrients;
  /** the same per 100 g of blend */
  readonly per100G: Nutrients;
  /** for each nutrient with unknown parts, the names of those parts: its total is "at least" */
  readonly missing: Readonly<Partial<Record<NutrientName, readonly string[]>>>;
}

/**
 * Adds up the nutrients of weighed parts: total = Σ m_i x_i / 100. A part whose value is not known adds nothing and is
 * listed in `missing`, so that the total reads "at least".
 */
export function blend(parts: readonly BlendPart[]): Blend {
  const massG = positive(
    parts.reduce((sum, part) => sum + part.massG, 0),
    "blend: mass of all parts",
    "g",
  );
  const totals = {} as Record<NutrientName, number | null>;
  const per100G = {} as Record<NutrientName, number | null>;
  const missing: Partial<Record<NutrientName, readonly string[]>> = {};
  for (const name of NUTRIENT_NAMES) {
    const unknown = parts.filter((part) => part.massG > 0 && part.ingredient.per100G[name] === null);
    const known = parts.filter((part) => part.ingredient.per100G[name] !== null);
    if (unknown.length > 0) missing[name] = Object.freeze([...new Set(unknown.map((part) => part.ingredient.name))]);
    const total = known.reduce((sum, part) => sum + (part.massG * part.ingredient.per100G[name]!) / 100, 0);
    totals[name] = known.length === 0 ? null : total;
    per100G[name] = known.length === 0 ? null : (100 * total) / massG;
  }
  return Object.freeze({
    massG,
    totals: Object.freeze(totals),
    per100G: Object.freeze(per100G),
    missing: Object.freeze(missing),
  });
}
