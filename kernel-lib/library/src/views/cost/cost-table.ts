import type { BatchCost, Cost } from "../../advice/cost/batch-cost";
import type { Table } from "../table/table";

/**
 * What batches cost, a row each: batch, piece, serving, a kilogram as frozen and as eaten, and waste, each with its standard uncertainty;
 * "at least" where prices are missing, which are named below.
 *
 * @example
 * const kitchen = loadKitchen();
 * costTable([batchCost({ kitchen, variantId: "beet-lentil" })]).rows.length; // → 1
 */
export function costTable(costs: readonly BatchCost[]): Table {
  const old = new Set(
    costs.flatMap(({ oldPrices }) =>
      oldPrices.map(({ name, ageDays }) => `${name} (${Math.round((ageDays as number) / 30.4)} months)`),
    ),
  );
  return {
    kind: "table",
    title: "What it costs",
    columns: [
      "product",
      "pieces",
      "a batch",
      "a piece",
      "a serving",
      "a kilogram, frozen",
      "a kilogram, as eaten",
      "of a batch thrown away",
      "dearest part",
    ].map((heading) => ({ heading })),
    rows: costs.map((cost) => {
      const { variantName, pieces, batch, piece, serving, kilogram, eatenKilogram, waste, parts, unpriced } = cost;
      const least = unpriced.length > 0;
      return [
        variantName,
        pieces,
        told(batch, least),
        told(piece, least),
        told(serving, least),
        told(kilogram, least),
        eatenKilogram === null ? null : told(eatenKilogram, least),
        told(waste, least),
        `${parts[0].name} (${Math.round((100 * parts[0].cost) / batch.cost)} %${least ? " of what is priced" : ""})`,
      ];
    }),
    notes: [
      ...new Set(costs.flatMap(({ notes }) => notes)),
      ...(old.size === 0 ? [] : [`Prices over half a year old, to be looked up again: ${[...old].join(", ")}.`]),
      "In the currency that the prices are in. As eaten: after the loss of the trials that were weighed.",
    ],
  };
}

/** To a hundredth, or as many digits as its doubt has. */
function told({ cost, se }: Cost, least: boolean): string {
  const decimals = se > 0 ? Math.min(6, Math.max(2, Math.ceil(-Math.log10(se)))) : 2;
  return `${least ? "at least " : ""}${cost.toFixed(decimals)} ± ${se.toFixed(decimals)}`;
}
