import { freezeDeep } from "../../check/freeze-deep";
import { loadSafeText, minutesText } from "../../crisp/window/window-words";
import { limitText } from "../../safety/limit-text";
import { largestOf, smallestOf } from "../../statistics/extremes";
import { hasImpossibleCore, highestCore } from "../../trials/core-of-trial";
import { distinctTrials } from "../../trials/distinct-trials";
import type { Kitchen, KitchenTrial, KitchenVariant } from "../../trials/kitchen";
import { applianceOf, panOf, variantOf } from "../../trials/kitchen-lookup";
import { ownMassText } from "../../units/mass-text";
import { rangeText } from "../../units/range-text";
import { ownSettingText } from "../../units/setting-text";
import { thicknessWords } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import { type CardCondition, cardEvidence, OF_THE_SETTING } from "../card/card-evidence";
import type { KitchenWindow } from "../window/crisp-window";
import { otherPans, type Remedy } from "../window/other-pans";
import { type FirstMorning, firstMorning } from "./first-morning";
import { type NextTrial, nextTrial } from "./next-trial";
import type { PlanStep } from "./plan-words";
import { ownBatch } from "./planned-slab";
import { isWithinClocks, withinClocks } from "./within-clocks";

/** What is known of a variant, and what to do next. */
export interface WhatNext {
  readonly kind: "what next";
  readonly variantId: string;
  readonly variantName: string;
  /** trials of it in the log */
  readonly trials: number;
  /** nothing logged yet; too little for a card; or enough, with a trial only to be surer */
  readonly stage: "first morning" | "next trial" | "ready";
  /** what the log tells so far, or what is usual where it tells nothing; a sentence each */
  readonly known: readonly string[];
  /** what a card still asks for, in a few words each; empty when it may be printed */
  readonly missing: readonly string[];
  /** what to do, in order */
  readonly steps: readonly PlanStep[];
  readonly cautions: readonly string[];
  /** the plan behind the steps: one of the two is there */
  readonly morning: FirstMorning | null;
  readonly next: NextTrial | null;
  readonly units: KitchenUnits;
  /** all of it in words, a line a step */
  readonly sentence: string;
}

/** What `whatNext` works from. */
export interface WhatNextOptions {
  readonly kitchen: Kitchen;
  readonly variantId: string;
}

/**
 * What to do next with a variant, whatever its log holds: the first morning where nothing is logged, else what the trials
 * tell so far, what a card still asks for, and the trial that is worth most to what is still open (`nextTrial`); step by step, on this kitchen's own pans and
 * in its own units. With the core probed in every step that heats, and the caution below. Where the log is complete and no trial
 * is worth its while (`Stopping`), the steps are none of a trial: they say what to do instead.
 *
 * @example
 * const kitchen = loadKitchen();
 * whatNext({ kitchen: { ...kitchen, trials: [] }, variantId: "beet-lentil" }).stage; // → "first morning"
 * whatNext({ kitchen, variantId: "beet-lentil" }).stage; // → "ready"
 */
export function whatNext({ kitchen, variantId }: WhatNextOptions): WhatNext {
  const variant = variantOf(kitchen, variantId);
  const { units } = kitchen;
  const trials = distinctTrials(kitchen.trials.filter((trial) => trial.variantId === variantId));
  const common = { kind: "what next", variantId, variantName: variant.name, trials: trials.length, units } as const;
  if (trials.length === 0) {
    const morning = firstMorning({ kitchen, variantId });
    const { steps, cautions, expected, sentence } = morning;
    const missing = ["a first morning of trials"];
    return freezeDeep({
      ...common,
      stage: "first morning",
      known: expected,
      missing,
      steps,
      cautions,
      morning,
      next: null,
      sentence: `No trial of ${variant.name} is logged yet.\n${sentence}`,
    });
  }
  const next = nextTrial({ kitchen, variantId, ...askedFor(kitchen, variant) });
  const known = knownOf(kitchen, trials, next.window);
  const unmet = cardEvidence({ kitchen, window: next.window }).filter(({ met }) => !met);
  const missing = unmet.flatMap(({ missing: words }) => words ?? []);
  const { worthwhile } = next.stopping;
  const steps = worthwhile ? next.steps : stepsInstead(kitchen, variant, next.window, unmet);
  const stage = missing.length === 0 ? "ready" : "next trial";
  const lines = [
    ...known,
    missing.length === 0
      ? `Its log is good for a card${worthwhile ? "; one more trial would only make it surer" : ""}.`
      : `A card still asks for: ${missing.join("; ")}.`,
    `${next.questionSentence} ${next.stopping.sentence}`,
    `${!worthwhile ? "What to do" : missing.length === 0 ? "If you want one" : "The next trial"}:`,
    ...steps.map(({ sentence }, at) => `${at + 1}. ${sentence}`),
    ...next.cautions,
  ];
  return freezeDeep({
    ...common,
    stage,
    known,
    missing,
    steps,
    cautions: next.cautions,
    morning: null,
    next,
    sentence: lines.join("\n"),
  });
}

