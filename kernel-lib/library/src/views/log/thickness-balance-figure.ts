import { tooLittle } from "../../check/too-little";
import type { Kitchen } from "../../trials/kitchen";
import { panOf, variantOf } from "../../trials/kitchen-lookup";
import { thicknessDoubt } from "../../trials/pieces/thickness-doubt";
import { MOST_DISAGREEMENT, thicknessOfTrial } from "../../trials/thickness-of-trial";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { type Balanced, balanceEnds, balanceMarks, balanceWords } from "./balance-marks";

/** Standard errors of a 95 % interval. */
const Z95 = 1.96;

/**
 * Slab thickness by depth probe against that of the batch mass, a trial a point, with the probes' 95 % interval. Outside the
 * grey band the two disagree by more than 10 %; where that is also more than the probes' own scatter, the trial is named.
 *
 * @throws too little, in words, where no trial has both
 * @example
 * thicknessBalanceFigure(loadKitchen()).summary.includes("BL-14"); // → true
 */
export function thicknessBalanceFigure(kitchen: Kitchen): Figure {
  const points = kitchen.trials.flatMap((trial): Balanced[] => {
    const { name, densityKgM3 } = variantOf(kitchen, trial.variantId);
    const { probesMm, massMm, notice } = thicknessOfTrial({ trial, pan: panOf(kitchen, trial.panId), densityKgM3 });
    if (probesMm === null || massMm === null) return [];
    const half = Z95 * thicknessDoubt(trial) * probesMm;
    return [{ trialId: trial.trialId, product: name, x: massMm, y: probesMm, half, isOdd: notice !== null }];
  });
  if (points.length === 0)
    tooLittle("thicknessBalanceFigure", "No trial has both: log the batch's mass and five depths of its slab.");
  const ends = balanceEnds(points);
  const edge = (share: number): number[] => ends.map((end) => (1 + share) * end);
  const figure: Figure = {
    kind: "figure",
    data: [
      {
        type: "scatter",
        mode: "lines",
        name: "within 10 %",
        x: [...ends, ...ends.toReversed()],
        y: [...edge(MOST_DISAGREEMENT), ...edge(-MOST_DISAGREEMENT).toReversed()],
        fill: "toself",
        fillcolor: "rgba(119,119,119,0.15)",
        line: { width: 0 },
        hoverinfo: "skip",
      },
      ...balanceMarks(points, "mm"),
    ],
    layout: houseLayout({
      title: "Thickness: probes against batch mass",
      xTitle: "by batch mass and density (mm)",
      yTitle: "by depth probe (mm)",
      more: { hovermode: "closest", height: 480 },
    }),
    summary: `Thickness by depth probe and by batch mass: ${balanceWords(points)}`,
  };
  return figureIn(figure, kitchen.units);
}
