import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { formulaAllergens } from "../../food/formula/formula-allergens";
import { formulaTotals } from "../../food/formula/formula-totals";
import { type LabelLine, labelEu, labelUs } from "../../macros/label-values";
import { pieceMacros } from "../../macros/piece-macros";
import { storageLife } from "../../safety/cold/storage-life";
import { storedFoodOf } from "../../safety/cold/stored-food-of";
import type { CardLanguage } from "../../trials/card-language";
import type { Kitchen } from "../../trials/kitchen";
import { dayAfter } from "../../trials/last-day";
import { ownMassText } from "../../units/mass-text";
import type { KitchenUnits } from "../../units/unit-table";
import { ingredientsNeeded } from "../cost/ingredients-needed";
import { cardNumber, cardTexts } from "./card-texts";

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

/** What a pack says of what is in it, in the kitchen's language. */
export interface PackLabel {
  readonly kind: "pack label";
  readonly variantId: string;
  readonly variantName: string;
  readonly language: CardLanguage;
  readonly units: KitchenUnits;
  /** raw, or not: first on the label */
  readonly state: string;
  /** heaviest first, of the piece as coated */
  readonly ingredients: readonly string[];
  /** of the kitchen's side of the ocean, with what each is from; a reminder, not a declaration */
  readonly allergens: readonly string[];
  readonly pieceG: number;
  readonly piecesPerServing: number;
  /** as packed and rounded as labels are: by 21 CFR 101.9(c) for a serving, or by the EU's guidance for 100 g */
  readonly nutrition: {
    readonly of: string;
    readonly lines: readonly { readonly name: string; readonly amount: string }[];
  };
  readonly batch: string | null;
  readonly frozenOn: string | null;
  /** quality, kept at −18 °C: days, and the day where one was given */
  readonly lifeDays: number;
  readonly bestBefore: string | null;
  readonly lifeSource: string;
  readonly cautions: readonly string[];
}

/**
 * What a pack says of what is in it, in the kitchen's language: raw or not, ingredients in descending order, allergens to check,
 * nutrition, storage. Ingredients and nutrition are of the coated piece as it goes into the freezer, without what is thrown away.
 * Names of foods stay as the kitchen writes them.
 *
 * @example
 * const label = packLabel({ kitchen: loadKitchen(), variantId: "turkey-sage", frozenOn: "2026-03-14" });
 * label.state; // → "Raw. Cook until every core is at 74 °C (165 °F)."
 * label.bestBefore; // → "2026-06-13"
 * label.nutrition.of; // → "in 100 g, as packed"
 * label.nutrition.lines[0]; // → { name: "energy", amount: "904 kJ" }
 */
export function packLabel(options: PackLabelOptions): PackLabel {
  const { kitchen, frozenOn, packagingFactor, batch = null } = options;
  const { units, language } = kitchen;
  const texts = cardTexts(language);
  const {
    variant,
    batch: made,
    ingredients,
    coatedPieceG,
  } = ingredientsNeeded(kitchen, { variantId: options.variantId });
  const totals = formulaTotals(variant.formula, kitchen.ingredients);
  const allergens = formulaAllergens(totals);
  const { pieceG, surfaceMm2 } = made.pieces;
  const macros = pieceMacros({ totals, pieceG, surfaceMm2 });
  const { piecesPerServing } = variant.formula;
  const servingMass = units === "us" ? ownMassText(piecesPerServing * coatedPieceG, units) : null;
  const nutrients = units === "us" ? labelUs(macros).lines : labelEu(macros, "frozen").lines;
  const { lifeDays, source } = storageLife({ steps: [], food: storedFoodOf(variant.limit), packagingFactor });
  const onPiece = ingredients
    .map(({ ingredient, mixG, coatingG, wasteG }) => ({ name: ingredient.name, massG: mixG + coatingG - wasteG }))
    .sort((a, b) => b.massG - a.massG);
  return freezeDeep({
    kind: "pack label" as const,
    variantId: variant.variantId,
    variantName: variant.name,
    language,
    units,
    state: texts.state(variant.limit, units),
    ingredients: onPiece.map(({ name }) => name),
    allergens: (units === "us" ? allergens.us : allergens.eu).map(
      ({ allergen, certainty, from }) =>
        `${texts.allergen[allergen]}${certainty === "inherent" ? "" : `, ${texts.dependsOnMaker}`} (${from.join(", ")})`,
    ),
    pieceG: coatedPieceG,
    piecesPerServing,
    nutrition: {
      of: texts.nutritionOf(servingMass),
      lines: nutrients.map((line) => ({
        name: texts.nutrient[line.name],
        amount: cardNumber(amountText(line), language, units),
      })),
    },
    batch,
    frozenOn: frozenOn ?? null,
    lifeDays: Math.floor(lifeDays),
    bestBefore: frozenOn === undefined ? null : dayAfter(checkDay(frozenOn), Math.floor(lifeDays)),
    lifeSource: source,
    cautions: [...texts.allergenCautions, texts.nutritionCaution, texts.storageCaution],
  });
}

/** A label's line; calories stand without a unit on a US label. */
function amountText({ name, printed, unit }: LabelLine): string {
  return name === "calories" ? printed : `${printed} ${unit}`;
}

/** The day that a pack was frozen, which must be one of the calendar. */
function checkDay(day: string): string {
  const start = /^\d{4}-\d{2}-\d{2}$/.test(day) ? Date.parse(`${day}T00:00:00Z`) : Number.NaN;
  if (Number.isNaN(start) || dayAfter(day, 0) !== day) fail("packLabel: frozenOn", "must be a day, as 2026-03-14", day);
  return day;
}
