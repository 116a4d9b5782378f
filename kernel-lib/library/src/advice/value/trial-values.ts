import type { CrispCalibration } from "../../crisp/calibration/calibrate-crisp";
import { matchedDraws } from "../../crisp/foresight/matched-draws";
import { momentDraws, type PlaceDraws, placeDraws } from "../../crisp/foresight/place-draws";
import { type SuccessJudge, successJudge } from "../../crisp/foresight/success-judge";
import { readingNoise, type TrialReadings, trialReadings } from "../../crisp/foresight/trial-readings";
import { GOOD_CHANCE } from "../../crisp/window/card-time";
import { misfitAt, standingOf } from "../../crisp/window/misfit-at";
import type { SettledSetting } from "../../crisp/window/window-setting";
import { type Learning, learningFrom, learningOfOne } from "../../plan/value/learning-from";
import { type TargetDraws, targetDraws } from "../../plan/value/target-draws";
import { type ValueOfInformation, valueOfInformation } from "../../plan/value/value-of-information";
import { CLIMBING_K } from "../card/card-evidence";
import { slabKey } from "../trial/planned-slab";
import type { KitchenWindow } from "../window/crisp-window";
import type { PossibleTrial } from "./candidate-trials";
import { chanceOfEvidence, type EvidenceNeeds, triedAlso } from "./evidence-needs";
import type { AskedQuestion } from "./open-question";
import type { QuestionPlaces } from "./question-places";

/** A trial with what it would read. */
export interface ForeseenTrial extends PossibleTrial {
  readonly readings: TrialReadings;
  /** once it is run, the setting that is asked about counts as tried */
  readonly reaches: boolean;
}

/** What trials are worth to a question. */
export interface TrialsWorth {
  /** expected gain: success of the decision [-], or for a card the chance that it becomes ready */
  readonly gain: number;
  readonly gainSe: number;
  readonly chanceOfChange: number;
  /** expected gain in success alone */
  readonly successGain: number;
  /** mean share that is told of the variance of the moments that the decision hangs on [-] */
  readonly told: number;
}

/** All that is needed to value any trials for one question. */
export interface TrialValues {
  readonly targets: TargetDraws;
  readonly judge: SuccessJudge;
  /** the decision as it stands: which place and time (min), the other variant, or none where nothing is safe in time */
  readonly now: { readonly place: number; readonly timeMin: number } | "other" | "none";
  readonly successNow: number;
  /** what a trial would read; as its twin of the same setting, times and looks does, where that is given */
  readonly foresee: (trial: PossibleTrial, twin?: ForeseenTrial) => ForeseenTrial;
  /** of trials that are run in one morning */
  readonly worthOf: (trials: readonly ForeseenTrial[]) => TrialsWorth;
  /** gain in success if the trials told of one moment alone, for core, crisp, brown and dry */
  readonly partsOf: (trials: readonly ForeseenTrial[]) => readonly number[];
}

/** What `trialValues` works from. */
export interface TrialValuesOptions {
  readonly window: KitchenWindow;
  readonly asked: AskedQuestion;
  readonly needs: EvidenceNeeds;
  readonly alternatives: QuestionPlaces;
  readonly tasters: number;
  readonly seed: number;
}

const DRAWS = 320;
/** Outcomes of a trial that are worked through. */
const CASES = 32;
/** Pieces for each draw of the constants that choose for one place, and as many that value; fewer where there are more places. */
const PIECES = 3;
/** The first time whose chance is so little below the greatest is taken, as the card does [-]. */
const NEARLY_BEST = 0.005;
/** Two times within this are one decision (min); our judgement, the step of a card. */
const SAME_MIN = 0.5;
/** Conditions of a card that trials bring, or that success and standing decide. */
const BROUGHT: readonly string[] = [
  "enough trials",
  "two thicknesses",
  "cores still climbing",
  "cores at the limit",
  "inside what was logged",
  "window open in time",
  "chance of success",
];

