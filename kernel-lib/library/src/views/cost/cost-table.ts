import type { BatchCost, Cost } from "../../advice/cost/batch-cost";
import type { Table } from "../table/table";

/**
 * What batches cost, a row each: batch, piece, serving, kilogram and waste, each with its standard uncertainty.
 *
 * @example
 * const kitchen = loadKitchen();
 * const priced = { ...kitchen, ingredients: kitchen.ingredients.map((one) => ({ ...one, costPerKg: 2 })) };
 * costTable([batchCost({ kitchen: priced, variantId: "beet-lentil" })]).rows.length; // → 1
 */
export function costTable(costs: readonly BatchCost[]): Table {
  const told = ({ cost, se }: Cost): string => `${money(cost)} ± ${money(se)}`;
  return {
    kind: "table",
    title: "What it costs",
    columns: [
      "product",
      "pieces",
      "a batch",
      "a piece",
      "a serving",
      "a kilogram",
      "of a batch thrown away",
      "dearest part",
    ].map((heading) => ({ heading })),
    rows: costs.map(({ variantName, pieces, batch, piece, serving, kilogram, waste, parts }) => [
      variantName,
      pieces,
      told(batch),
      told(piece),
      told(serving),
      told(kilogram),
      told(waste),
      parts[0].name,
    ]),
    notes: [...new Set(costs.map(({ note }) => note)), "In the currency that the prices under cost_per_kg are in."],
  };
}

/** To a hundredth; small sums to three digits. */
function money(value: number): string {
  return value >= 1 || value === 0 ? value.toFixed(2) : String(Number(value.toPrecision(2)));
}
