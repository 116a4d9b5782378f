import { fail, notNegative } from "../../check/check";
import { tooLittle } from "../../check/too-little";
import { largestOf } from "../../statistics/extremes";
import type { Kitchen } from "../../trials/kitchen";
import { tastersOf } from "../trial/plan-words";
import { type CrispWindowOptions, crispWindow, type KitchenWindow } from "../window/crisp-window";
import { candidateTrials, type PossibleTrial } from "./candidate-trials";
import { type EvidenceNeeds, evidenceNeeds, isComplete, servedBy } from "./evidence-needs";
import { type AskedQuestion, type OpenQuestion, openQuestion } from "./open-question";
import { type QuestionPlaces, questionPlaces } from "./question-places";
import { costOf, effortOf, type TrialCost } from "./trial-cost";
import { type ForeseenTrial, type TrialsWorth, type TrialValues, trialValues } from "./trial-values";

/** What a question to the log works from; beside the question as for `crispWindow`. */
export interface AskTrialsOptions extends CrispWindowOptions {
  /** what the trials are to settle; default: what the log leaves open */
  readonly question?: OpenQuestion;
  /** what the kitchen may not use: ids of pans, and `"probe"` */
  readonly without?: readonly string[];
  /** settings that the dial may be put to (°C); default: the window's and those a step or two beside it */
  readonly setpointsC?: readonly number[];
  /** who scores; default: as many as the kitchen's logs usually have, else 2 */
  readonly tasters?: number;
  /** minutes that trials cost, in place of the usual ones */
  readonly cost?: Partial<TrialCost>;
  /** points of success (%) that a trial must be expected to gain; default 0.5, our judgement */
  readonly worthPoints?: number;
}

/** A trial, what it is worth, and what it takes. */
export interface ValuedTrial {
  readonly trial: ForeseenTrial;
  readonly worth: TrialsWorth;
  /** trials of one number read the same */
  readonly alike: number;
  readonly minutes: number;
  readonly gramsMix: number;
}

/** The trials that a kitchen can run, valued for one question. */
export interface ValuedTrials {
  readonly kitchen: Kitchen;
  readonly window: KitchenWindow;
  readonly asked: AskedQuestion;
  readonly needs: EvidenceNeeds;
  readonly alternatives: QuestionPlaces;
  readonly values: TrialValues;
  readonly tasters: number;
  /** tasters given or logged; null where nobody scored yet */
  readonly knownTasters: number | null;
  readonly cost: TrialCost;
  /** gain from which on a trial is worth its while [-] */
  readonly worth: number;
  /** best first */
  readonly ranked: readonly ValuedTrial[];
}

/** Tasters counted where no scores were logged yet. */
const USUAL_TASTERS = 2;
/** Points of success that a trial must gain to be worth its while; our judgement. */
const WORTH_POINTS = 0.5;
/** Trials whose rank differs by less than this of the best gain are alike, and the one that takes less time goes first; our judgement. */
const ALIKE = 0.05;
/** What the needs of a card weigh beside the gain while the log is young; our judgement. */
const YOUNG = 0.5;
/** What the needs of a card, once six trials are there, and what a trial narrows weigh beside the gain; our judgement. */
const LESS = 0.2;
/** A gain below this is none [-]: then trials go by what they narrow. */
const NOTHING = 5e-4;
const SEED = 7;
/** Pieces drawn for the window. */
const WINDOW_DRAWS = 600;

/**
 * Values every trial that the kitchen can run for the question that is asked, or that the log leaves open. Trials that
 * are alike but for the pan are valued once.
 */
