import type { LabelValues } from "../../macros/label-values";
import type { Table } from "../table/table";

/**
 * Label values with the unrounded amounts and what the ends of the 95 % interval would print.
 *
 * @example
 * const kitchen = loadKitchen();
 * const totals = formulaTotals(variantOf(kitchen, "beet-lentil").formula, kitchen.ingredients);
 * const macros = pieceMacros({ totals, pieceG: 16, pieceSeG: 0.8, reheat: { yieldPercent: 93, yieldSePercent: 1 } });
 * labelTable(labelUs(macros)).rows.length; // → 9
 */
export function labelTable(label: LabelValues): Table {
  return {
    kind: "table",
    title: `${label.formulaId}: ${label.rule}, ${label.of}`,
    columns: [
      { heading: "what" },
      { heading: "printed" },
      { heading: "unit" },
      { heading: "not rounded" },
      { heading: "could print (95 %)" },
    ],
    rows: label.lines.map(({ name, unit, amount, printed, printed95 }) => [
      name,
      printed,
      unit,
      amount,
      printed95[0] === printed95[1] ? printed95[0] : `${printed95[0]} to ${printed95[1]}`,
    ]),
    notes: label.cautions,
  };
}
