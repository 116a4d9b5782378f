import { fail } from "../../check/check";
import { GOOD_CHANCE } from "../../crisp/window/card-time";
import { chanceText } from "../../crisp/window/window-words";
import type { Kitchen } from "../../trials/kitchen";
import { variantOf } from "../../trials/kitchen-lookup";
import { cardEvidence } from "../card/card-evidence";
import type { KitchenWindow } from "../window/crisp-window";
import { judgeWindow } from "../window/judge-window";

/** What a trial is to settle. */
export type OpenQuestion =
  /** which time to print */
  | { readonly kind: "time" }
  /** which of this kitchen's pans and batches to make it on */
  | { readonly kind: "pan" }
  /** which setting of the dial */
  | { readonly kind: "setpoint" }
  /** whether a card may be printed */
  | { readonly kind: "card" }
  /** whether this variant or another does better; the trials are of this one: ask with the two exchanged for those of the other */
  | { readonly kind: "difference"; readonly other: string };

/** The question that is asked, why, and what a card still asks for. */
export interface AskedQuestion {
  readonly question: OpenQuestion;
  /** the question in words, and why it is the one where nobody chose it */
  readonly sentence: string;
  /** names of the card's conditions that are not met */
  readonly unmet: readonly string[];
}

/** What `openQuestion` works from. */
export interface OpenQuestionOptions {
  readonly kitchen: Kitchen;
  readonly window: KitchenWindow;
  /** chosen from the state of the log where it is left out */
  readonly question?: OpenQuestion;
}

const KINDS: readonly OpenQuestion["kind"][] = ["time", "pan", "setpoint", "card", "difference"];

/**
 * The question that the next trial is to settle: the one that is asked, or else the one that the log leaves open. That is
 * the pan where a batch is too thick or too thin for its window and the kitchen has tried it, the card where the chance is
 * good and only conditions of the log are missing, and the time to print in every other state.
 */
export function openQuestion({ kitchen, window, question }: OpenQuestionOptions): AskedQuestion {
  const unmet = cardEvidence({ kitchen, window }).filter(({ met }) => !met);
  const names = unmet.map(({ name }) => name);
  if (question !== undefined) {
    if (!KINDS.includes(question.kind))
      fail("nextTrial: question", `must be one of ${KINDS.join(", ")}`, question.kind);
    if (question.kind === "difference" && question.other === window.variantId)
      fail("nextTrial: question", "must name another variant than the one that is asked about", question.other);
    return { question, sentence: `The question: ${questionText(kitchen, window, question)}.`, unmet: names };
  }
  const { kind, why } = stateOf(
    kitchen,
    window,
    names,
    unmet.flatMap(({ missing }) => missing ?? []),
  );
  const own: OpenQuestion = { kind };
  return { question: own, sentence: `The question: ${questionText(kitchen, window, own)}, as ${why}.`, unmet: names };
}

/** A question in words: `"which time to print"`. */
export function questionText(kitchen: Kitchen, window: KitchenWindow, question: OpenQuestion): string {
  switch (question.kind) {
    case "time":
      return "which time to print";
    case "pan":
      return `which pan and batch to make ${window.variantName} on`;
    case "setpoint":
      return "which setting to cook at";
    case "card":
      return "can its card become ready";
    case "difference":
      return `does ${window.variantName} or ${variantOf(kitchen, question.other).name} do better`;
  }
}

function stateOf(
  kitchen: Kitchen,
  window: KitchenWindow,
  unmet: readonly string[],
  missing: readonly string[],
): { readonly kind: "time" | "pan" | "card"; readonly why: string } {
  const { recommended, standing } = window;
  if (!kitchen.trials.some((trial) => trial.variantId === window.variantId))
    return { kind: "time", why: "no trial of it is logged yet" };
  if (unmet.length === 0) return { kind: "time", why: "its card is ready, and a trial can only make it surer" };
  const { advice } = judgeWindow(window);
  if ((advice === "too thick" || advice === "too thin") && standing === "tried")
    return { kind: "pan", why: `the batch is ${advice} for its window` };
  if (recommended.success >= GOOD_CHANCE && standing === "tried" && window.open)
    return { kind: "card", why: `a card still asks for ${missing.join("; ")}` };
  return { kind: "time", why: whyTime(window) };
}

function whyTime({ recommended, standing, open }: KitchenWindow): string {
  if (standing === "outside what was tried") return "nobody has tried this setting yet";
  if (!open) return "the window is closed as far as is known";
  if (recommended.success < GOOD_CHANCE)
    return `the best safe time does in ${chanceText(recommended.success)} and a card asks for ${Math.round(100 * GOOD_CHANCE)} %`;
  return "this setting is on the edge of what was tried";
}
