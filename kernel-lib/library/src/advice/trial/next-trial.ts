import { freezeDeep } from "../../check/freeze-deep";
import { limitText } from "../../safety/limit-text";
import { applianceOf, variantOf } from "../../trials/kitchen-lookup";
import { massText } from "../../units/mass-text";
import { settingText } from "../../units/setting-text";
import type { OpenQuestion } from "../value/open-question";
import { type Stopping, stoppingOf } from "../value/stopping";
import { trialReason } from "../value/trial-reason";
import { type AskTrialsOptions, type ValuedTrials, valuedTrials } from "../value/valued-trials";
import type { KitchenWindow } from "../window/crisp-window";
import { firstMorning } from "./first-morning";
import { planCautions } from "./plan-cautions";
import { looksText, type PlanStep, slabSteps, tastersText } from "./plan-words";

/** What `nextTrial` works from. */
export type NextTrialOptions = AskTrialsOptions;

/** One trial that could be run, and what it would teach. */
export interface CandidateTrial {
  readonly panId: string;
  /** as a person says it */
  readonly panName: string;
  /** mass of mix on that pan (g) */
  readonly batchG: number;
  readonly thicknessMm: number;
  readonly setpointC: number;
  /** share of the floor that the load covers [-] */
  readonly loadFraction: number;
  /** time of taking out (min) */
  readonly timeMin: number;
  /** when to look (min), the last at taking out */
  readonly looksMin: readonly number[];
  /** its core is read, and pieces at their limit are tasted */
  readonly probe: boolean;
  /** expected gain of the decision: share of pieces that do [-]; for a card the chance that it becomes ready */
  readonly gain: number;
  /** standard error of that, from the number of outcomes worked through */
  readonly gainSe: number;
  /** chance that it changes the decision [-] */
  readonly chanceOfChange: number;
  /** of a cook's time, were it run alone (min) */
  readonly minutes: number;
  /** mix, were it run alone (g) */
  readonly gramsMix: number;
  /** gain for each minute */
  readonly gainPerMinute: number;
  /** the trial in one line and what it settles; null but for the best five that differ in more than the pan */
  readonly reason: string | null;
  /** what it settles alone; null where `reason` is */
  readonly why: string | null;
}

/** The decision as it stands before the trial. */
export interface StandingDecision {
  /** which alternative: a batch on a pan, a setting, the other variant; empty where only the time is open */
  readonly name: string;
  /** null for the other variant */
  readonly timeMin: number | null;
  /** its chance of success [-] */
  readonly success: number;
}

/** Which trial to run next for a setting. */
export interface NextTrial {
  readonly kind: "next trial";
  readonly window: KitchenWindow;
  readonly question: OpenQuestion;
  /** the question in words, and why it is the one where nobody chose it */
  readonly questionSentence: string;
  /** null where nothing is safe in time */
  readonly decision: StandingDecision | null;
  /** scores counted for each trial */
  readonly tasters: number;
  /** best first */
  readonly candidates: readonly CandidateTrial[];
  readonly stopping: Stopping;
  /** how to run the best of them, or the first morning where nothing was logged yet */
  readonly steps: readonly PlanStep[];
  /** core limit and what goes with it, to stand below the steps */
  readonly cautions: readonly string[];
  readonly sentence: string;
}

/** Trials that are told with their reasons. */
const TOLD = 5;

/**
 * The trial that is worth most to the question that a log leaves open: which time to print, which pan and batch, which
 * setting, whether a card can become ready, or which of two variants does better.
 *
 * A trial is worth the expected gain in success (share of pieces that are safe, crisp and not overdone) of the decision made
 * after it over the decision now; for a card the chance that it becomes ready. The candidates are those of this kitchen: its
 * pans and batches thin to thick, its dial, loads, times of taking out and looks, with the probe or without, its tasters.
 * What is read carries the scatter of run, slab, session, setting, looks and tasters; after a trial as before, only times at
 * which whole loads are safe may be chosen. Worth is worked out by draws (`valueOfInformation`).
 *
 * Until the log holds what a card must rest on (`cardEvidence`), trials are ranked by what they bring of that too: a second
 * thickness, cores read low and high, scores on both sides. Where no trial of the variant was logged yet, steps and sentence
 * are those of the `firstMorning`.
 *
 * @param options the question, and as for `crispWindow`
 * @returns candidates, best first; the best five that differ in more than the pan with their reasons; `stopping`: whether another trial is worth its while
 *
 * @example
 * const next = nextTrial({ kitchen: loadKitchen(), variantId: "beet-lentil" });
 * next.question.kind; // → "time"
 * next.stopping.gain < 0.05; // → true
 */
