import type { OtherPans } from "../../advice/window/other-pans";
import { limitCaution, limitText } from "../../safety/limit-text";
import { ownMassText } from "../../units/mass-text";
import { ownSettingText } from "../../units/setting-text";
import type { Table } from "../table/table";
import { tableIn } from "../table/table-in";

/**
 * The same batch on every pan: thickness, window, card time, chance, verdict, and what to change, the first in its row and all in order below.
 *
 * @example
 * windowPansTable(otherPans({ kitchen: loadKitchen(), variantId: "beet-lentil" })).rows.length; // → 6
 */
export function windowPansTable(pans: OtherPans): Table {
  const { units } = pans;
  const limit = limitText(pans.limit, units);
  const table: Table = {
    kind: "table",
    title: `${pans.variantId}: ${ownMassText(pans.batchG, units)} on every pan, ${pans.applianceId} at ${ownSettingText(pans.setpointC, units)}`,
    columns: [
      { heading: "pan" },
      { heading: "thickness (mm)", decimals: 1 },
      { heading: `core ${limit} by (min)`, decimals: 1 },
      { heading: "opens (min)", decimals: 1 },
      { heading: "closes (min)", decimals: 1 },
      { heading: "card (min)" },
      { heading: "success (%)", decimals: 0 },
      { heading: "verdict" },
      { heading: "first change to try" },
    ],
    rows: pans.pans.map(({ panName, window, verdict, remedies }) => {
      const changes = remedies.length === 0 ? null : remedies[0].sentence;
      if (window === null) return [panName, null, null, null, null, null, null, verdict, changes];
      const { setting, chances, opens, closes, recommended } = window;
      const shown = (minutes: number): number | null => (minutes < 1e4 ? minutes : null);
      return [
        panName,
        setting.thicknessMm,
        shown(chances.safeFromMin),
        shown(opens.min),
        shown(closes.min),
        recommended.cardMin,
        100 * recommended.success,
        verdict,
        changes,
      ];
    }),
    notes: [
      ...pans.pans.flatMap(({ panName, remedies }) =>
        remedies.length < 2
          ? []
          : [`${panName}: ${remedies.map((remedy, at) => `${at + 1}. ${remedy.sentence}`).join("; ")}.`],
      ),
      "Core by: the time from which every core of 99 of 100 loads is safe. Opens: when a typical piece is at its limit and crisp.",
      limitCaution(pans.limit, units),
      `Core limit: ${pans.limit.source}.`,
    ],
  };
  return tableIn(table, units);
}
