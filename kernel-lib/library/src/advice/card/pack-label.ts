import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { formulaAllergens } from "../../food/formula/formula-allergens";
import { formulaTotals } from "../../food/formula/formula-totals";
import { type StoredFood, storageLife } from "../../safety/cold/storage-life";
import type { CoreLimit } from "../../safety/core-limit";
import { bothLimits } from "../../safety/limit-text";
import type { Kitchen } from "../../trials/kitchen";
import { ingredientsNeeded } from "../cost/ingredients-needed";

/** What `packLabel` works from. */
export interface PackLabelOptions {
  readonly kitchen: Kitchen;
  readonly variantId: string;
  /** day that it was frozen, as 2026-03-14; left out: no date is printed */
  readonly frozenOn?: string;
  /** the kitchen's name for the batch */
  readonly batch?: string;
  /** as for `storageLife`; 1 unless given */
  readonly packagingFactor?: number;
}

/** What a pack says of what is in it. */
export interface PackLabel {
  readonly kind: "pack label";
  readonly variantId: string;
  readonly variantName: string;
  /** raw, or not: first on the label */
  readonly state: string;
  /** heaviest first, of the piece as coated */
  readonly ingredients: readonly string[];
  /** of the kitchen's side of the ocean, with what each is from; a reminder, not a declaration */
  readonly allergens: readonly string[];
  readonly pieceG: number;
  readonly piecesPerServing: number;
  readonly batch: string | null;
  readonly frozenOn: string | null;
  /** quality, kept at −18 °C: days, and the day where one was given */
  readonly lifeDays: number;
  readonly bestBefore: string | null;
  readonly lifeSource: string;
  readonly cautions: readonly string[];
}

const DAY_MS = 86_400_000;

/**
 * What a pack says of what is in it: raw or not, ingredients in descending order, allergens to check, storage. Ingredients are
 * counted on the coated piece as it goes into the freezer, without what is thrown away.
 *
 * @example
 * const label = packLabel({ kitchen: loadKitchen(), variantId: "turkey-sage", frozenOn: "2026-03-14" });
 * label.state; // → "Raw. Cook until every core is at 74 °C (165 °F)."
 * label.bestBefore; // → "2026-12-13"
 */
export function packLabel(options: PackLabelOptions): PackLabel {
  const { kitchen, frozenOn, packagingFactor, batch = null } = options;
  const { variant, ingredients, coatedPieceG } = ingredientsNeeded(kitchen, { variantId: options.variantId });
  const allergens = formulaAllergens(formulaTotals(variant.formula, kitchen.ingredients));
  const { lifeDays, source, caution } = storageLife({ steps: [], food: storedAs(variant.limit), packagingFactor });
  const { limit } = variant;
  const onPiece = ingredients
    .map(({ ingredient, mixG, coatingG, wasteG }) => ({ name: ingredient.name, massG: mixG + coatingG - wasteG }))
    .sort((a, b) => b.massG - a.massG);
  return freezeDeep({
    kind: "pack label" as const,
    variantId: variant.variantId,
    variantName: variant.name,
    state: `${limit.raw ? "Raw. Cook" : "Heat"} until every core is at ${bothLimits(limit, kitchen.units)}.`,
    ingredients: onPiece.map(({ name }) => name),
    allergens: (kitchen.units === "us" ? allergens.us : allergens.eu).map(
      ({ allergen, certainty, from }) =>
        `${allergen}${certainty === "inherent" ? "" : ", depends on the maker"} (${from.join(", ")})`,
    ),
    pieceG: coatedPieceG,
    piecesPerServing: variant.formula.piecesPerServing,
    batch,
    frozenOn: frozenOn ?? null,
    lifeDays: Math.floor(lifeDays),
    bestBefore: frozenOn === undefined ? null : dayAfter(frozenOn, Math.floor(lifeDays)),
    lifeSource: source,
    cautions: [...allergens.cautions, caution],
  });
}

/** The storage life that stands for a product; what is not known takes a short one. */
function storedAs({ foodClass, raw }: CoreLimit): StoredFood {
  if (foodClass === "poultry") return raw ? "raw poultry" : "cooked poultry";
  if (foodClass === "fish") return "breaded fish";
  if (foodClass === "groundMeat" || foodClass === "wholeMeat") return raw ? "ground meat" : "cooked poultry";
  return foodClass === "plant" ? "vegetable" : "cooked poultry";
}

function dayAfter(day: string, days: number): string {
  const start = /^\d{4}-\d{2}-\d{2}$/.test(day) ? Date.parse(`${day}T00:00:00Z`) : Number.NaN;
  if (Number.isNaN(start) || new Date(start).toISOString().slice(0, 10) !== day)
    fail("packLabel: frozenOn", "must be a day, as 2026-03-14", day);
  return new Date(start + days * DAY_MS).toISOString().slice(0, 10);
}