export function nextTrial(options: NextTrialOptions): NextTrial {
  const valued = valuedTrials(options, "nextTrial");
  const { kitchen, window, asked, needs, values, tasters, ranked } = valued;
  const { units } = kitchen;
  const told = ranked.filter(({ alike }, at) => ranked.findIndex((one) => one.alike === alike) === at).slice(0, TOLD);
  const candidates = ranked.map((one): CandidateTrial => {
    const { trial, worth, minutes, gramsMix } = one;
    const { slab, setting, timeMin, looksMin, probe } = trial;
    return {
      panId: slab.panId,
      panName: slab.panName,
      batchG: slab.batchG,
      thicknessMm: slab.thicknessMm,
      setpointC: setting.setpointC,
      loadFraction: setting.loadFraction,
      timeMin,
      looksMin,
      probe,
      gain: worth.gain,
      gainSe: worth.gainSe,
      chanceOfChange: worth.chanceOfChange,
      minutes,
      gramsMix,
      gainPerMinute: worth.gain / minutes,
      ...(told.includes(one)
        ? trialReason({ trial, units, needs, parts: values.partsOf([trial]) })
        : { reason: null, why: null }),
    };
  });
  const stopping = stoppingOf(valued);
  const isNew = !kitchen.trials.some((trial) => trial.variantId === window.variantId);
  const { steps, sentence } =
    isNew || ranked.length === 0
      ? firstMorning({ kitchen, variantId: window.variantId })
      : inWords(valued, candidates[0], stopping);
  return freezeDeep({
    kind: "next trial",
    window,
    question: asked.question,
    questionSentence: asked.sentence,
    decision: decisionOf(valued),
    tasters,
    candidates,
    stopping,
    steps,
    cautions: planCautions(window.setting.limit, units),
    sentence: isNew ? `No trial of ${window.variantName} is logged yet. ${sentence}` : sentence,
  });
}

/** What would be done without the trial. */
export function decisionOf({ values, alternatives }: ValuedTrials): StandingDecision | null {
  if (values.now === "none") return null;
  if (values.now === "other" && alternatives.other !== null) return { ...alternatives.other, timeMin: null };
  if (values.now === "other") return null;
  const { place, timeMin } = values.now;
  return { name: alternatives.places[place].name, timeMin, success: values.successNow };
}

/** How to run the best trial: step by step, and in a few sentences. */
function inWords(
  { kitchen, window, asked, knownTasters, ranked }: ValuedTrials,
  { reason }: CandidateTrial,
  stopping: Stopping,
): { readonly steps: readonly PlanStep[]; readonly sentence: string } {
  const { units } = kitchen;
  const { slab, setting, pieces, timeMin, looksMin, probe } = ranked[0].trial;
  const { applianceId, limit, setpointC, loadFraction } = setting;
  const appliance = applianceOf(kitchen, applianceId).name;
  const tasters = tastersText(knownTasters);
  const look = `look at ${looksText(looksMin)}, take out at ${timeMin} min`;
  const core = probe
    ? "read the core at once and at its highest within two minutes"
    : "let nobody taste them, as their core is not read";
  const below = probe ? ` Below ${limitText(limit, units)} put them back or throw them away.` : "";
  const score = probe ? `, weigh before and after, and have ${tasters} score them` : ", and weigh before and after";
  const steps: readonly PlanStep[] = [
    ...slabSteps({ variant: variantOf(kitchen, window.variantId), units, slabs: [slab] }),
    { of: "heat", sentence: `Pre-heat the ${appliance} to ${settingText(setpointC, units)}.` },
    {
      of: "load",
      sentence: `Weigh ${pieces === 1 ? "one piece" : `${pieces} pieces`} together, lay ${pieces === 1 ? "it" : "them"} in one layer on ${Math.round(100 * loadFraction)} % of the floor, ${look}, ${core}, and weigh ${pieces === 1 ? "it" : "them"} again.${below}`,
    },
    ...(probe
      ? [
          {
            of: "score" as const,
            sentence: `Have ${tasters} score crispness and browning, 0 to 9, if the core was at ${limitText(limit, units)} or more.`,
          },
        ]
      : []),
    { of: "log", sentence: "Write a line in the log." },
  ];
  return {
    steps,
    sentence: `${asked.sentence} Next: ${massText(slab.batchG, units)} of mix on the ${slab.panName}, ${settingText(setpointC, units)} in the ${appliance}; ${look}, ${core}${score}.${below} Why: ${reason} ${stopping.sentence}`,
  };
}
