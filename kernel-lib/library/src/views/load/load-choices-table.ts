import type { LoadChoices } from "../../advice/load/load-choices";
import { ownSettingText } from "../../units/setting-text";
import type { Table } from "../table/table";

/**
 * Ways to bring a number of pieces back, a row each, soonest first: loads, minutes in all, minutes of hands, and how often a
 * piece comes out right.
 *
 * @example
 * loadChoicesTable(loadChoices({ kitchen: loadKitchen(), variantId: "beet-lentil", pieces: 60 })).rows.length; // → 4
 */
export function loadChoicesTable({ choices, notes, pieces, units, variantName }: LoadChoices): Table {
  return {
    kind: "table",
    title: `${pieces} pieces of ${variantName}: how to bring them back`,
    columns: [
      { heading: "appliance" },
      { heading: "setting" },
      { heading: "loads" },
      { heading: "a load (min)" },
      { heading: "in all (min)", decimals: 0 },
      { heading: "hands (min)", decimals: 0 },
      { heading: "first load waits (min)", decimals: 0 },
      { heading: "pieces right (%)", decimals: 0 },
      { heading: "setting tried" },
    ],
    rows: choices.map((one) => [
      `${one.applianceName}${one.appliances > 1 ? ` (${one.appliances})` : ""}, ${one.fill}`,
      ownSettingText(one.setpointC, units),
      `${one.loads} of ${one.piecesPerLoad}`,
      one.cookMin,
      Math.ceil(one.totalMin),
      Math.ceil(one.handsMin),
      Math.ceil(one.waitsMin),
      one.success === null ? null : 100 * one.success,
      one.standing ?? "yes",
    ]),
    notes: [
      "Loads: how many, of how many pieces each. Right: safe, crisp, and neither too brown nor too dry. The first load waits until the last one is out: keep it hot, or bring it back last.",
      ...notes,
    ],
  };
}
