import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { tooLittle } from "../../check/too-little";
import { limitText } from "../../safety/limit-text";
import { largestOf } from "../../statistics/extremes";
import { applianceOf, panOf, variantOf } from "../../trials/kitchen-lookup";
import { massText } from "../../units/mass-text";
import { settingText } from "../../units/setting-text";
import { thicknessText } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import { isComplete, needsAfter, servedBy } from "../value/evidence-needs";
import type { OpenQuestion } from "../value/open-question";
import { effortOf } from "../value/trial-cost";
import { trialReason } from "../value/trial-reason";
import type { TrialsWorth } from "../value/trial-values";
import { type AskTrialsOptions, type ValuedTrial, type ValuedTrials, valuedTrials } from "../value/valued-trials";
import type { PlannedTrial } from "./bench-sheet";
import { decisionOf, type StandingDecision } from "./next-trial";
import { planCautions } from "./plan-cautions";
import { looksText, type PlanStep, slabSteps, tastersText } from "./plan-words";
import { type PlannedSlab, slabKey } from "./planned-slab";

/** What `planMorning` works from. */
export interface PlanMorningOptions extends AskTrialsOptions {
  /** how many trials, 1 to 12 */
  readonly trials: number;
}

/** One trial of a morning, as a bench sheet takes it. */
export interface MorningTrial extends Required<Omit<PlannedTrial, "purpose" | "trialId" | "session">> {
  /** which of `slabs`, from 0 */
  readonly slab: number;
  /** pieces that go in together */
  readonly pieces: number;
  readonly probe: boolean;
  /** gain of the trials chosen up to this one, in the order in which they were chosen */
  readonly gainSoFar: number;
  /** in which place it was chosen, from 1: what to leave out first when time runs short is the highest */
  readonly chosen: number;
  readonly reason: string;
  readonly purpose: string;
}

/** Trials of one morning that are worth most together. */
export interface MorningPlan {
  readonly kind: "morning plan";
  readonly variantId: string;
  readonly variantName: string;
  readonly question: OpenQuestion;
  readonly questionSentence: string;
  readonly decision: StandingDecision | null;
  readonly slabs: readonly PlannedSlab[];
  /** in the order to run them: slab by slab, the dial rising */
  readonly trials: readonly MorningTrial[];
  /** expected gain of all of them together */
  readonly gain: number;
  readonly gainSe: number;
  /** chance that they change the decision [-] */
  readonly chanceOfChange: number;
  /** gain of the first 1, 2, 3 … chosen */
  readonly gains: readonly number[];
  /** of a cook's time, slabs and settings shared (min) */
  readonly minutes: number;
  /** mix (g) */
  readonly gramsMix: number;
  readonly steps: readonly PlanStep[];
  readonly cautions: readonly string[];
  readonly units: KitchenUnits;
  readonly sentence: string;
}

const MOST_TRIALS = 12;
/** Slabs of one morning; our judgement. */
const MOST_SLABS = 2;
/** Trials that a plan is put together from: the best alone, of slabs that give half the loads. */
const FROM = 60;
/** Trials that bring within this share of the best are alike, and the one that takes less goes first; our judgement. */
const ALIKE = 0.05;
/** Grams of mix that count as a minute of a cook's time; our judgement. */
const GRAMS_A_MINUTE = 50;
/** A gain below this is none [-]. */
const NOTHING = 5e-4;
/** What a card's needs weigh beside the gain while the log is young, and once it no longer is; our judgement, as for one trial. */
const YOUNG = 0.5;
const LESS = 0.2;

/**
 * The trials of one morning that are worth most together to the open question: chosen one after the other, each valued anew
 * beside those chosen before it, with the errors that they share (session, slab, setting), from at most two slabs and no more
 * loads than a slab gives; then put in the order to run them. See `nextTrial` for what a trial is worth.
 *
 * @returns slabs, trials with their reasons, gain, minutes and mix of all; a `trials` list that `benchSheet` takes
 *
 * @example
 * const morning = planMorning({ kitchen: loadKitchen(), variantId: "beet-lentil", trials: 3 });
 * morning.trials.length; // → 3
 * morning.slabs.length <= 2; // → true
 */
