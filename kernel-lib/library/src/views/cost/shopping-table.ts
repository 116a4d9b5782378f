import type { ShoppingList } from "../../advice/cost/shopping-list";
import { ownMassText } from "../../units/mass-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { Table } from "../table/table";
import { tableIn } from "../table/table-in";

/**
 * A shopping list: what is to be bought, most first; what is there already stands below.
 *
 * @param units the kitchen's own; default metric
 * @example
 * const list = shoppingList({ kitchen: loadKitchen(), batches: [{ variantId: "beet-lentil" }] });
 * shoppingTable(list).columns.length; // → 6
 */
export function shoppingTable(
  { cost: total, costSe, lines, unpriced }: ShoppingList,
  units: KitchenUnits = "metric",
): Table {
  const enough = lines
    .filter(({ buyG }) => buyG === 0)
    .map(({ name, neededG }) => `${name} (${ownMassText(neededG, units)})`);
  return tableIn(
    {
      kind: "table",
      title: "Shopping list",
      columns: [
        { heading: "ingredient" },
        { heading: "buy (g)", decimals: 0 },
        { heading: "packs" },
        { heading: "needed (g)", decimals: 0 },
        { heading: "in stock (g)", decimals: 0 },
        { heading: "cost", decimals: 2 },
      ],
      rows: lines
        .filter(({ buyG }) => buyG > 0)
        .map(({ name, buyG, packs, packG, neededG, inStockG, cost }) => [
          name,
          Math.ceil(buyG),
          packs === null || packs === 0 || packG === null ? null : `${packs} of ${ownMassText(packG, units)}`,
          Math.ceil(neededG),
          inStockG,
          cost,
        ]),
      notes: [
        ...(enough.length === 0 ? [] : [`Enough on the shelf: ${enough.join(", ")}.`]),
        "Bowl loss, trim and coating that is left behind are in it.",
        ...(total === 0
          ? []
          : [`What has a price: ${total.toFixed(2)} ± ${costSe.toFixed(2)} (one standard uncertainty).`]),
        ...(unpriced.length === 0 ? [] : [`No price is known for ${unpriced.join(", ")}.`]),
        "Read the label of what you buy: allergens and composition are the maker's to say.",
      ],
    },
    units,
  );
}
