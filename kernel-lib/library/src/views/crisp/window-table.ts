import type { KitchenWindow } from "../../advice/window/crisp-window";
import type { Moment } from "../../crisp/window/window-at";
import { NEVER_MIN } from "../../crisp/window/window-setting";
import { limitCaution, limitText } from "../../safety/limit-text";
import { ownSettingText } from "../../units/setting-text";
import { thicknessWords } from "../../units/thickness-text";
import type { Table } from "../table/table";

/**
 * One crisp window: its moments with their intervals, and the card time with its chance.
 *
 * @example
 * const window = crispWindow({ kitchen: loadKitchen(), variantId: "beet-lentil" });
 * windowTable(window).rows.length; // → 8
 */
export function windowTable(window: KitchenWindow): Table {
  const { setting, chances, recommended, limit, extrapolation, doubts } = window;
  const row = (name: string, { min, interval95: [low, high] }: Moment): (string | number | null)[] => [
    name,
    ...[min, low, high].map((minutes) => (minutes < 1e4 ? minutes : null)),
  ];
  return {
    kind: "table",
    title: `${window.variantName}: ${thicknessWords(setting.thicknessMm, setting.units)}, ${setting.applianceId} at ${ownSettingText(setting.setpointC, setting.units)}`,
    columns: [
      { heading: "moment" },
      { heading: "min", decimals: 1 },
      { heading: "95 % from", decimals: 1 },
      { heading: "to", decimals: 1 },
    ],
    rows: [
      row(`typical core at ${limitText(limit, setting.units)}`, window.core),
      [
        "every core of 99 of 100 loads safe from",
        chances.safeFromMin < NEVER_MIN ? chances.safeFromMin : null,
        null,
        null,
      ],
      row("crisp", window.crisp),
      row("too brown", window.brown),
      row("too dry", window.dry),
      row("opens", window.opens),
      row("closes", window.closes),
      ["card time", recommended.cardMin, null, null],
    ],
    notes: [
      window.sentence,
      ...(extrapolation.length === 0 ? [] : [`Beyond the trials: ${extrapolation.join("; ")}.`]),
      ...(doubts.length === 0 ? [] : [`Doubtful: ${doubts.join("; ")}.`]),
      limitCaution(limit, setting.units),
      `Core limit: ${limit.source}.`,
    ],
  };
}
