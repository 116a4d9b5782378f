import { fail, within } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { formulaTotals } from "../../food/formula/formula-totals";
import type { Ingredient } from "../../food/ingredient/ingredient";
import type { Kitchen, KitchenVariant } from "../../trials/kitchen";
import { panOf, variantOf } from "../../trials/kitchen-lookup";
import { type BatchOnPan, batchOnPan } from "../../trials/pieces/batch-on-pan";
import { coatingPlan } from "../../yield/coating-plan";

/** A batch to be made. */
export interface BatchToMake {
  readonly variantId: string;
  /** pans of it; 1 unless given */
  readonly pans?: number;
  /** mix on each (g); the variant's own unless given */
  readonly batchG?: number;
  /** mix that stays in bowl and on tools (% of what is mixed); 1 unless given, our judgement */
  readonly bowlLossPercent?: number;
  /** coating that stays behind in tray and sieve (% of what is put out); 25 unless given, our judgement */
  readonly leftoverPercent?: number;
}

/** How much of one ingredient a batch takes. */
export interface NeededIngredient {
  readonly ingredient: Ingredient;
  readonly mixG: number;
  /** put out for the coating, leftover included (g) */
  readonly coatingG: number;
  /** of both, what is thrown away: bowl, trim and coating that is left (g) */
  readonly wasteG: number;
  /** of that, coating (g) */
  readonly coatingWasteG: number;
}

/** What a batch takes, and what comes of it. */
export interface NeededForBatch {
  readonly variant: KitchenVariant;
  readonly batch: BatchOnPan;
  readonly pans: number;
  readonly pieces: number;
  readonly coatedPieceG: number;
  readonly ingredients: readonly NeededIngredient[];
}

/** Every ingredient that a batch takes, of mix and coating, with what of it is thrown away. */
export function ingredientsNeeded(kitchen: Kitchen, options: BatchToMake): NeededForBatch {
  const variant = variantOf(kitchen, options.variantId);
  const where = `batch of ${variant.variantId}`;
  const { pans = 1 } = options;
  if (!(Number.isInteger(pans) && pans >= 1 && pans <= 1000))
    fail(`${where}: pans`, "must be a whole number from 1 to 1000", pans);
  const kept = 1 - within(options.bowlLossPercent ?? 1, 0, 50, `${where}: bowlLossPercent`, "%") / 100;
  const batch = batchOnPan({
    kitchen,
    variant,
    pan: panOf(kitchen, variant.panId),
    batchG: options.batchG ?? variant.batchG,
  });
  const totals = formulaTotals(variant.formula, kitchen.ingredients);
  const pieces = pans * batch.pieces.pieces;
  const mixG = (pans * batch.slab.batchG) / kept;
  const inPieces = Math.min(1, (pieces * batch.pieces.pieceG) / mixG);
  const needed = new Map<string, NeededIngredient>();
  const add = (ingredient: Ingredient, more: Omit<NeededIngredient, "ingredient">): void => {
    const before = needed.get(ingredient.id) ?? { mixG: 0, coatingG: 0, wasteG: 0, coatingWasteG: 0 };
    needed.set(ingredient.id, {
      ingredient,
      mixG: before.mixG + more.mixG,
      coatingG: before.coatingG + more.coatingG,
      wasteG: before.wasteG + more.wasteG,
      coatingWasteG: before.coatingWasteG + more.coatingWasteG,
    });
  };
  for (const { ingredient, massG } of totals.lines) {
    const own = (mixG * massG) / totals.mixG;
    add(ingredient, { mixG: own, coatingG: 0, wasteG: own * (1 - inPieces), coatingWasteG: 0 });
  }
  let { pieceG: coatedPieceG } = batch.pieces;
  if (totals.layers.length > 0) {
    const plan = coatingPlan({
      totals,
      pieces,
      pieceG: batch.pieces.pieceG,
      surfaceMm2: batch.pieces.surfaceMm2,
      leftoverPercent: options.leftoverPercent,
    });
    coatedPieceG = plan.coatedPieceG;
    for (const [at, { putOutG, leftG }] of plan.layers.entries()) {
      const { lines, blend } = totals.layers[at];
      for (const { ingredient, massG } of lines) {
        const share = massG / blend.massG;
        add(ingredient, { mixG: 0, coatingG: putOutG * share, wasteG: leftG * share, coatingWasteG: leftG * share });
      }
    }
  }
  return freezeDeep({ variant, batch, pans, pieces, coatedPieceG, ingredients: [...needed.values()] });
}