/** Prepares the valuation of trials for one question: draws, moments of the alternatives, and their judge. */
export function trialValues(options: TrialValuesOptions): TrialValues {
  const { window, asked, needs, alternatives, tasters, seed } = options;
  const { calibration, limit } = window;
  const askedAbout = alternatives.places.map(({ setting }) => setting);
  const draws = matchedDraws(calibration, { count: DRAWS, seed });
  const placed = new Map<string, PlaceDraws>();
  const drawsAt = (setting: SettledSetting): PlaceDraws => {
    const { thicknessMm, sidesMm, setpointC, loadFraction } = setting;
    const key = `${thicknessMm} ${sidesMm} ${setpointC} ${loadFraction}`;
    const known = placed.get(key);
    if (known !== undefined) return known;
    const sharedDrift = sharedDriftOf(calibration, askedAbout, setting);
    const place = placeDraws(draws, setting, { sharedDrift });
    placed.set(key, place);
    return place;
  };
  const moments = askedAbout.map((setting) => momentDraws(placeDraws(draws, setting)));
  const size = 4 * moments.length;
  const targets = targetDraws(
    Array.from({ length: DRAWS }, (_, at) =>
      Float64Array.from({ length: size }, (__, target) => moments[target >> 2].logs[4 * at + (target & 3)]),
    ),
  );
  const judge = successJudge({
    places: alternatives.places.map(({ setting }, at) => ({ moments: moments[at], longestMin: setting.longestMin })),
    pieces: 2 * Math.max(1, Math.floor(PIECES / moments.length)),
    seed: seed + 1,
    late: moments.length === 1 && alternatives.other === null,
    other: alternatives.other?.success,
  });
  const { alternatives: choices } = judge;
  const differs = (now: number, then: number): boolean => {
    const [a, b] = [choices[now], choices[then]];
    if (a === null || b === null) return a !== b;
    return a.place !== b.place || Math.abs(a.timeMin - b.timeMin) > SAME_MIN;
  };
  const allowedNow = Uint8Array.from(judge.judge(targets.centred)(targets.mean).allowed ?? []);
  const judged = (learning: Learning): ValueOfInformation =>
    valueOfInformation({
      targets,
      learning,
      judge: judge.judge,
      cases: CASES,
      nearly: NEARLY_BEST,
      allowedNow,
      differs,
    });
  const learnt = (trials: readonly ForeseenTrial[]): Learning =>
    learningFrom({
      targets,
      readings: trials.flatMap(({ readings }) => readings.columns),
      noise: readingNoise(
        trials.map(({ readings }) => readings),
        calibration.noise.session / calibration.noise.run,
      ),
      matched: true,
    });
  const nothing = judged(learningFrom({ targets, readings: [], matched: true }));
  const isStuck = asked.unmet.some((name) => !BROUGHT.includes(name));
  const isReady = asked.unmet.length === 0;
  const longestMin = alternatives.places[0].setting.longestMin;
  const isTriedAfter = (trials: readonly PossibleTrial[]): boolean => {
    const { applianceId } = window.setting;
    const tried = triedAlso(
      calibration,
      applianceId,
      trials.map(({ setting }) => setting),
    );
    const { distance, outside } = misfitAt(tried, window.setting, 0);
    return standingOf({ distance }) === "tried" && outside.length === 0;
  };
  const cardChance = (trials: readonly ForeseenTrial[], { then, utilityThen }: ValueOfInformation): number => {
    if (isStuck) return 0;
    const evidence = chanceOfEvidence(
      needs,
      trials.map(({ setting, readings, reaches }) => ({ thicknessMm: setting.thicknessMm, readings, reaches })),
    );
    if (evidence === 0 || !isTriedAfter(trials)) return 0;
    let good = 0;
    for (let one = 0; one < then.length; one++) {
      const choice = then[one] < 0 ? null : choices[then[one]];
      if (choice !== null && choice.timeMin <= longestMin && utilityThen[one] >= GOOD_CHANCE) good++;
    }
    return (evidence * good) / then.length;
  };
  return {
    targets,
    judge,
    now: nothing.now < 0 ? "none" : (choices[nothing.now] ?? "other"),
    successNow: nothing.utilityNow,
    foresee: (trial, twin) => {
      const slab = slabKey(trial.slab);
      if (twin !== undefined) return { ...trial, reaches: twin.reaches, readings: { ...twin.readings, slab } };
      const { timeMin, looksMin, probe } = trial;
      const place = drawsAt(trial.setting);
      const climbingC = limit.limitC + CLIMBING_K;
      const readings = trialReadings({ place, slab, timeMin, looksMin, probe, tasters, climbingC });
      return { ...trial, reaches: isTriedAfter([trial]), readings };
    },
    worthOf: (trials) => {
      const learning = learnt(trials);
      const value = judged(learning);
      const { gain, gainSe, chanceOfChange } = value;
      const told = toldShare(targets, learning);
      if (asked.question.kind !== "card") return { gain, gainSe, chanceOfChange, successGain: gain, told };
      const chance = cardChance(trials, value);
      return {
        gain: isReady ? 0 : chance,
        gainSe: Math.sqrt((chance * (1 - chance)) / CASES),
        chanceOfChange: isReady ? 1 - chance : chance,
        successGain: gain,
        told,
      };
    },
    partsOf: (trials) => {
      const learning = learnt(trials);
      return [0, 1, 2, 3].map((moment) => {
        const place = nothing.now < 0 ? 0 : (choices[nothing.now]?.place ?? 0);
        return judged(learningOfOne(targets, learning, 4 * place + moment)).gain;
      });
    },
  };
}

/** Mean share of the variance of the targets that is told. */
function toldShare({ size, root }: TargetDraws, { told }: Learning): number {
  let sum = 0;
  for (let at = 0; at < size; at++) {
    let variance = 0;
    for (let k = 0; k < size; k++) variance += root[at * size + k] ** 2;
    if (variance > 0) sum += told[at * size + at] / variance;
  }
  return sum / size;
}

/**
 * Correlation of the drift at a setting with the drifts that are asked about: what a trial there takes off their distance from
 * what was logged, ρ² = 1 − d₁²/d₀², in the mean over those that have one.
 */
function sharedDriftOf(
  calibration: CrispCalibration,
  askedAbout: readonly SettledSetting[],
  setting: SettledSetting,
): number {
  const tried = triedAlso(calibration, setting.applianceId, [setting]);
  const shares = askedAbout.flatMap((asked) => {
    const before = misfitAt(calibration, asked, 0).distance;
    return before > 0 ? [Math.max(0, 1 - (misfitAt(tried, asked, 0).distance / before) ** 2)] : [];
  });
  return shares.length === 0 ? 1 : Math.sqrt(shares.reduce((sum, share) => sum + share, 0) / shares.length);
}
