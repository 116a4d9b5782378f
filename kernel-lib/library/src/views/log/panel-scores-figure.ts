import { studentTQuantile } from "../../statistics/distributions/student-t-distribution";
import type { KitchenTrial } from "../../trials/kitchen";
import type { Panel } from "../../trials/questions/panel-of";
import type { KitchenUnits } from "../../units/unit-table";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE } from "../figure/palette";

/** What `panelScoresFigure` draws. */
export interface PanelScoresFigureOptions {
  /** from `panelOf` */
  readonly panel: Panel;
  /** those that the panel scored, and any others */
  readonly trials: readonly KitchenTrial[];
  readonly units: KitchenUnits;
}

/**
 * Trials' scores against thickness with tasters' habits taken off, each with its 95 % interval, and the plain means as they
 * were called out. A score may pass 0 or 9 a little: what a strict taster alone gave is raised.
 */
export function panelScoresFigure({ panel, trials, units }: PanelScoresFigureOptions): Figure {
  const { levels, of } = panel;
  const reach = levels.df > 0 ? studentTQuantile(0.975, levels.df) : 0;
  const scored = trials.flatMap((trial) => {
    const level = levels.things.get(trial.trialId);
    if (level === undefined) return [];
    const given = of === "crispness" ? trial.crispScores : trial.brownScores;
    const plain = given.reduce((sum, score) => sum + score, 0) / given.length;
    return [{ trial, plain, value: level.value, half: reach * (level.standardError ?? 0) }];
  });
  const common = { type: "scatter", mode: "markers", text: scored.map(({ trial }) => trial.trialId) };
  const x = scored.map(({ trial }) => trial.thicknessMm);
  const moved = scored.reduce((most, one) =>
    Math.abs(one.value - one.plain) > Math.abs(most.value - most.plain) ? one : most,
  );
  const shift = Math.abs(moved.value - moved.plain);
  const figure: Figure = {
    kind: "figure",
    data: [
      {
        ...common,
        name: "habits taken off, 95 % interval",
        x,
        y: scored.map(({ value }) => value),
        ...(levels.sd === null
          ? {}
          : { error_y: { type: "data", array: scored.map(({ half }) => half), color: "#777", thickness: 1 } }),
        marker: { color: PALETTE[0], symbol: MARKERS[0], size: 8 },
        hovertemplate: "%{text}, habits off: %{x:.1f} mm, %{y:.1f}<extra></extra>",
      },
      {
        ...common,
        name: "as scored, mean",
        x,
        y: scored.map(({ plain }) => plain),
        marker: { color: PALETTE[4], symbol: "diamond-open", size: 11 },
        hovertemplate: "%{text}, as scored: %{x:.1f} mm, %{y:.1f}<extra></extra>",
      },
    ],
    layout: houseLayout({
      title: `Scores for ${of}`,
      xTitle: "slab thickness (mm)",
      yTitle: `${of} (0 to 9)`,
      more: { hovermode: "closest" },
    }),
    summary:
      `${scored.length} ${scored.length === 1 ? "trial" : "trials"} scored for ${of} by ${panel.tasters.length} tasters. ` +
      (shift < 0.05
        ? "Taking the tasters' habits off moves no score by as much as 0.05: all of them scored the same trials."
        : `Taking the tasters' habits off moves ${moved.trial.trialId} most, from ${moved.plain.toFixed(1)} to ${moved.value.toFixed(1)}.`),
  };
  return figureIn(figure, units);
}
