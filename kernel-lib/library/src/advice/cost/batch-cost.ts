import { fail, within } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { tooLittle } from "../../check/too-little";
import type { Kitchen } from "../../trials/kitchen";
import { type BatchToMake, ingredientsNeeded } from "./ingredients-needed";
import { priceOf } from "./price-of";

/** A batch, and how sure its prices are. */
export interface BatchCostOptions extends BatchToMake {
  readonly kitchen: Kitchen;
  /** standard uncertainty of every price (%), each for itself; from its age unless given (`priceOf`) */
  readonly priceDoubtPercent?: number;
  /** the day of the answer, `2026-03-14`; the last one that the kitchen's files name unless given */
  readonly asOf?: string;
}

/** A cost with its doubt, in the kitchen's own currency. */
export interface Cost {
  readonly cost: number;
  /** standard uncertainty, from the prices */
  readonly se: number;
}

/** What one ingredient adds. */
export interface CostPart {
  readonly name: string;
  readonly massG: number;
  readonly cost: number;
  readonly se: number;
  /** days since its price was noted; null where nobody noted when */
  readonly ageDays: number | null;
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
  /** of pieces as they come out of the reheat, by the loss of its trials; null where none was weighed */
  readonly eatenKilogram: Cost | null;
  /** of a piece: mix and coating that are in it, and what is thrown away for it; together its cost */
  readonly inPiece: { readonly mix: number; readonly coating: number; readonly waste: number };
  /** those with a price, dearest first */
  readonly parts: readonly CostPart[];
  /** those without one, most first: while there are any, every cost is only the least that it can be */
  readonly unpriced: readonly { readonly name: string; readonly massG: number }[];
  /** those of them whose price is over half a year old, dearest first */
  readonly oldPrices: readonly CostPart[];
  readonly notes: readonly string[];
}

/**
 * What a batch, a piece, a serving and a kilogram of coated pieces cost, from the prices of mix and coating, with what bowl,
 * trim and coating leave behind.
 *
 * cost = Σ massᵢ·priceᵢ; u² = Σ (massᵢ·priceᵢ·uᵢ)². The doubt of a kilogram as eaten also holds that of the loss. Where prices
 * are missing (`unpriced`), every cost is that of the others: the least that it can be, with the doubt of those alone.
 *
 * @throws too little, in words, where no ingredient has a price
 * @example
 * const kitchen = loadKitchen();
 * const priced = { ...kitchen, pantry: [], ingredients: kitchen.ingredients.map((one) => ({ ...one, costPerKg: 2 })) };
 * batchCost({ kitchen: priced, variantId: "beet-lentil", priceDoubtPercent: 0 }).piece.se; // → 0
 */
