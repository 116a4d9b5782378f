import type { NextTrial } from "../../advice/trial/next-trial";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { PALETTE } from "../figure/palette";

/**
 * What the best 1, 2, 3 … further trials should gain together, beside the line from which on they are worth their while: below
 * it, and with the decision settled, it is time to stop.
 *
 * @example
 * gainAheadFigure(nextTrial({ kitchen: loadKitchen(), variantId: "beet-lentil" })).data.length; // → 2
 */
export function gainAheadFigure(next: NextTrial): Figure {
  const { window, question, stopping } = next;
  const { ahead, worth, stop } = stopping;
  const counts = [0, ...ahead.map((_, at) => at + 1)];
  const ofCard = question.kind === "card";
  const line = (name: string, y: readonly number[], colour: string, dash: string, mode: string): object => ({
    type: "scatter",
    mode,
    name,
    x: counts,
    y,
    line: { color: colour, dash, width: 2 },
    marker: { color: colour, size: 9 },
    hovertemplate: `${name}, %{x} trials: %{y:.1f}<extra></extra>`,
  });
  return {
    kind: "figure",
    data: [
      line(
        ofCard ? "chance that the card becomes ready" : "expected gain",
        [0, ...ahead.map((gain) => 100 * Math.max(0, gain))],
        PALETTE[0],
        "solid",
        "lines+markers",
      ),
      ...(ofCard
        ? []
        : [
            line(
              "worth their while from here on",
              counts.map((count) => 100 * worth * count),
              PALETTE[1],
              "dash",
              "lines",
            ),
          ]),
    ],
    layout: houseLayout({
      title: `${window.variantName}: ${stop ? "time to stop" : "go on"}`,
      xTitle: "further trials",
      yTitle: ofCard ? "chance that the card becomes ready (%)" : "gain in success (points)",
      more: {
        xaxis: {
          title: { text: "further trials" },
          dtick: 1,
          automargin: true,
          ticks: "outside",
          gridcolor: "#e5e5e5",
        },
      },
    }),
    summary: `${next.questionSentence} The best ${ahead.length === 0 ? "trials gain nothing" : ahead.map((gain, at) => `${at + 1} should gain ${(100 * Math.max(0, gain)).toFixed(1)}`).join(", ")}${ofCard ? " % of readiness" : " points"}. ${stopping.sentence}`,
  };
}
