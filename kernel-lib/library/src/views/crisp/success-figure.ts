import type { KitchenWindow } from "../../advice/window/crisp-window";
import { chanceText } from "../../crisp/window/window-words";
import { limitCaution, limitText } from "../../safety/limit-text";
import { ownSettingText } from "../../units/setting-text";
import { thicknessWords } from "../../units/thickness-text";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { PALETTE } from "../figure/palette";
import { unsafeTime } from "./unsafe-time";

/**
 * Chance of success against time: what a piece's chance is to be safe, crisp and not overdone, and each of the three
 * alone; the safe time and the card time are marked, times before the safe one are greyed.
 *
 * @example
 * const window = crispWindow({ kitchen: loadKitchen(), variantId: "beet-lentil" });
 * successFigure(window).data.length; // → 5
 */
export function successFigure(window: KitchenWindow): Figure {
  const { chances, recommended, setting, limit } = window;
  const where = `${thicknessWords(setting.thicknessMm, setting.units)} at ${ownSettingText(setting.setpointC, setting.units)}`;
  const line = (name: string, y: readonly number[], colour: string, dash: string, width: number): object => ({
    type: "scatter",
    mode: "lines",
    name,
    x: chances.timesMin,
    y: y.map((chance) => 100 * chance),
    line: { color: colour, width, dash },
    hovertemplate: `${name}: %{y:.0f} % at %{x:.1f} min<extra></extra>`,
  });
  return {
    kind: "figure",
    data: [
      line(`core at ${limitText(limit, setting.units)}`, chances.safe, PALETTE[3], "dash", 1.5),
      line("crisp", chances.crisp, PALETTE[0], "dot", 1.5),
      line("overdone", chances.overdone, PALETTE[1], "dashdot", 1.5),
      line("success", chances.success, PALETTE[2], "solid", 3),
      {
        type: "scatter",
        mode: "markers",
        name: "card time",
        x: [recommended.cardMin],
        y: [100 * recommended.success],
        marker: { symbol: "star", size: 15, color: PALETTE[6] },
        hovertemplate: "card: %{x} min, success %{y:.0f} %<extra></extra>",
      },
    ],
    layout: houseLayout({
      title: `${window.variantName}: chance of success, ${where}`,
      xTitle: "time in the appliance (min)",
      yTitle: "share of pieces (%)",
      more: unsafeTime(chances.safeFromMin),
    }),
    summary:
      `${window.variantName}, ${where}: at ${recommended.cardMin} min ` +
      `${chanceText(recommended.success)} of ${chances.draws} drawn pieces are safe, crisp and not overdone; every piece of 99 of 100 loads is safe from ${chances.safeFromMin.toFixed(1)} min. ${limitCaution(limit, setting.units)}`,
  };
}
