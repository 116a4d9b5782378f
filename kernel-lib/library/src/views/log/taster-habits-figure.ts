import { studentTQuantile } from "../../statistics/distributions/student-t-distribution";
import type { Panel } from "../../trials/questions/panel-of";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { PALETTE } from "../figure/palette";
import { panelText } from "./panel-text";

/**
 * Each taster's habit: how far above or below the others they score, with its 95 % interval.
 *
 * @param panel from `panelOf`
 */
export function tasterHabitsFigure(panel: Panel): Figure {
  const { levels, tasters, of } = panel;
  const reach = levels.df > 0 ? studentTQuantile(0.975, levels.df) : 0;
  const own = tasters.map((taster) => levels.judges.get(taster) ?? { value: 0, standardError: null });
  const errors = own.map(({ standardError }) => reach * (standardError ?? 0));
  const layout = houseLayout({
    title: `Tasters' habits, ${of}`,
    xTitle: "points above the other tasters, of 9",
    yTitle: "",
  });
  return {
    kind: "figure",
    data: [
      {
        type: "scatter",
        mode: "markers",
        showlegend: false,
        x: own.map(({ value }) => value),
        y: tasters,
        marker: { color: PALETTE[0], size: 10 },
        ...(levels.sd === null
          ? {}
          : { error_x: { type: "data", array: errors, color: PALETTE[0] }, customdata: errors }),
        hovertemplate: `%{y}: %{x:+.2f}${levels.sd === null ? "" : " ± %{customdata:.2f}"}<extra></extra>`,
      },
    ],
    layout: {
      ...layout,
      height: 190 + 34 * tasters.length,
      yaxis: { ...(layout.yaxis as object), type: "category", autorange: "reversed" },
      shapes: [
        {
          type: "line",
          xref: "x",
          yref: "paper",
          x0: 0,
          x1: 0,
          y0: 0,
          y1: 1,
          line: { color: "#777", dash: "dash", width: 1.5 },
        },
      ],
    },
    summary: panelText(panel),
  };
}
