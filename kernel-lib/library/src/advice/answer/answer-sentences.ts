import { chanceText } from "../../crisp/window/window-words";
import { bothLimits } from "../../safety/limit-text";
import type { Kitchen, KitchenVariant } from "../../trials/kitchen";
import { applianceOf, panOf } from "../../trials/kitchen-lookup";
import { massText } from "../../units/mass-text";
import { settingText } from "../../units/setting-text";
import { temperatureText } from "../../units/temperature-text";
import { thicknessText } from "../../units/thickness-text";
import type { ReheatCard } from "../card/reheat-card";
import type { Decision, Outcome } from "../window/decide";
import { type AnswerState, isColdCore } from "./answer-state";

/** What is known of a product on its own pan, before it is put into words. */
export interface AnswerFacts {
  readonly kitchen: Kitchen;
  readonly variant: KitchenVariant;
  /** the decision on its own pan, or the sentence that says why none can be made */
  readonly decision: Decision | string;
  /** of that decision; null where its batch does not go on the pan */
  readonly card: ReheatCard | null;
  readonly state: AnswerState;
  /** whether a time can be answered for: it was tried, and no core was found cold at it */
  readonly timed: boolean;
}

/** What to do with a product, how sure that is, and what its trials do not tell: a few plain sentences. */
export function answerSentences(facts: AnswerFacts): readonly string[] {
  const { kitchen, variant, decision, card } = facts;
  if (typeof decision === "string") return [`It cannot be worked out: ${decision}.`];
  const pan = panOf(kitchen, variant.panId).name;
  const batch = massText(variant.batchG, kitchen.units);
  if (decision.outcome === null || card === null) return [`${batch} do not go on one ${pan}: ${decision.reason}.`];
  const thickness = thicknessText(decision.outcome.slab.thicknessMm, kitchen.units);
  return [
    `${batch} on one ${pan} lie ${thickness} thick.`,
    ...(facts.timed ? timed(facts, decision, decision.outcome) : untimed(facts, card)),
  ];
}

function timed({ kitchen, variant, state }: AnswerFacts, decision: Decision, outcome: Outcome): string[] {
  const { window, coreSafeMin, reheatMin, witness } = outcome;
  const { setting, limit, recommended, extrapolation, calibration } = window;
  const from = setting.startC <= -10 ? "From frozen" : `From ${temperatureText(setting.startC, kitchen.units)}`;
  const appliance = `${applianceOf(kitchen, variant.applianceId).name} pre-heated to ${settingText(setting.setpointC, kitchen.units)}`;
  const floor = `one layer over at most ${Math.round(100 * setting.loadFraction)} % of the floor`;
  const core = bothLimits(limit, kitchen.units);
  const trials = calibration.n === 1 ? "1 trial" : `${calibration.n} trials`;
  return [
    `${state === "ready" ? "" : "Not for a card yet. "}${from}, ${appliance}, ${floor}${setting.turned ? ", turned once" : ""}: take out after ${reheatMin} min.`,
    `A piece is then safe, crisp and not overdone in ${chanceText(recommended.success)} of cases, as far as ${trials} can tell; from ${coreSafeMin.toFixed(1)} min on every core of 99 of 100 loads has reached ${core}.`,
    ...(decision.advice === "keep" ? [] : [`${capital(decision.reason)}.`]),
    ...(witness.agrees === false ? [`${capital(witness.sentence)}.`] : []),
    untold(kitchen, variant, extrapolation, outcome),
  ];
}

/** What nobody has tried, and the trials therefore do not tell. */
function untold(kitchen: Kitchen, variant: KitchenVariant, extrapolation: readonly string[], outcome: Outcome): string {
  const { logged } = outcome.window.calibration;
  const used = new Set(
    kitchen.trials.filter((trial) => trial.variantId === variant.variantId).map((trial) => trial.applianceId),
  );
  const appliances = kitchen.appliances.filter(({ applianceId }) => used.has(applianceId)).map(({ name }) => name);
  const edges =
    logged === null
      ? []
      : [
          otherSlabs(logged.thicknessMm.map((thicknessMm) => thicknessText(thicknessMm, kitchen.units))),
          `more than ${Math.round(100 * logged.loadFraction[1])} % of the floor`,
        ];
  const where = appliances.length === 0 ? [] : [`any appliance but ${appliances.join(" and ")}`];
  const here = extrapolation.length === 0 ? "" : ` Here ${extrapolation.join("; ")}.`;
  return `Not told by its trials: ${[...edges, ...where].join(", ")}.${here}`;
}

/** Slabs that were not tried, by the thinnest and the thickest that were. */
function otherSlabs([thinnest, thickest]: readonly string[]): string {
  return thinnest === thickest
    ? `slabs of another thickness than ${thinnest}`
    : `slabs under ${thinnest} or over ${thickest}`;
}

function untimed({ state }: AnswerFacts, card: ReheatCard): string[] {
  const { extrapolation, calibration } = card.window;
  if (calibration.n === 0) return ["No trial of it is logged yet, so no time and no chance are given."];
  const cold = card.evidence.find((condition) => isColdCore(condition) && !condition.met);
  if (state === "not tried")
    return [
      `Nobody has tried it like this (${extrapolation.join("; ")}), so no time and no chance are given.`,
      ...(cold === undefined ? [] : [`${capital(cold.found)}.`]),
    ];
  return cold === undefined ? [] : [`No time is given: ${cold.found}, and nobody has said why.`];
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
