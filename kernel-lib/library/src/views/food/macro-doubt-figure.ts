import { fail } from "../../check/check";
import type { PieceMacros } from "../../macros/piece-macros";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { PALETTE } from "../figure/palette";

/** Fewer sources than this are shown; the rest add up in one bar. */
const SHOWN = 8;

/**
 * Where the doubt of a piece's energy comes from: the share of its variance that each source brings, largest on top.
 * The top bar is what to weigh better first.
 *
 * @param macros from `pieceMacros`
 */
export function macroDoubtFigure(macros: PieceMacros): Figure {
  if (macros.energyDoubt.length === 0) {
    fail("macroDoubtFigure: macros", "must come from pieceMacros, which works out the shares", macros.method);
  }
  const top = macros.energyDoubt.slice(0, SHOWN);
  const rest = macros.energyDoubt.slice(SHOWN).reduce((sum, one) => sum + one.share, 0);
  const bars = rest > 0 ? [...top, { source: "all the rest", share: rest }] : [...top];
  const { value, standardError, interval95 } = macros.perPiece.energyKcal;
  return {
    kind: "figure",
    data: [
      {
        type: "bar",
        orientation: "h",
        x: bars.map((bar) => 100 * bar.share),
        y: bars.map((bar) => bar.source),
        marker: { color: PALETTE[0] },
        hovertemplate: "%{y}: %{x:.1f} %<extra></extra>",
      },
    ],
    layout: houseLayout({
      title: "Where the doubt of the energy comes from",
      xTitle: "share of the variance (%)",
      yTitle: "",
      more: {
        height: 160 + 34 * bars.length,
        yaxis: { autorange: "reversed", automargin: true, ticks: "outside" },
      },
    }),
    summary: `A piece of ${macros.formulaId} holds ${value.toFixed(0)} kcal, standard error ${standardError.toFixed(1)} (95 % ${interval95[0].toFixed(0)} to ${interval95[1].toFixed(0)}); its variance comes from ${top
      .slice(0, 3)
      .map((one) => `${one.source} ${(100 * one.share).toFixed(0)} %`)
      .join(", ")}.`,
  };
}