export function valuedTrials(options: AskTrialsOptions, where: string): ValuedTrials {
  const { kitchen, seed = SEED } = options;
  const window = crispWindow({ ...options, draws: options.draws ?? WINDOW_DRAWS });
  const cost = costOf(options.cost);
  const worth = notNegative(options.worthPoints ?? WORTH_POINTS, `${where}: worthPoints`, "points") / 100;
  const knownTasters = options.tasters ?? tastersOf(kitchen, window.variantId);
  const tasters = knownTasters ?? USUAL_TASTERS;
  if (!(Number.isInteger(tasters) && tasters >= 0)) fail(`${where}: tasters`, "must be a whole number >= 0", tasters);
  const asked = openQuestion({ kitchen, window, question: options.question });
  const needs = evidenceNeeds(kitchen, window);
  const alternatives = questionPlaces({ ...options, window, question: asked.question });
  const values = trialValues({ window, asked, needs, alternatives, tasters, seed });
  const possible = candidateTrials({
    kitchen,
    window,
    slabs: alternatives.places.flatMap(({ slab }) => slab ?? []),
    setpointsC:
      options.setpointsC ??
      (asked.question.kind === "setpoint" ? alternatives.places.map(({ setting }) => setting.setpointC) : undefined),
    without: options.without,
  });
  if (possible.length === 0 && (options.without ?? []).length > 0)
    tooLittle(
      where,
      `Without ${(options.without ?? []).join(", ")} no pan is left that takes ${window.variantName} at a thickness worth trying: allow one of them, or add a pan to pans.csv.`,
    );
  const done: ValuedTrial[] = [];
  for (const one of possible) {
    const { slab, setting, timeMin, probe } = one;
    const twin = done.find(({ trial }) => isAlike(trial, one));
    const trial = values.foresee(one, twin?.trial);
    const worth = twin?.worth ?? values.worthOf([trial]);
    const alike = twin?.alike ?? done.length;
    done.push({ trial, worth, alike, ...effortOf([{ ...slab, setpointC: setting.setpointC, timeMin, probe }], cost) });
  }
  const ranked = rankedBy(done, needs, asked.question.kind === "card");
  return { kitchen, window, asked, needs, alternatives, values, tasters, knownTasters, cost, worth, ranked };
}

/** Whether two trials read the same: slabs within 3 %, pieces within 10 %, the same dial, load, times and probe. */
function isAlike(a: PossibleTrial, b: PossibleTrial): boolean {
  const off = (one: number, other: number): number => Math.abs(Math.log(one / other));
  const sideOf = ({ slab }: PossibleTrial): number => Math.sqrt(slab.sidesMm[0] * slab.sidesMm[1]);
  return (
    a.timeMin === b.timeMin &&
    a.setting.setpointC === b.setting.setpointC &&
    a.probe === b.probe &&
    Math.abs(a.setting.loadFraction - b.setting.loadFraction) < 0.05 &&
    off(a.setting.thicknessMm, b.setting.thicknessMm) < 0.03 &&
    off(sideOf(a), sideOf(b)) < 0.1 &&
    a.looksMin.join() === b.looksMin.join()
  );
}

/**
 * Best first: by gain over the best gain, by the needs of a card that a trial serves (each by half of the gain while the log is
 * young or the card is asked about, else by a fifth) and by a fifth by what it narrows, which alone counts where
 * nothing is gained. For a card that no single trial makes ready the gain in success stands in.
 */
function rankedBy(valued: readonly ValuedTrial[], needs: EvidenceNeeds, forCard: boolean): readonly ValuedTrial[] {
  if (valued.length === 0) return [];
  const most = largestOf(valued.map(({ worth }) => worth.gain));
  const gainOf = ({ worth }: ValuedTrial): number => (most > 0 ? worth.gain : worth.successGain);
  const best = largestOf(valued.map(gainOf));
  const unit = Math.max(NOTHING, best);
  const narrows = (best > NOTHING ? LESS : 1) / Math.max(1e-9, largestOf(valued.map(({ worth }) => worth.told)));
  const weight = isComplete(needs) ? 0 : needs.trials > 0 || forCard ? YOUNG : LESS;
  const scored = valued.map((one) => {
    const { setting, readings, reaches } = one.trial;
    const served = weight === 0 ? 0 : weight * servedBy(needs, { thicknessMm: setting.thicknessMm, readings, reaches });
    return { one, score: served + gainOf(one) / unit + narrows * one.worth.told };
  });
  const top = largestOf(scored.map(({ score }) => score));
  const step = ({ score }: { readonly score: number }): number => Math.floor((top - score) / ALIKE);
  const sorted = scored
    .toSorted(
      (a, b) =>
        step(a) - step(b) ||
        Number(b.one.trial.probe) - Number(a.one.trial.probe) ||
        a.one.minutes - b.one.minutes ||
        a.one.gramsMix - b.one.gramsMix ||
        b.score - a.score,
    )
    .map(({ one }) => one);
  // the first is one whose core is read, wherever there is a probe
  const first = sorted.find(({ trial }) => trial.probe) ?? sorted[0];
  return [first, ...sorted.filter((one) => one !== first)];
}