export function planMorning(options: PlanMorningOptions): MorningPlan {
  const { trials: wanted } = options;
  if (!(Number.isInteger(wanted) && wanted >= 1 && wanted <= MOST_TRIALS))
    fail("planMorning: trials", `must be a whole number from 1 to ${MOST_TRIALS}`, wanted);
  const valued = valuedTrials(options, "planMorning");
  const { kitchen, window, asked, needs, values, cost } = valued;
  if (valued.ranked.length === 0)
    tooLittle(
      "planMorning",
      `No pan of this kitchen takes ${window.variantName} at a thickness and setting that can be reckoned: look at its batch, or add a pan to pans.csv.`,
    );
  const { units } = kitchen;
  const { chosen, worths } = chosenOf(valued, wanted);
  const slabs = [...new Map(chosen.map(({ trial }) => [slabKey(trial.slab), trial.slab])).values()].sort(
    (a, b) => a.thicknessMm - b.thicknessMm,
  );
  const trials = chosen
    .map(({ trial }, at): MorningTrial => {
      const { slab, setting, pieces, timeMin, looksMin, probe } = trial;
      const earlier = chosen.slice(0, at).map((one) => servingOf(one));
      const { reason, why } = trialReason({
        trial,
        units,
        needs: needsAfter(needs, earlier),
        parts: values.partsOf([trial]),
      });
      return {
        variantId: window.variantId,
        applianceId: setting.applianceId,
        panId: slab.panId,
        batchG: slab.batchG,
        thicknessMm: slab.thicknessMm,
        setpointC: setting.setpointC,
        loadFraction: setting.loadFraction,
        looksMin,
        timeMin,
        slab: slabs.findIndex((one) => slabKey(one) === slabKey(slab)),
        pieces,
        probe,
        gainSoFar: worths[at].gain,
        chosen: at + 1,
        reason,
        purpose: why,
      };
    })
    .sort((a, b) => a.slab - b.slab || a.setpointC - b.setpointC || a.timeMin - b.timeMin || a.chosen - b.chosen);
  const all: TrialsWorth = worths[worths.length - 1] ?? {
    gain: 0,
    gainSe: 0,
    chanceOfChange: 0,
    successGain: 0,
    told: 0,
  };
  const effort = effortOf(trials, cost);
  const cautions = planCautions(window.limit, units);
  const steps = stepsOf(valued, slabs, trials);
  const { name, form } = variantOf(kitchen, window.variantId);
  const short = trials.length < wanted ? ` ${wanted} were asked for; two slabs of these pans give no more loads.` : "";
  const worthText =
    asked.question.kind === "card"
      ? `make the card ready with a chance of ${Math.round(100 * all.gain)} %`
      : `should gain ${(100 * Math.max(0, all.gain)).toFixed(1)} points of success, and change the decision in ${Math.round(100 * all.chanceOfChange)} of 100 cases`;
  const lines = [
    `${asked.sentence} ${counted(trials.length, "trial")} of ${name} from ${counted(slabs.length, form === "batter" ? "filling" : "slab").toLowerCase()}: together they ${worthText}; they take some ${Math.round(effort.minutes)} min of a cook's time and ${massText(effort.gramsMix, units)} of mix.${short}`,
    ...steps.map(({ sentence }, at) => `${at + 1}. ${sentence}`),
    ...cautions,
  ];
  return freezeDeep({
    kind: "morning plan",
    variantId: window.variantId,
    variantName: name,
    question: asked.question,
    questionSentence: asked.sentence,
    decision: decisionOf(valued),
    slabs,
    trials,
    gain: all.gain,
    gainSe: all.gainSe,
    chanceOfChange: all.chanceOfChange,
    gains: worths.map(({ gain }) => gain),
    ...effort,
    steps,
    cautions,
    units,
    sentence: lines.join("\n"),
  });
}

/** Trials chosen one after the other, and what the first of them are worth together. */
function chosenOf(
  { ranked, values, needs, asked, cost, kitchen }: ValuedTrials,
  wanted: number,
): { readonly chosen: readonly ValuedTrial[]; readonly worths: readonly TrialsWorth[] } {
  const enough = ranked.filter(({ trial }) => trial.loads >= Math.ceil(wanted / MOST_SLABS));
  const from = (enough.length > 0 ? enough : ranked).slice(0, FROM);
  const chosen: ValuedTrial[] = [];
  const worths: TrialsWorth[] = [];
  while (chosen.length < wanted) {
    const open = needsAfter(needs, chosen.map(servingOf));
    const weight = isComplete(open) ? 0 : open.trials > 0 || asked.question.kind === "card" ? YOUNG : LESS;
    const before = worths.at(-1);
    const added = from
      .filter((one) => isRoomFor(one, chosen, (id) => panOf(kitchen, id).count))
      .map((one) => {
        const worth = chosen.length === 0 ? one.worth : values.worthOf([...chosen, one].map(({ trial }) => trial));
        const { minutes, gramsMix } = effortOf([...chosen, one].map(costedOf), cost);
        return {
          one,
          worth,
          gain: worth.gain - (before?.gain ?? 0),
          success: worth.successGain - (before?.successGain ?? 0),
          told: worth.told - (before?.told ?? 0),
          served: servedBy(open, servingOf(one)),
          effort: minutes + gramsMix / GRAMS_A_MINUTE,
        };
      });
    if (added.length === 0) break;
    const most = largestOf(added.map(({ gain }) => gain));
    const gainOf = (each: (typeof added)[number]): number => (most > NOTHING ? each.gain : each.success);
    const best = largestOf(added.map(gainOf));
    const unit = Math.max(NOTHING, best);
    const narrows = (best > NOTHING ? LESS : 1) / Math.max(1e-9, largestOf(added.map(({ told }) => told)));
    const scored = added.map((each) => ({
      ...each,
      score: weight * each.served + gainOf(each) / unit + narrows * each.told,
    }));
    const top = largestOf(scored.map(({ score }) => score));
    const next = scored
      .filter(({ score }) => score >= top - ALIKE)
      .reduce((least, each) => (each.effort < least.effort ? each : least));
    chosen.push(next.one);
    worths.push(next.worth);
  }
  return { chosen, worths };
}

