import type { FormulaTotals } from "../../food/formula/formula-totals";
import type { ScaledFormula } from "../../food/formula/scale-formula";
import { ownMassText } from "../../units/mass-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { Table } from "../table/table";
import { tableIn } from "../table/table-in";

/**
 * A formula's mix line by line: as written, in grams, as a share, and how the grams were come by. With a scaled formula
 * the grams and measures are those of the new batch.
 *
 * @param totals from `formulaTotals`
 * @param scaled from `scaleFormula` of the same formula, or null
 * @param units the kitchen's own; default metric
 *
 * @example
 * const kitchen = loadKitchen();
 * const totals = formulaTotals(variantOf(kitchen, "beet-lentil").formula, kitchen.ingredients);
 * formulaTable(totals).rows.length; // → 11
 */
export function formulaTable(
  totals: FormulaTotals,
  scaled?: ScaledFormula | null,
  units: KitchenUnits = "metric",
): Table {
  const factor = scaled?.factor ?? 1;
  const table: Table = {
    kind: "table",
    title: `${totals.formula.name}: ${ownMassText(totals.mixG * factor, units)} of mix`,
    columns: [
      { heading: "ingredient" },
      { heading: scaled ? "measure" : "as written" },
      { heading: "mass (g)", decimals: 1 },
      { heading: "of the mix (%)", decimals: 2 },
      { heading: "grams from" },
    ],
    rows: [
      ...totals.lines.map((line, at) => [
        line.ingredient.name,
        scaled ? scaled.lines[at].measure : line.amount,
        line.massG * factor,
        (100 * line.massG) / totals.mixG,
        line.how,
      ]),
      ...totals.pots.map(({ pot, cookedG, waterLostG }) => [
        pot === null ? "water boiled off" : `water boiled off ${pot}`,
        null,
        -waterLostG * factor,
        (-100 * waterLostG) / totals.mixG,
        `cooked down to ${ownMassText(cookedG * factor, units)}`,
      ]),
    ],
    notes: [
      `Water ${percent(totals.composition.waterFraction)}, protein ${percent(totals.composition.proteinFraction)}, fat ${percent(totals.composition.fatFraction)}, carbohydrate ${percent(totals.composition.carbohydrateFraction)}, fibre ${percent(totals.composition.fibreFraction)}, ash ${percent(totals.composition.ashFraction)}.`,
      `Formula: ${totals.formula.origin}. Weigh where you can: a cup or a spoon is good to about 10 %.`,
    ],
  };
  return tableIn(table, units);
}

function percent(fraction: number): string {
  return `${(100 * fraction).toFixed(1)} %`;
}
