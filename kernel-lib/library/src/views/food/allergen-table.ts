import type { FormulaAllergens } from "../../food/formula/formula-allergens";
import type { Table } from "../table/table";

/**
 * Allergens gathered from a formula, US nine and EU fourteen, with what brings them.
 *
 * @example
 * const kitchen = loadKitchen();
 * const totals = formulaTotals(variantOf(kitchen, "beet-lentil").formula, kitchen.ingredients);
 * allergenTable(formulaAllergens(totals)).rows.length; // → 2
 */
export function allergenTable(allergens: FormulaAllergens): Table {
  const rows = [
    ...allergens.us.map((one) => ({ list: "US nine", ...one })),
    ...allergens.eu.map((one) => ({ list: "EU fourteen", ...one })),
  ];
  return {
    kind: "table",
    title: "Allergens to check",
    columns: [
      { heading: "list" },
      { heading: "allergen" },
      { heading: "species or grain" },
      { heading: "certainty" },
      { heading: "brought by" },
    ],
    rows: rows.map(({ list, allergen, species, certainty, from }) => [
      list,
      allergen,
      species.join(", ") || null,
      certainty,
      from.join("; "),
    ]),
    notes: allergens.cautions,
  };
}
