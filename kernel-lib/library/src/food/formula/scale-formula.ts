import { fail, positive, within } from "../../check/check";
import type { CookedPot } from "./cooked-pots";
import type { FormulaTotals } from "./formula-totals";
import { scaledMeasure } from "./scaled-measure";

/** What the formula is scaled to. */
export type ScaleTo =
  /** a mass of mix (g); for a thickness on a pan that of `slabMassG` */
  | { readonly mixG: number }
  /** a count of bare pieces; share of the slab that becomes pieces, 1 unless given (see `cutGrid`) */
  | { readonly pieces: number; readonly pieceG: number; readonly cutYieldFraction?: number };

/** One line of a scaled formula: grams always, with the household measure beside them where the formula used one. */
export interface ScaledLine {
  readonly ingredientId: string;
  readonly name: string;
  readonly massG: number;
  /** the formula's household measure, scaled, to the nearest eighth; `null` for weighed lines */
  readonly measure: string | null;
  /** how the grams were come by: `"weighed"`, a household weight with its source, a percentage */
  readonly how: string;
}

/** A formula for another batch. */
export interface ScaledFormula {
  readonly formulaId: string;
  /** every line is multiplied by this */
  readonly factor: number;
  readonly mixG: number;
  readonly lines: readonly ScaledLine[];
  /** what each pot is cooked down to: `cookedG` of the formula, scaled */
  readonly pots: readonly CookedPot[];
}

/**
 * Scales a formula's mix to a mass or to a count of pieces. For a thickness on a pan:
 * `scaleFormula(totals, { mixG: slabMassG({ pan, thicknessMm, densityKgM3 }) })`.
 *
 * factor = wanted mix / formula's mix; for pieces the wanted mix = pieces × piece / cut yield
 *
 * @param totals from `formulaTotals`
 * @param to what to scale to
 * @returns every line in grams, with its household measure scaled
 * @example
 * const kitchen = loadKitchen();
 * const totals = formulaTotals(variantOf(kitchen, "beet-lentil").formula, kitchen.ingredients);
 * const half = scaleFormula(totals, { mixG: 625 });
 * half.lines[3]?.measure; // → "1/4 cup chopped"
 * half.lines[3]?.massG; // → 39.99
 */
export function scaleFormula(totals: FormulaTotals, to: ScaleTo): ScaledFormula {
  const mixG = wantedMixG(to);
  const factor = mixG / totals.mixG;
  return Object.freeze({
    formulaId: totals.formula.id,
    factor,
    mixG,
    lines: Object.freeze(
      totals.lines.map((line) =>
        Object.freeze({
          ingredientId: line.ingredient.id,
          name: line.ingredient.name,
          massG: line.massG * factor,
          measure: line.by === "household measure" ? scaledMeasure(line.amount, factor) : null,
          how: line.how,
        }),
      ),
    ),
    pots: Object.freeze(
      totals.pots.map((pot) =>
        Object.freeze({
          ...pot,
          rawG: pot.rawG * factor,
          cookedG: pot.cookedG * factor,
          waterLostG: pot.waterLostG * factor,
        }),
      ),
    ),
  });
}

function wantedMixG(to: ScaleTo): number {
  if ("mixG" in to) return positive(to.mixG, "scaleFormula: mixG", "g");
  if (!(Number.isInteger(to.pieces) && to.pieces > 0)) {
    fail("scaleFormula: pieces", "must be a whole number > 0", to.pieces);
  }
  const kept = within(to.cutYieldFraction ?? 1, 0.05, 1, "scaleFormula: cutYieldFraction", "");
  return (to.pieces * positive(to.pieceG, "scaleFormula: pieceG", "g")) / kept;
}
