import type { ReheatCard } from "../../advice/card/reheat-card";
import { TRIAL_OUTCOMES, type TrialOutcome, trialOutcome } from "../../advice/trial/trial-outcome";
import { tooLittle } from "../../check/too-little";
import { limitCaution } from "../../safety/limit-text";
import { largestOf, smallestOf } from "../../statistics/extremes";
import type { Kitchen, KitchenTrial } from "../../trials/kitchen";
import { variantOf } from "../../trials/kitchen-lookup";
import { thicknessBand } from "../../trials/questions/thickness-band";
import { dialSetting } from "../../units/dial-setting";
import { ownSettingText } from "../../units/setting-text";
import { thicknessWords } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { PALETTE } from "../figure/palette";
import { smallMultiples } from "../figure/small-multiples";

/** What `coverageFigure` draws. */
export interface CoverageFigureOptions {
  readonly kitchen: Kitchen;
  readonly variantId: string;
  /** its setting is marked; left out or null where there is none */
  readonly card?: ReheatCard | null;
}

/** Width of a field of the map: an eighth of an inch is about as fine as a pan is spread; our judgement (mm). */
const BAND_MM = { metric: 2, us: 25.4 / 8 } as const;

/** Own mark and colour for each outcome, so that neither alone tells them apart. */
const MARKS: Readonly<Record<TrialOutcome, { readonly color: string; readonly symbol: string }>> = {
  "cold core": { color: PALETTE[0], symbol: "square" },
  "too brown": { color: PALETTE[1], symbol: "diamond" },
  soft: { color: PALETTE[5], symbol: "triangle-up" },
  "crisp, core not read": { color: PALETTE[2], symbol: "circle-open" },
  crisp: { color: PALETTE[2], symbol: "circle" },
  "not told": { color: "#777", symbol: "x" },
};

/**
 * What was tried of one variant over thickness, time and setpoint, and how it came out: a panel a setting of the dial, a mark a
 * trial, cold cores on top. Bands of thickness between the ends of what was tried that hold no trial at that setting are
 * grey, and named in the summary. A card is a star; where it may not be printed yet, its
 * thickness is an upright, and no time is shown.
 *
 * @throws too little, in words, while nothing of the variant is logged
 * @example
 * const kitchen = loadKitchen();
 * coverageFigure({ kitchen, variantId: "beet-lentil" }).kind; // → "figure"
 */
export function coverageFigure({ kitchen, variantId, card = null }: CoverageFigureOptions): Figure {
  const variant = variantOf(kitchen, variantId);
  const { units } = kitchen;
  const trials = kitchen.trials.filter((trial) => trial.variantId === variantId);
  if (trials.length === 0)
    tooLittle(
      "coverageFigure",
      `No trial of ${variant.name} is logged yet: log the first one, and it stands on the map.`,
    );
  const fields = fieldsOf(kitchen, trials);
  const gaps = fields.filter(({ tried }) => tried === 0);
  const seen = trials.map((trial) => ({ trial, outcome: trialOutcome({ kitchen, trial }) }));
  const settings = [...new Set([...fields.map(({ settingC }) => settingC), ...(card ? [settingOf(card, units)] : [])])];
  const times = trials.map(({ timeMin }) => timeMin);
  const ranges = {
    x: roomy([...fields.flatMap(({ thicknessMm }) => thicknessMm), ...(card ? [card.window.setting.thicknessMm] : [])]),
    y: [0, 1.08 * largestOf([...times, ...timeOf(card)])] as const,
  };
  const panels = settings
    .sort((a, b) => a - b)
    .map((settingC) => ({
      name: ownSettingText(settingC, units),
      figure: figureIn(
        panelOf({
          title: `${variant.name}: what was tried at ${ownSettingText(settingC, units)}`,
          seen: seen.filter(({ trial }) => dialSetting(trial.setpointC, units) === settingC),
          gaps: gaps.filter((field) => field.settingC === settingC),
          card: card !== null && settingOf(card, units) === settingC ? card : null,
          ranges,
        }),
        units,
      ),
    }));
  const counts = TRIAL_OUTCOMES.map((outcome) => ({
    outcome,
    count: seen.filter((one) => one.outcome === outcome).length,
  })).filter(({ count }) => count > 0);
  const [shortest, longest] = [smallestOf(times), largestOf(times)];
  const span = shortest === longest ? shortest : `${shortest} to ${longest}`;
  return {
    ...smallMultiples(panels, `${variant.name}: what was tried`),
    summary: [
      `${variant.name}, ${trials.length} ${trials.length === 1 ? "trial" : "trials"}, ${span} min in: ${counts.map(({ outcome, count }) => `${count} ${outcome}`).join(", ")}.`,
      ...(gaps.length === 0
        ? []
        : [
            `Not tried between its ends: ${gaps.map(({ thicknessMm, settingC }) => `${thicknessWords(thicknessMm, units)} at ${ownSettingText(settingC, units)}`).join("; ")}.`,
          ]),
      ...(card === null ? [] : [cardWords(card)]),
      limitCaution(variant.limit, units),
    ].join(" "),
  };
}

