import { within } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { tooLittle } from "../../check/too-little";
import type { Kitchen } from "../../trials/kitchen";
import { type BatchToMake, ingredientsNeeded } from "./ingredients-needed";

/** A batch, and how sure its prices are. */
export interface BatchCostOptions extends BatchToMake {
  readonly kitchen: Kitchen;
  /** standard uncertainty of a price (%), each for itself; 10 unless given: our judgement of prices some months old */
  readonly priceDoubtPercent?: number;
}

/** A cost with its doubt, in the kitchen's own currency. */
export interface Cost {
  readonly cost: number;
  /** standard uncertainty, from the prices */
  readonly se: number;
}

/** What a batch costs. */
export interface BatchCost {
  readonly kind: "batch cost";
  readonly variantId: string;
  readonly variantName: string;
  readonly pieces: number;
  readonly piecesPerServing: number;
  readonly batch: Cost;
  readonly piece: Cost;
  readonly serving: Cost;
  /** of coated pieces, as frozen */
  readonly kilogram: Cost;
  /** of the batch, what is thrown away: bowl, trim, coating that is left */
  readonly waste: Cost;
  /** dearest first */
  readonly parts: readonly { readonly name: string; readonly massG: number; readonly cost: number }[];
  readonly note: string;
}

/**
 * What a batch, a piece, a serving and a kilogram of coated pieces cost, from the prices of mix and coating, with what bowl,
 * trim and coating leave behind.
 *
 * cost = Σ massᵢ·priceᵢ; u² = Σ (massᵢ·priceᵢ·u_price)².
 *
 * @throws too little, in words, where an ingredient has no price
 * @example
 * const kitchen = loadKitchen();
 * const priced = { ...kitchen, ingredients: kitchen.ingredients.map((one) => ({ ...one, costPerKg: 2 })) };
 * batchCost({ kitchen: priced, variantId: "beet-lentil", priceDoubtPercent: 0 }).piece.se; // → 0
 */
export function batchCost(options: BatchCostOptions): BatchCost {
  const { kitchen } = options;
  const doubt = within(options.priceDoubtPercent ?? 10, 0, 100, "batchCost: priceDoubtPercent", "%") / 100;
  const { coatedPieceG, ingredients, pieces, variant } = ingredientsNeeded(kitchen, options);
  const unpriced = ingredients.filter(({ ingredient }) => ingredient.costPerKg === null);
  if (unpriced.length > 0)
    tooLittle(
      "batchCost",
      `What ${variant.name} cost cannot be told yet: log a price under cost_per_kg for ${unpriced.map(({ ingredient }) => ingredient.name).join(", ")}.`,
    );
  const parts = ingredients.map(({ ingredient, mixG, coatingG, wasteG }) => {
    const perG = (ingredient.costPerKg as number) / 1000;
    return { name: ingredient.name, massG: mixG + coatingG, cost: (mixG + coatingG) * perG, waste: wasteG * perG };
  });
  const sumOf = (read: (part: (typeof parts)[number]) => number, over = 1): Cost => ({
    cost: parts.reduce((sum, part) => sum + read(part), 0) / over,
    se: (doubt * Math.sqrt(parts.reduce((sum, part) => sum + read(part) ** 2, 0))) / over,
  });
  const perServing = variant.formula.piecesPerServing;
  const whole = (part: (typeof parts)[number]): number => part.cost;
  return freezeDeep({
    kind: "batch cost" as const,
    variantId: variant.variantId,
    variantName: variant.name,
    pieces,
    piecesPerServing: perServing,
    batch: sumOf(whole),
    piece: sumOf(whole, pieces),
    serving: sumOf(whole, pieces / perServing),
    kilogram: sumOf(whole, (pieces * coatedPieceG) / 1000),
    waste: sumOf((part) => part.waste),
    parts: [...parts].sort((a, b) => b.cost - a.cost).map(({ name, massG, cost }) => ({ name, massG, cost })),
    note: `Ingredients alone, no packs, power or work; each price off by ${Math.round(100 * doubt)} % (one standard uncertainty).`,
  });
}
