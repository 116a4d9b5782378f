import type { AllergenMark, EuAllergen, UsAllergen } from "../ingredient/allergens";
import { EU_ALLERGENS, US_ALLERGENS } from "../ingredient/allergens";
import type { Ingredient } from "../ingredient/ingredient";
import type { FormulaTotals } from "./formula-totals";

/** One allergen that a formula holds or may hold. */
export interface GatheredAllergen<Name extends string> {
  readonly allergen: Name;
  /** species and grains, which labels must name */
  readonly species: readonly string[];
  readonly certainty: "inherent" | "depends on the maker";
  /** the ingredients that bring it */
  readonly from: readonly string[];
}

/** The allergens gathered from a formula's ingredients: a reminder, never a declaration. */
export interface FormulaAllergens {
  readonly us: readonly GatheredAllergen<UsAllergen>[];
  readonly eu: readonly GatheredAllergen<EuAllergen>[];
  /** sentences that must stand beside the lists */
  readonly cautions: readonly string[];
}

/**
 * Gathers the allergen marks of every ingredient of the mix and of every coating layer: the nine of US law (FALCPA
 * 2004, FASTER Act 2021) and the fourteen of Annex II of Regulation (EU) 1169/2011. What is not listed is not thereby
 * absent: makers change recipes, and lines share equipment.
 *
 * @param totals from `formulaTotals`
 * @example
 * const kitchen = loadKitchen();
 * const totals = formulaTotals(variantOf(kitchen, "turkey-sage").formula, kitchen.ingredients);
 * formulaAllergens(totals).us.map((one) => one.allergen); // → ["milk","egg","wheat","soy","sesame"]
 */
export function formulaAllergens(totals: FormulaTotals): FormulaAllergens {
  const lines = [...totals.lines, ...totals.layers.flatMap((layer) => layer.lines)];
  const ingredients = [...new Set(lines.map((line) => line.ingredient))];
  return Object.freeze({
    us: gather(ingredients, US_ALLERGENS, (ingredient) => ingredient.allergensUs),
    eu: gather(ingredients, EU_ALLERGENS, (ingredient) => ingredient.allergensEu),
    cautions: Object.freeze([
      "Check the label of every ingredient: these marks are a reminder read from names, not a declaration.",
      "An allergen that is not listed may still be there, through a maker's recipe or shared equipment.",
    ]),
  });
}

function gather<Name extends string>(
  ingredients: readonly Ingredient[],
  order: readonly Name[],
  marksOf: (ingredient: Ingredient) => readonly AllergenMark<Name>[],
): readonly GatheredAllergen<Name>[] {
  return Object.freeze(
    order.flatMap((allergen) => {
      const found = ingredients.flatMap((ingredient) =>
        marksOf(ingredient)
          .filter((mark) => mark.allergen === allergen)
          .map((mark) => ({ mark, name: ingredient.name })),
      );
      if (found.length === 0) return [];
      const inherent = found.some(({ mark }) => mark.certainty === "inherent");
      return [
        Object.freeze({
          allergen,
          species: Object.freeze([...new Set(found.map(({ mark }) => mark.species).filter(Boolean))]),
          certainty: inherent ? ("inherent" as const) : ("depends on the maker" as const),
          from: Object.freeze([...new Set(found.map(({ name }) => name))]),
        }),
      ];
    }),
  );
}
