import type { PackStock } from "../../advice/stock/pack-stock";
import { ownTemperatureText } from "../../units/temperature-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { Table } from "../table/table";

/**
 * The packs in the freezer, by product and in the order in which to use them: what is used up of each one's quality, by when to
 * eat it, and when its turn comes.
 *
 * @param units the kitchen's own; default metric
 * @example
 * stockTable(packStock({ kitchen: loadKitchen(), piecesPerWeek: 30 })).rows[0].slice(0, 3); // → ["turkey and sage sticks", "TS January", 24]
 */
export function stockTable({ notes, piecesPerWeek, products }: PackStock, units: KitchenUnits = "metric"): Table {
  const percent = (share: number): number => Math.round(100 * share);
  return {
    kind: "table",
    title: "Which pack goes first",
    columns: [
      { heading: "product" },
      { heading: "pack" },
      { heading: "pieces", decimals: 0 },
      { heading: "days old", decimals: 0 },
      { heading: "kept at" },
      { heading: "quality used up (%)" },
      { heading: "eat by" },
      { heading: "its turn, days from now" },
      { heading: "days to spare", decimals: 0 },
    ],
    rows: products.flatMap(({ packs, plan, variantName }) =>
      plan.turns.map(({ id, fromDay, untilDay, spareDays }) => {
        const { ageDays, life, pack, useBy } = packs.find((one) => one.pack.packId === id) as (typeof packs)[number];
        const [low, high] = life.usedRange.map(percent);
        return [
          variantName,
          id,
          pack.pieces,
          ageDays,
          `${ownTemperatureText(pack.keptC, units)}${pack.warmC.length > 0 ? ", with warm spells" : ""}${pack.packing === "loose" ? ", loose" : ""}`,
          `${percent(life.used)}${low === high ? "" : ` (${low} to ${high})`}`,
          useBy ?? "used up",
          `${Math.floor(fromDay)} to ${Math.ceil(untilDay)}`,
          Math.floor(spareDays),
        ];
      }),
    ),
    notes: [
      ...products.map(
        ({ plan, variantName }) =>
          `${variantName}: lasts ${Math.round(plan.lastsDays)} days at ${piecesPerWeek} pieces a week${plan.tooLate === 0 ? "" : `; ${plan.tooLate} pieces would be past their quality before they are eaten`}.`,
      ),
      ...notes,
    ],
  };
}
