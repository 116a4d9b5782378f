import { type Composition, checkComposition } from "../composition/composition";
import { compositionOf } from "../composition/composition-of";
import type { Ingredient } from "../ingredient/ingredient";
import { type Blend, blend } from "./blend";
import type { CoatingLayer, Formula } from "./formula";
import { type WeighedLine, weighLines } from "./weigh-lines";

/** One coating layer with what it is made of. */
export interface LayerBlend {
  readonly layer: CoatingLayer;
  readonly lines: readonly WeighedLine[];
  /** of the layer as it goes on; only the per-100 g values and the proportions matter */
  readonly blend: Blend;
}

/** A formula in grams. */
export interface FormulaTotals {
  readonly formula: Formula;
  /** total of the mix (g) */
  readonly mixG: number;
  readonly lines: readonly WeighedLine[];
  /** nutrients of the mix */
  readonly mix: Blend;
  /** the mix as six mass fractions, for density and thermal properties */
  readonly composition: Composition;
  readonly layers: readonly LayerBlend[];
  /** price of the mix per kg, when every ingredient has one; otherwise `null` */
  readonly costPerKg: number | null;
}

/**
 * Weighs a formula: every line in grams with how it was come by, the nutrients of the mix with what is not known, its
 * composition, and the same for each coating layer.
 *
 * @param formula from `parseFormula`
 * @param ingredients from `parseIngredients`
 * @example
 * const kitchen = loadKitchen();
 * const totals = formulaTotals(variantOf(kitchen, "beet-lentil").formula, kitchen.ingredients);
 * totals.mixG; // → 1250.3
 * totals.mix.per100G.proteinG; // → 6.949
 */
export function formulaTotals(formula: Formula, ingredients: readonly Ingredient[]): FormulaTotals {
  const lines = weighLines({ lines: formula.mix, ingredients, totalG: formula.mixG, where: `${formula.id} mix` });
  const mix = blend(lines);
  return Object.freeze({
    formula,
    mixG: mix.massG,
    lines,
    mix,
    composition: mixComposition(lines, formula.id),
    layers: Object.freeze(
      formula.coating.map((layer) => {
        const layerLines = weighLines({ lines: layer.lines, ingredients, where: `${formula.id} ${layer.layer}` });
        return Object.freeze({ layer, lines: layerLines, blend: blend(layerLines) });
      }),
    ),
    costPerKg: costPerKg(lines),
  });
}

/**
 * The composition of a formula's mix: what density, thermal properties and freezing work from.
 *
 * @param formula from `parseFormula`
 * @param ingredients from `parseIngredients`
 */
export function formulaComposition(formula: Formula, ingredients: readonly Ingredient[]): Composition {
  return formulaTotals(formula, ingredients).composition;
}

/** Each line's composition weighted by its mass, so that a table row that misses 100 g does not shift the rest. */
function mixComposition(lines: readonly WeighedLine[], where: string): Composition {
  const massG = lines.reduce((sum, line) => sum + line.massG, 0);
  const mean = (field: keyof Composition): number =>
    lines.reduce(
      (sum, line) => sum + line.massG * compositionOf(line.ingredient.per100G, line.ingredient.name)[field],
      0,
    ) / massG;
  const composition: Composition = Object.freeze({
    waterFraction: mean("waterFraction"),
    proteinFraction: mean("proteinFraction"),
    fatFraction: mean("fatFraction"),
    carbohydrateFraction: mean("carbohydrateFraction"),
    fibreFraction: mean("fibreFraction"),
    ashFraction: mean("ashFraction"),
  });
  return checkComposition(composition, where);
}

function costPerKg(lines: readonly WeighedLine[]): number | null {
  let cost = 0;
  let massG = 0;
  for (const line of lines) {
    if (line.ingredient.costPerKg === null) return null;
    cost += line.massG * line.ingredient.costPerKg;
    massG += line.massG;
  }
  return cost / massG;
}
