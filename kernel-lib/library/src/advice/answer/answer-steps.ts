import { GOOD_CHANCE } from "../../crisp/window/card-time";
import { OF_THE_SETTING } from "../card/card-evidence";
import { firstMorning } from "../trial/first-morning";
import type { AnswerFacts } from "./answer-sentences";

/** Said where no change would bring a good chance: with few readings the doubt is much of what is wrong. */
const NEXT_TRIAL =
  'see first whether another trial is worth its while ("what next" on the start page, or notebook 10): the doubt of few readings lowers these chances too';

/**
 * What to do next with a product, the first thing first: the first morning where nothing is logged, else what a card still asks
 * for, and what could be changed.
 */
export function answerSteps({ kitchen, variant, decision, card, state }: AnswerFacts): readonly string[] {
  if (typeof decision === "string") return [];
  const remedies = decision.remedies.map(({ sentence }) => sentence);
  if (card === null) return remedies;
  if (state === "ready")
    return [
      "print the card, follow it with a full load, probe the thickest piece, and log what comes of it under the card's name",
    ];
  if (card.window.calibration.n === 0)
    return firstMorning({ kitchen, variantId: variant.variantId }).steps.map(({ sentence }) => sentence);
  const open = card.evidence.filter(({ met }) => !met);
  if (state === "not tried") return open.flatMap(({ todo }) => todo ?? []);
  const helps = decision.remedies.some(({ success }) => success >= GOOD_CHANCE);
  const next = helps || remedies.length === 0 ? [] : [NEXT_TRIAL];
  const asked = open.filter(({ name }) => remedies.length === 0 || !OF_THE_SETTING.has(name));
  return [...next, ...asked.flatMap(({ todo }) => todo ?? []), ...remedies];
}