interface PanelOptions {
  readonly title: string;
  readonly seen: readonly { readonly trial: KitchenTrial; readonly outcome: TrialOutcome }[];
  readonly gaps: readonly Field[];
  readonly card: ReheatCard | null;
  readonly ranges: { readonly x: readonly [number, number]; readonly y: readonly [number, number] };
}

/** What was tried at one setting. */
function panelOf({ title, seen, gaps, card, ranges }: PanelOptions): Figure {
  const marks = TRIAL_OUTCOMES.toReversed().flatMap((outcome) => {
    const own = seen.filter((one) => one.outcome === outcome).map(({ trial }) => trial);
    if (own.length === 0) return [];
    return [
      {
        type: "scatter",
        mode: "markers",
        name: outcome,
        x: own.map(({ thicknessMm }) => thicknessMm),
        y: own.map(({ timeMin }) => timeMin),
        text: own.map(({ trialId, applianceId }) => `${trialId}, ${applianceId}`),
        marker: { ...MARKS[outcome], size: 10, line: { color: "#fff", width: 1 } },
        hovertemplate: `%{text}: ${outcome}; %{x:.1f} mm, %{y:.1f} min<extra></extra>`,
      },
    ];
  });
  const layout = houseLayout({
    title,
    xTitle: "slab thickness (mm)",
    yTitle: "taken out at (min)",
    more: { shapes: gaps.map(greyBand), hovermode: "closest" },
  });
  return {
    kind: "figure",
    data: card === null ? marks : [...marks, cardMark(card, ranges.y)],
    layout: {
      ...layout,
      xaxis: { ...(layout.xaxis as object), range: ranges.x },
      yaxis: { ...(layout.yaxis as object), range: ranges.y },
    },
    summary: "",
  };
}

/** A field of the map. */
interface Field {
  readonly thicknessMm: readonly [number, number];
  /** a setting of the dial */
  readonly settingC: number;
  readonly tried: number;
}

/** Bands of thickness, from the least to the most of what was tried, by the settings of the dial that were chosen. */
function fieldsOf({ units }: Kitchen, trials: readonly KitchenTrial[]): readonly Field[] {
  const bandMm = BAND_MM[units];
  const bands = trials.map(({ thicknessMm }) => Math.floor(thicknessMm / bandMm));
  const settings = trials.map(({ setpointC }) => dialSetting(setpointC, units));
  const fields: Field[] = [];
  for (const settingC of new Set(settings))
    for (let band = smallestOf(bands); band <= largestOf(bands); band++)
      fields.push({
        thicknessMm: thicknessBand((band + 0.5) * bandMm, bandMm),
        settingC,
        tried: bands.filter((one, at) => one === band && settings[at] === settingC).length,
      });
  return fields;
}

function greyBand({ thicknessMm: [x0, x1] }: Field): object {
  const place = { type: "rect", xref: "x", yref: "paper", x0, x1, y0: 0, y1: 1, layer: "below" };
  return { ...place, fillcolor: "rgba(119,119,119,0.16)", line: { width: 0 } };
}

function roomy(values: readonly number[]): readonly [number, number] {
  return [smallestOf(values) - 0.3, largestOf(values) + 0.3];
}

function settingOf({ window }: ReheatCard, units: KitchenUnits): number {
  return dialSetting(window.setting.setpointC, units);
}

/** The card's time; none where it may not be printed. */
function timeOf(card: ReheatCard | null): readonly number[] {
  return card?.ready ? [card.window.recommended.cardMin] : [];
}

/** A star at the card's time, or an upright where there is no time to follow yet. */
function cardMark(card: ReheatCard, [from, to]: readonly [number, number]): object {
  const { thicknessMm } = card.window.setting;
  if (card.ready)
    return {
      type: "scatter",
      mode: "markers",
      name: "the card",
      x: [thicknessMm],
      y: timeOf(card),
      marker: { color: "#000", symbol: "star", size: 15 },
      hovertemplate: "the card: %{x:.1f} mm, %{y:.1f} min<extra></extra>",
    };
  return {
    type: "scatter",
    mode: "lines",
    name: "the batch's thickness, no card yet",
    x: [thicknessMm, thicknessMm],
    y: [from, to],
    line: { color: "#000", dash: "dot", width: 1.5 },
    hovertemplate: "no card yet: %{x:.1f} mm<extra></extra>",
  };
}

function cardWords({ ready, window: { setting, recommended } }: ReheatCard): string {
  const { thicknessMm, setpointC, units } = setting;
  const place = `${thicknessWords(thicknessMm, units)} at ${ownSettingText(setpointC, units)}`;
  return ready ? `The card says ${recommended.cardMin} min for ${place}.` : `No card may be printed yet for ${place}.`;
}
