import { freezeDeep } from "../../check/freeze-deep";
import { isTooLittle } from "../../check/too-little";
import type { CoreLimit } from "../../safety/core-limit";
import type { Kitchen, KitchenVariant } from "../../trials/kitchen";
import { applianceOf, panOf } from "../../trials/kitchen-lookup";
import type { KitchenUnits } from "../../units/unit-table";
import { cardOfWindow, type ReheatCard } from "../card/reheat-card";
import { type Decision, decideOnPans } from "../window/decide";
import { answerSentences } from "./answer-sentences";
import { type AnswerState, answerState, isColdCore } from "./answer-state";
import { answerSteps } from "./answer-steps";
import { noticesOf } from "./notices-of";

/** One product on its own pan: the setting to use, when its core is safe, how sure, and what is missing. */
export interface Answer {
  readonly kind: "answer";
  readonly variantId: string;
  readonly variantName: string;
  readonly panName: string;
  /** mix on that pan (g) */
  readonly batchG: number;
  /** null where the batch does not go on the pan */
  readonly thicknessMm: number | null;
  readonly applianceName: string;
  readonly setpointC: number;
  readonly state: AnswerState;
  /** what is missing, in a few words; null when it is ready */
  readonly missing: string | null;
  /** time to take out (min), a card's only when it is ready; null where none can be answered for */
  readonly cardMin: number | null;
  /** every core of 99 of 100 loads is at its limit from here on (min); null where `cardMin` is */
  readonly coreByMin: number | null;
  /** chance that a piece is safe, crisp and not overdone at that time [-]; null where `cardMin` is */
  readonly success: number | null;
  /** stands beside the time, with its caution */
  readonly limit: CoreLimit;
  /** what to do, how sure, what the trials do not tell */
  readonly sentences: readonly string[];
  /** what to do next, the first thing first */
  readonly steps: readonly string[];
  /** what the kitchen's logs should be looked at for, as far as it touches this product */
  readonly notices: readonly string[];
  /** null where none can be worked out */
  readonly card: ReheatCard | null;
  /** the kitchen's own, in which it is told */
  readonly units: KitchenUnits;
}

/** The answers of a kitchen. */
export interface Answers {
  readonly kind: "answers";
  readonly kitchenName: string;
  /** in the order of the kitchen's variants */
  readonly products: readonly Answer[];
  /** notices that touch none of them */
  readonly notices: readonly string[];
}

/** What `answers` works from. */
export interface AnswersOptions {
  /** from `loadKitchen` */
  readonly kitchen: Kitchen;
  /** from `decide`, to save working out those on a product's own pan again */
  readonly decisions?: readonly Decision[];
}

/**
 * The answer for every product of a kitchen on its own pan, appliance and setpoint: from the one engine, as `decide` and
 * `reheatCard` have it.
 *
 * A young log throws nothing: a product without enough is an answer that says what is missing. A time is given only where it
 * was tried, and not after a core was found cold at it.
 *
 * @example
 * const [first] = answers({ kitchen: loadKitchen() }).products;
 * first.state; // → "ready"
 * first.cardMin; // → 11
 */
export function answers({ kitchen, decisions }: AnswersOptions): Answers {
  const { byVariant, others } = noticesOf(kitchen);
  return freezeDeep({
    kind: "answers" as const,
    kitchenName: kitchen.name,
    products: kitchen.variants.map((variant) => {
      const notices = byVariant.get(variant.variantId) ?? [];
      const known = decisions?.find(
        ({ variantId, panId }) => variantId === variant.variantId && panId === variant.panId,
      );
      return { ...answerOf(kitchen, variant, known ?? decisionOn(kitchen, variant)), notices };
    }),
    notices: others,
  });
}

/** The decision on a variant's own pan, or the sentence that says why none can be made. */
function decisionOn(kitchen: Kitchen, { variantId, panId }: KitchenVariant): Decision | string {
  try {
    return decideOnPans({ kitchen, variantId }, [panId])[0];
  } catch (error) {
    if (error instanceof RangeError || isTooLittle(error)) return error.message;
    throw error;
  }
}

function answerOf(kitchen: Kitchen, variant: KitchenVariant, decision: Decision | string): Omit<Answer, "notices"> {
  const outcome = typeof decision === "string" ? null : decision.outcome;
  const card = outcome === null ? null : cardOfWindow({ kitchen, window: outcome.window });
  const { state, missing } = answerState(decision, card);
  const timed = outcome !== null && state !== "not tried" && card?.evidence.find(isColdCore)?.met === true;
  const facts = { kitchen, variant, decision, card, state, timed };
  return {
    kind: "answer",
    variantId: variant.variantId,
    variantName: variant.name,
    panName: panOf(kitchen, variant.panId).name,
    batchG: variant.batchG,
    thicknessMm: outcome?.slab.thicknessMm ?? null,
    applianceName: applianceOf(kitchen, variant.applianceId).name,
    setpointC: variant.setpointC,
    state,
    missing,
    cardMin: timed ? outcome.reheatMin : null,
    coreByMin: timed ? outcome.coreSafeMin : null,
    success: timed ? outcome.window.recommended.success : null,
    limit: variant.limit,
    sentences: answerSentences(facts),
    steps: answerSteps(facts),
    card,
    units: kitchen.units,
  };
}
