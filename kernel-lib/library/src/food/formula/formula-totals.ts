import { type Composition, checkComposition } from "../composition/composition";
import { compositionOf } from "../composition/composition-of";
import type { Ingredient } from "../ingredient/ingredient";
import { NUTRIENT_NAMES, type Nutrients } from "../ingredient/nutrients";
import { type Blend, type BlendPart, blend } from "./blend";
import { type CookedPot, cookedPots } from "./cooked-pots";
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
  /** total of the mix (g), after what boiled off */
  readonly mixG: number;
  /** as they go in */
  readonly lines: readonly WeighedLine[];
  /** what was cooked down, and the water that it lost; empty when nothing was */
  readonly pots: readonly CookedPot[];
  /** nutrients of the mix */
  readonly mix: Blend;
  /** the mix as six mass fractions, for density and thermal properties */
  readonly composition: Composition;
  readonly layers: readonly LayerBlend[];
  /** price of the mix per kg, when every ingredient has one; otherwise `null` */
  readonly costPerKg: number | null;
}

/** What boils off: water, and nothing else that is known. */
const WATER_LOST: BlendPart["ingredient"] = {
  name: "water boiled off",
  per100G: { ...(Object.fromEntries(NUTRIENT_NAMES.map((name) => [name, null])) as unknown as Nutrients), waterG: 100 },
};

/**
 * Weighs a formula: every line in grams with how it was come by, the nutrients of the mix with what is not known, its
 * composition, and the same for each coating layer. Where lines are cooked down (`cookedG`), the water that boiled off has
 * left mix and composition; the lines stay as they go in.
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
  const pots = cookedPots({ formula, lines });
  const lostG = pots.reduce((sum, { waterLostG }) => sum + waterLostG, 0);
  const mix = blend(lostG === 0 ? lines : [...lines, { ingredient: WATER_LOST, massG: -lostG }]);
  return Object.freeze({
    formula,
    mixG: mix.massG,
    lines,
    pots,
    mix,
    composition: mixComposition(lines, lostG, formula.id),
    layers: Object.freeze(
      formula.coating.map((layer) => {
        const layerLines = weighLines({ lines: layer.lines, ingredients, where: `${formula.id} ${layer.layer}` });
        return Object.freeze({ layer, lines: layerLines, blend: blend(layerLines) });
      }),
    ),
    costPerKg: costPerKg(lines, mix.massG),
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
function mixComposition(lines: readonly WeighedLine[], lostG: number, where: string): Composition {
  const massG = lines.reduce((sum, line) => sum + line.massG, 0) - lostG;
  const mean = (field: keyof Composition): number =>
    lines.reduce(
      (sum, line) => sum + line.massG * compositionOf(line.ingredient.per100G, line.ingredient.name)[field],
      0,
    ) / massG;
  const composition: Composition = Object.freeze({
    waterFraction: Math.max(0, mean("waterFraction") - lostG / massG),
    proteinFraction: mean("proteinFraction"),
    fatFraction: mean("fatFraction"),
    carbohydrateFraction: mean("carbohydrateFraction"),
    fibreFraction: mean("fibreFraction"),
    ashFraction: mean("ashFraction"),
  });
  return checkComposition(composition, where);
}

function costPerKg(lines: readonly WeighedLine[], mixG: number): number | null {
  let cost = 0;
  for (const line of lines) {
    if (line.ingredient.costPerKg === null) return null;
    cost += line.massG * line.ingredient.costPerKg;
  }
  return cost / mixG;
}