export function batchCost(options: BatchCostOptions): BatchCost {
  const { kitchen } = options;
  const { asOf, priceDoubtPercent } = options;
  if (priceDoubtPercent !== undefined) within(priceDoubtPercent, 0, 100, "batchCost: priceDoubtPercent", "%");
  if (asOf !== undefined && Number.isNaN(Date.parse(asOf)))
    fail("batchCost: asOf", "must be a day such as 2026-03-14", asOf);
  const { coatedPieceG, ingredients, pieces, variant } = ingredientsNeeded(kitchen, options);
  const prices = ingredients.map(({ ingredient }) => priceOf(kitchen, ingredient, asOf));
  const unpriced = ingredients
    .filter((_, at) => prices[at] === null)
    .map(({ ingredient, mixG, coatingG }) => ({ name: ingredient.name, massG: mixG + coatingG }))
    .sort((a, b) => b.massG - a.massG);
  const missing = unpriced.map(({ name }) => name).join("; ");
  const parts = ingredients.flatMap(({ ingredient, mixG, coatingG, wasteG, coatingWasteG }, at) => {
    const price = prices[at];
    if (price === null) return [];
    const { ageDays, doubtPercent, perKg } = price;
    const perG = perKg / 1000;
    return {
      name: ingredient.name,
      massG: mixG + coatingG,
      cost: (mixG + coatingG) * perG,
      waste: wasteG * perG,
      mixInPieces: (mixG - (wasteG - coatingWasteG)) * perG,
      coatingInPieces: (coatingG - coatingWasteG) * perG,
      doubt: (priceDoubtPercent ?? doubtPercent) / 100,
      ageDays,
    };
  });
  if (unpriced.length > 0 && !parts.some(({ cost }) => cost > 0))
    tooLittle(
      "batchCost",
      `What ${variant.name} cost cannot be told yet: put a pack and its price into pantry.csv for ${missing}.`,
    );
  const sumOf = (read: (part: (typeof parts)[number]) => number, over = 1): Cost => ({
    cost: parts.reduce((sum, part) => sum + read(part), 0) / over,
    se: Math.sqrt(parts.reduce((sum, part) => sum + (part.doubt * read(part)) ** 2, 0)) / over,
  });
  const perServing = variant.formula.piecesPerServing;
  const whole = (part: (typeof parts)[number]): number => part.cost;
  const kilogram = sumOf(whole, (pieces * coatedPieceG) / 1000);
  const told = [...parts]
    .sort((a, b) => b.cost - a.cost)
    .map(({ name, massG, cost, doubt, ageDays }): CostPart => ({ name, massG, cost, se: doubt * cost, ageDays }));
  return freezeDeep({
    kind: "batch cost" as const,
    variantId: variant.variantId,
    variantName: variant.name,
    pieces,
    piecesPerServing: perServing,
    batch: sumOf(whole),
    piece: sumOf(whole, pieces),
    serving: sumOf(whole, pieces / perServing),
    kilogram,
    eatenKilogram: eaten(kilogram, kitchen, variant.variantId),
    waste: sumOf((part) => part.waste),
    inPiece: {
      mix: sumOf((part) => part.mixInPieces, pieces).cost,
      coating: sumOf((part) => part.coatingInPieces, pieces).cost,
      waste: sumOf((part) => part.waste, pieces).cost,
    },
    parts: told,
    unpriced,
    oldPrices: told.filter(({ ageDays }) => (ageDays ?? 0) > OLD_DAYS),
    notes: [
      ...(unpriced.length === 0
        ? []
        : [
            `${variant.name}: at least what is priced costs; to tell the rest, put a pack and its price into pantry.csv for ${missing} (together ${Math.round((100 * massOf(unpriced)) / (massOf(unpriced) + massOf(parts)))} % of what goes in).`,
          ]),
      "Ingredients alone, no packs, power or work.",
      priceDoubtPercent === undefined
        ? "A price is off by 3 % from shop to shop and by 8 % more for each year of its age, one that nobody dated by 10 % (one standard uncertainty; our judgement)."
        : `Each price off by ${Math.round(priceDoubtPercent)} % (one standard uncertainty).`,
    ],
  });
}

function massOf(parts: readonly { readonly massG: number }[]): number {
  return parts.reduce((sum, { massG }) => sum + massG, 0);
}

/** A price of so many days is called old; our judgement. */
const OLD_DAYS = 183;

/** Cost of a kilogram as it comes out of the reheat: by the mean loss of the pieces that were weighed, with the doubt of that mean. */
function eaten(kilogram: Cost, { trials }: Kitchen, variantId: string): Cost | null {
  const kept = trials.flatMap(({ variantId: id, massBeforeG: beforeG, massAfterG: afterG }) =>
    id === variantId && beforeG !== null && afterG !== null && beforeG > 0 && 2 * afterG > beforeG
      ? [afterG / beforeG]
      : [],
  );
  if (kept.length < 2) return null;
  const mean = kept.reduce((sum, share) => sum + share, 0) / kept.length;
  const variance = kept.reduce((sum, share) => sum + (share - mean) ** 2, 0) / (kept.length - 1) / kept.length;
  const cost = kilogram.cost / mean;
  return { cost, se: Math.hypot(kilogram.se / mean, (cost * Math.sqrt(variance)) / mean) };
}
