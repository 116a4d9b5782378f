import type { BestCompromise } from "../../fit/surface/best-compromise";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { PALETTE } from "../figure/palette";

/**
 * How well each goal is met at a compromise, and all of them together with the range over draws of the surfaces.
 *
 * @param compromise from `bestCompromise`
 */
export function compromiseFigure({
  goals,
  overall,
  overall95: [low, high],
  chanceAllMet,
  reading,
}: BestCompromise): Figure {
  const names = [...goals.map(({ name }) => name), "all together"];
  const percent = [...goals.map(({ met }) => met), overall].map((share) => 100 * share);
  return {
    kind: "figure",
    data: [
      {
        type: "bar",
        orientation: "h",
        name: "met",
        x: percent,
        y: names,
        marker: { color: [...goals.map(() => PALETTE[5]), PALETTE[2]] },
        error_x: {
          type: "data",
          symmetric: false,
          array: [...goals.map(() => 0), 100 * Math.max(0, high - overall)],
          arrayminus: [...goals.map(() => 0), 100 * Math.max(0, overall - low)],
          color: PALETTE[6],
        },
        hovertemplate: "%{y}: met to %{x:.0f} %<extra></extra>",
      },
    ],
    layout: houseLayout({
      title: "How far the goals are met at the compromise",
      xTitle: "met (%)",
      yTitle: "",
      more: { showlegend: false },
    }),
    summary: `${reading} Over draws of the surfaces ${Math.round(100 * low)} to ${Math.round(100 * high)} %; every goal is met at least in part in ${Math.round(100 * chanceAllMet)} of 100.`,
  };
}