/** What to do where no trial is worth its while: what a card asks for beside trials, and the change with the greatest chance, in time if any is. */
function stepsInstead(
  kitchen: Kitchen,
  { panId, variantId }: KitchenVariant,
  { calibration, open }: KitchenWindow,
  unmet: readonly CardCondition[],
): readonly PlanStep[] {
  const decide = (words: string): PlanStep => ({
    of: "decide",
    sentence: `${words[0].toUpperCase()}${words.slice(1)}.`,
  });
  const none = decide("run no further trial like this: it would hardly change the decision");
  if (unmet.length === 0)
    return [
      none,
      decide(
        "print the card, follow it with a full load, probe the thickest piece, and log what comes of it under the card's name",
      ),
    ];
  const [{ remedies, verdict }] = otherPans({ kitchen, variantId, calibration, panIds: [panId] }).pans;
  const unknown = ({ standing }: Remedy): number => Number(standing === "outside what was tried");
  const changes = remedies
    .toSorted((a, b) => unknown(a) - unknown(b) || Number(a.late) - Number(b.late) || b.success - a.success)
    .slice(0, 1)
    .map(({ sentence }) => decide(`change something instead: ${sentence}`));
  const asked = unmet.filter(({ name }) => !OF_THE_SETTING.has(name));
  return [
    ...asked.map(({ missing, todo }) => decide(`${missing}: ${todo}`)),
    none,
    ...changes,
    ...(changes.length > 0 || asked.length === unmet.length
      ? []
      : [
          decide(verdict),
          decide(
            `change what was not tried here: the mix, the coating or the appliance${open ? ", or accept a longer time" : ""}`,
          ),
        ]),
  ];
}

/** The variant's own batch, cut and setting, or the nearest that the clocks know where they know it not. */
function askedFor(kitchen: Kitchen, variant: KitchenVariant): Partial<ReturnType<typeof withinClocks>> {
  const { slab, sidesMm } = ownBatch(kitchen, variant);
  const own = { thicknessMm: slab.thicknessMm, sidesMm, setpointC: variant.setpointC };
  return isWithinClocks(own) ? {} : withinClocks(own);
}

/** What the trials of a variant show, and what they say of its own setting, in sentences. */
function knownOf(kitchen: Kitchen, trials: readonly KitchenTrial[], window: KitchenWindow): readonly string[] {
  const { units } = kitchen;
  const { limit, applianceId, setpointC, thicknessMm } = window.setting;
  const count = trials.length === 1 ? "One trial" : `${trials.length} trials`;
  const thick = trials.map((trial) => trial.thicknessMm);
  const settings = trials.map((trial) => trial.setpointC);
  const names = [...new Set(trials.map((trial) => applianceOf(kitchen, trial.applianceId).name))].join(" and the ");
  const seen = trials.filter((trial) => trial.crispMin !== null).map((trial) => trial.crispMin as number);
  const cores = trials.filter((trial) => !hasImpossibleCore(trial)).flatMap((trial) => highestCore(trial) ?? []);
  const done = cores.filter((core) => core >= limit.limitC).length;
  const range = ({ min, interval95: [low, high] }: KitchenWindow["core"]): string =>
    `about ${minutesText(min)} min (${minutesText(low)} to ${minutesText(high)})`;
  const spread =
    window.batchG === null ? "A slab" : `${ownMassText(window.batchG, units)} on the ${panNameOf(kitchen, window)}`;
  return [
    `${count} of ${window.variantName} ${trials.length === 1 ? "is" : "are"} logged: slabs of ${thicknessWords([smallestOf(thick), largestOf(thick)], units)} in the ${names} at ${rangeText([smallestOf(settings), largestOf(settings)], (setting) => ownSettingText(setting, units))}.`,
    seen.length === 0
      ? "None of them was seen to turn crisp."
      : `Pieces were first found crisp at ${[...new Set([smallestOf(seen), largestOf(seen)])].join(" to ")} min, in ${seen.length} of ${trials.length}.`,
    cores.length === 0
      ? "No core was read yet."
      : `Of ${cores.length} cores read, ${done} were at ${limitText(limit, units)} or more.`,
    `${spread}, ${thicknessWords(thicknessMm, units)} thick, in the ${applianceOf(kitchen, applianceId).name} at ${ownSettingText(setpointC, units)}: a typical core is at ${limitText(limit, units)} after ${range(window.core)}, and ${loadSafeText(window.chances.safeFromMin)}; crisp after ${range(window.crisp)}.`,
  ];
}

function panNameOf(kitchen: Kitchen, { panId }: KitchenWindow): string {
  return panId === null ? "pan" : panOf(kitchen, panId).name;
}