/** Whether a trial's pieces can be cut from the slabs of a morning, or from another that a pan and the morning have room for. */
function isRoomFor(
  { trial }: ValuedTrial,
  chosen: readonly ValuedTrial[],
  countOf: (panId: string) => number,
): boolean {
  const key = slabKey(trial.slab);
  const own = chosen.filter((one) => slabKey(one.trial.slab) === key);
  const cut = own.reduce((sum, one) => sum + one.trial.pieces, 0);
  if (own.length > 0) return cut + trial.pieces <= trial.slab.pieces;
  const slabs = new Map(chosen.map((one) => [slabKey(one.trial.slab), one.trial.slab]));
  const onPan = [...slabs.values()].filter(({ panId }) => panId === trial.slab.panId).length;
  return slabs.size < MOST_SLABS && onPan < countOf(trial.slab.panId);
}

function servingOf({ trial }: ValuedTrial): Parameters<typeof servedBy>[1] {
  return { thicknessMm: trial.setting.thicknessMm, readings: trial.readings, reaches: trial.reaches };
}

function costedOf({ trial }: ValuedTrial): Parameters<typeof effortOf>[0][number] {
  const { slab, setting, timeMin, probe } = trial;
  return { panId: slab.panId, batchG: slab.batchG, setpointC: setting.setpointC, timeMin, probe };
}

function stepsOf(
  { kitchen, window, knownTasters }: ValuedTrials,
  slabs: readonly PlannedSlab[],
  trials: readonly MorningTrial[],
): readonly PlanStep[] {
  const { units } = kitchen;
  const limit = limitText(window.limit, units);
  const appliance = applianceOf(kitchen, window.setting.applianceId).name;
  const anyProbed = trials.some(({ probe }) => probe);
  let setC: number | null = null;
  const loads = trials.flatMap((trial, at): PlanStep[] => {
    const heat: readonly PlanStep[] =
      trial.setpointC === setC
        ? []
        : [
            {
              of: "heat",
              sentence: `${setC === null ? "Pre-heat" : "Set"} the ${appliance} to ${settingText(trial.setpointC, units)}${setC === null ? "" : " and let it settle"}.`,
            },
          ];
    setC = trial.setpointC;
    const pieces = trial.pieces === 1 ? "one piece" : `${trial.pieces} pieces`;
    const of = slabs.length === 1 ? "" : ` of the slab of ${thicknessText(trial.thicknessMm, units)}`;
    const unread = trial.probe ? "" : "; nobody tastes them, as their core is not read";
    return [
      ...heat,
      {
        of: "load",
        sentence: `Load ${at + 1}, ${pieces}${of}, ${Math.round(100 * trial.loadFraction)} % of the floor: look at ${looksText(trial.looksMin)}, and take out at ${trial.timeMin} min${unread}.`,
      },
    ];
  });
  return [
    ...slabSteps({ variant: variantOf(kitchen, window.variantId), units, slabs }),
    {
      of: "load",
      sentence: `Run every load alike: weigh its pieces together before and after, lay them in one layer${anyProbed ? `, and read the core of the thickest piece as soon as they are out and at its highest within two minutes; below ${limit} put them back or throw them away` : ""}.`,
    },
    ...loads,
    ...(anyProbed
      ? [
          {
            of: "score" as const,
            sentence: `Have ${tastersText(knownTasters)} score crispness and browning, 0 to 9, of every load whose core was at ${limit} or more.`,
          },
        ]
      : []),
    { of: "log", sentence: "Write a line in the log for every load, with its slab and the morning." },
  ];
}

function counted(count: number, name: string): string {
  const words = ["No", "One", "Two", "Three", "Four", "Five", "Six"];
  return `${words[count] ?? count} ${name}${count === 1 ? "" : "s"}`;
}
