import type { TrialsToTell } from "../../advice/tell/trials-to-tell";
import type { Table } from "../table/table";

/**
 * How many trials of each variant tell two variants apart, a row a quantity.
 *
 * @example
 * trialsToTellTable(trialsToTell({ kitchen: loadKitchen(), variantId: "beet-lentil" })).rows.length; // → 4
 */
export function trialsToTellTable({ variantName, chance, quantities }: TrialsToTell): Table {
  return {
    kind: "table",
    title: `${variantName}: trials of each to tell it from another variant`,
    columns: [
      { heading: "what differs" },
      { heading: "by" },
      { heading: "one trial scatters by", decimals: 2 },
      { heading: "measured", decimals: 0 },
      { heading: "trials of each, side by side", decimals: 0 },
      { heading: "range" },
      { heading: "trials of each, mornings apart", decimals: 0 },
    ],
    rows: quantities.map(({ label, differs, sd, measurements, sideBySide, sideBySide95: [few, many], apart }) => [
      label,
      differs,
      sd,
      measurements,
      sideBySide,
      few === many ? `${few}` : `${few} to ${many}`,
      apart,
    ]),
    notes: [
      `To see the difference ${Math.round(100 * chance)} times in 100, at 5 false alarms in 100. Side by side: both variants in every morning. The range is what the doubt of the scatter leaves; another variant is taken to scatter alike.`,
    ],
  };
}
