import type { CandidateTrial, NextTrial } from "../../advice/trial/next-trial";
import { ownSettingText } from "../../units/setting-text";
import { thicknessWords } from "../../units/thickness-text";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE } from "../figure/palette";

/** Points of neighbouring settings lie so far apart (mm), so that their doubt can be seen. */
const BESIDE_MM = 0.12;
/** Slabs of one thickness, rounded so (mm), are one place. */
const ALIKE_MM = 0.5;

/**
 * What trials are worth to the open question, against their thickness: for each thickness and setting the best of them, with the
 * doubt from the number of outcomes worked through; the best five are ringed and numbered. The line is what a trial must gain to be
 * worth its while.
 *
 * @example
 * trialGainFigure(nextTrial({ kitchen: loadKitchen(), variantId: "beet-lentil" })).kind; // → "figure"
 */
export function trialGainFigure(next: NextTrial): Figure {
  const { candidates, window, question, stopping } = next;
  const { units } = window.setting;
  const settings = [...new Set(candidates.map(({ setpointC }) => setpointC))].sort((a, b) => a - b);
  const told = candidates.filter(({ reason }) => reason !== null);
  const shown = bestOfEach(candidates, told);
  const xOf = ({ thicknessMm, setpointC }: CandidateTrial): number =>
    thicknessMm + BESIDE_MM * (settings.indexOf(setpointC) - (settings.length - 1) / 2);
  const hover = (one: CandidateTrial): string =>
    `${one.panName}, ${thicknessWords(one.thicknessMm, units)}, out at ${one.timeMin} min${one.probe ? "" : ", no probe"}`;
  const series = settings.map((settingC, at) => {
    const own = shown.filter(({ setpointC }) => setpointC === settingC);
    const colour = PALETTE[at % PALETTE.length];
    return {
      type: "scatter",
      mode: "markers",
      name: ownSettingText(settingC, units),
      x: own.map(xOf),
      y: own.map(({ gain }) => 100 * gain),
      error_y: { type: "data", array: own.map(({ gainSe }) => 196 * gainSe), thickness: 1, width: 3, color: colour },
      marker: { color: colour, symbol: MARKERS[at % MARKERS.length], size: 9 },
      text: own.map(hover),
      hovertemplate: "%{text}: %{y:.1f}<extra></extra>",
    };
  });
  const ofCard = question.kind === "card";
  const figure: Figure = {
    kind: "figure",
    data: [
      ...series,
      {
        type: "scatter",
        mode: "markers+text",
        name: "the best five",
        x: told.map(xOf),
        y: told.map(({ gain }) => 100 * gain),
        text: told.map((_, at) => String(at + 1)),
        textposition: "top right",
        marker: { symbol: "circle-open", size: 16, color: PALETTE[6], line: { width: 1.5 } },
        hovertext: told.map(({ why }) => why),
        hovertemplate: "%{text}: %{hovertext}<extra></extra>",
      },
    ],
    layout: houseLayout({
      title: `${window.variantName}: what a trial is worth`,
      xTitle: "slab thickness (mm)",
      yTitle: ofCard ? "chance that the card becomes ready (%)" : "expected gain in success (points)",
      more: ofCard
        ? {}
        : {
            shapes: [
              {
                type: "line",
                xref: "paper",
                yref: "y",
                x0: 0,
                x1: 1,
                y0: 100 * stopping.worth,
                y1: 100 * stopping.worth,
                line: { color: "#444", dash: "dash", width: 1 },
              },
            ],
          },
    }),
    summary: `${next.questionSentence} ${candidates.length} trials could be run; the best: ${told.length === 0 ? "none" : told.map(({ reason }, at) => `${at + 1}. ${reason}`).join(" ")} ${stopping.sentence}`,
  };
  return figureIn(figure, units);
}

/** The best trial of each thickness and setting, and those that are told. */
function bestOfEach(candidates: readonly CandidateTrial[], told: readonly CandidateTrial[]): readonly CandidateTrial[] {
  const best = new Map<string, CandidateTrial>();
  for (const one of candidates) {
    const key = `${Math.round(one.thicknessMm / ALIKE_MM)} ${one.setpointC}`;
    const known = best.get(key);
    if (known === undefined || one.gain > known.gain) best.set(key, one);
  }
  return [...new Set([...best.values(), ...told])];
}
