import { tooLittle } from "../../check/too-little";
import type { Kitchen } from "../../trials/kitchen";
import { variantOf } from "../../trials/kitchen-lookup";
import { isUsual, weightOfTrial } from "../../trials/pieces/weight-of-trial";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { type Balanced, balanceMarks, balanceWords } from "./balance-marks";

/**
 * The coated piece on the scale against the one that cut, thickness, density and pickup make, a trial a point. The grey bar
 * through each is where the scale may be when nothing is wrong; a trial outside its bar is named.
 *
 * @throws too little, in words, where no pieces were weighed and counted
 * @example
 * pieceBalanceFigure(loadKitchen()).summary.includes("none disagrees"); // → true
 */
export function pieceBalanceFigure(kitchen: Kitchen): Figure {
  const weighed = kitchen.trials.flatMap((trial) => {
    const weight = weightOfTrial({ kitchen, trial });
    return weight === null ? [] : [{ trial, weight }];
  });
  if (weighed.length === 0)
    tooLittle(
      "pieceBalanceFigure",
      "No pieces were weighed and counted: log their mass before, and how many they are.",
    );
  const points = weighed.map(
    ({ trial, weight }): Balanced => ({
      trialId: trial.trialId,
      product: variantOf(kitchen, trial.variantId).name,
      x: weight.calculatedG,
      y: weight.weighedG,
      half: null,
      isOdd: !isUsual(weight),
    }),
  );
  const calculated = points.map(({ x }) => x);
  const figure: Figure = {
    kind: "figure",
    data: [
      {
        type: "scatter",
        mode: "markers",
        name: "usual (grey bar)",
        x: calculated,
        y: calculated,
        marker: { color: "rgba(119,119,119,0.35)", symbol: "square", size: 4 },
        error_y: {
          type: "data",
          symmetric: false,
          array: weighed.map(({ weight }) => weight.calculatedG * (weight.usual[1] - 1)),
          arrayminus: weighed.map(({ weight }) => weight.calculatedG * (1 - weight.usual[0])),
          color: "rgba(119,119,119,0.35)",
          thickness: 4,
          width: 0,
        },
        hoverinfo: "skip",
      },
      ...balanceMarks(points, "g"),
    ],
    layout: houseLayout({
      title: "Weight of a piece: scale against calculation",
      xTitle: "calculated, coated (g)",
      yTitle: "weighed as it goes in (g)",
      more: { hovermode: "closest", height: 480 },
    }),
    summary: `A piece on the scale and as calculated: ${balanceWords(points)}`,
  };
  return figureIn(figure, kitchen.units);
}
