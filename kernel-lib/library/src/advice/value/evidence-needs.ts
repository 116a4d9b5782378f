import type { CrispCalibration } from "../../crisp/calibration/calibrate-crisp";
import { CRISP_SCORE } from "../../crisp/clocks/panel-score";
import type { TrialReadings } from "../../crisp/foresight/trial-readings";
import { largestOf, smallestOf } from "../../statistics/extremes";
import { hasImpossibleCore, highestCore } from "../../trials/core-of-trial";
import { distinctTrials } from "../../trials/distinct-trials";
import type { Kitchen } from "../../trials/kitchen";
import { CLIMBING_K, LEAST_CORES, LEAST_TRIALS, THICKNESS_RATIO } from "../card/card-evidence";
import type { KitchenWindow } from "../window/crisp-window";

/** What a log still has to hold before a card may rest on it. */
export interface EvidenceNeeds {
  readonly trials: number;
  /** cores read while they still climb, and at the limit */
  readonly climbing: number;
  readonly done: number;
  /** thinnest and thickest slab logged (mm), as long as they count as one thickness; null once there are two */
  readonly oneThicknessMm: readonly [number, number] | null;
  /** no scores on that side yet: soft and crisp */
  readonly soft: boolean;
  readonly crisp: boolean;
  /** the setting that is asked about lies outside what was tried, or on its edge */
  readonly outside: boolean;
}

/** What the log of a window's variant lacks, by the conditions of `cardEvidence`, and scores on both sides of crisp. */
export function evidenceNeeds(kitchen: Kitchen, window: KitchenWindow): EvidenceNeeds {
  const trials = distinctTrials(kitchen.trials.filter((trial) => trial.variantId === window.variantId));
  const cores = trials
    .filter((trial) => trial.applianceId === window.setting.applianceId && !hasImpossibleCore(trial))
    .flatMap((trial) => highestCore(trial) ?? []);
  const { limitC } = window.limit;
  const thick = trials.map(({ thicknessMm }) => thicknessMm);
  const range = thick.length === 0 ? null : ([smallestOf(thick), largestOf(thick)] as const);
  const means = trials
    .filter(({ crispScores }) => crispScores.length > 0)
    .map(({ crispScores }) => crispScores.reduce((sum, score) => sum + score, 0) / crispScores.length);
  return {
    trials: Math.max(0, LEAST_TRIALS - trials.length),
    climbing: Math.max(0, LEAST_CORES - cores.filter((core) => core < limitC + CLIMBING_K).length),
    done: Math.max(0, LEAST_CORES - cores.filter((core) => core >= limitC).length),
    oneThicknessMm: range === null || range[1] >= THICKNESS_RATIO * range[0] ? null : range,
    soft: !means.some((mean) => mean < CRISP_SCORE),
    crisp: !means.some((mean) => mean >= CRISP_SCORE),
    outside: window.standing !== "tried" || window.extrapolation.length > 0,
  };
}

/** Whether a log lacks nothing that trials alone can bring. */
export function isComplete({ trials, climbing, done, oneThicknessMm, outside }: EvidenceNeeds): boolean {
  return trials === 0 && climbing === 0 && done === 0 && oneThicknessMm === null && !outside;
}

/** A trial as far as it serves the needs. */
interface Serving {
  readonly thicknessMm: number;
  readonly readings: TrialReadings;
  /** once it is run, the setting that is asked about counts as tried */
  readonly reaches: boolean;
}

/** How many of the needs a trial should serve: the sum of its chances to. */
export function servedBy(needs: EvidenceNeeds, { thicknessMm, readings, reaches }: Serving): number {
  const { climbing, done, soft, crisp } = readings.chance;
  return (
    (needs.climbing > 0 ? climbing : 0) +
    (needs.done > 0 ? done : 0) +
    (needs.oneThicknessMm !== null && ratioWith(needs.oneThicknessMm, thicknessMm) >= THICKNESS_RATIO ? 1 : 0) +
    (needs.soft ? soft : 0) +
    (needs.crisp ? crisp : 0) +
    (needs.outside && reaches ? 1 : 0)
  );
}

/** What is still needed once trials were run, by their chances. */
export function needsAfter(needs: EvidenceNeeds, trials: readonly Serving[]): EvidenceNeeds {
  return trials.reduce((left, trial) => {
    const { climbing, done, soft, crisp } = trial.readings.chance;
    const range = left.oneThicknessMm;
    const first = range ?? ([trial.thicknessMm, trial.thicknessMm] as const);
    const wider = [Math.min(first[0], trial.thicknessMm), Math.max(first[1], trial.thicknessMm)] as const;
    const isFirst = needs.trials === LEAST_TRIALS && range === null;
    return {
      trials: Math.max(0, left.trials - 1),
      climbing: Math.max(0, left.climbing - climbing),
      done: Math.max(0, left.done - done),
      oneThicknessMm: (range === null && !isFirst) || wider[1] >= THICKNESS_RATIO * wider[0] ? null : wider,
      soft: left.soft && soft < 0.5,
      crisp: left.crisp && crisp < 0.5,
      outside: left.outside && !trial.reaches,
    };
  }, needs);
}

/** Chance that trials meet what a card asks of the log: counts of trials and cores, two thicknesses. */
export function chanceOfEvidence(needs: EvidenceNeeds, trials: readonly Serving[]): number {
  if (trials.length < needs.trials) return 0;
  const range = needs.oneThicknessMm;
  if (range !== null) {
    const thick = [...range, ...trials.map(({ thicknessMm }) => thicknessMm)];
    if (largestOf(thick) < THICKNESS_RATIO * smallestOf(thick)) return 0;
  }
  return (
    atLeast(
      needs.climbing,
      trials.map(({ readings }) => readings.chance.climbing),
    ) *
    atLeast(
      needs.done,
      trials.map(({ readings }) => readings.chance.done),
    )
  );
}

/** What was tried once trials are run as well, as a calibration that tells the appliance's coefficient. */
export function triedAlso(
  calibration: CrispCalibration,
  applianceId: string,
  settings: readonly {
    readonly thicknessMm: number;
    readonly setpointC: number;
    readonly loadFraction: number;
    readonly startC: number;
    readonly sidesMm: readonly [number, number] | null;
    readonly turned: boolean;
  }[],
): CrispCalibration {
  const { logged } = calibration;
  const range = (
    before: readonly [number, number] | undefined,
    values: readonly number[],
  ): readonly [number, number] => {
    const all = [...(before ?? []), ...values];
    return [smallestOf(all), largestOf(all)];
  };
  const sides = settings.flatMap(({ sidesMm }) => (sidesMm === null ? [] : [Math.sqrt(sidesMm[0] * sidesMm[1])]));
  return {
    ...calibration,
    constants: calibration.constants.map((constant) =>
      constant.name === `coefficient:${applianceId}` ? { ...constant, informed: true } : constant,
    ),
    logged: {
      thicknessMm: range(
        logged?.thicknessMm,
        settings.map(({ thicknessMm }) => thicknessMm),
      ),
      setpointC: range(
        logged?.setpointC,
        settings.map(({ setpointC }) => setpointC),
      ),
      loadFraction: range(
        logged?.loadFraction,
        settings.map(({ loadFraction }) => loadFraction),
      ),
      startC: range(
        logged?.startC,
        settings.map(({ startC }) => startC),
      ),
      sideMm: sides.length === 0 ? (logged?.sideMm ?? null) : range(logged?.sideMm ?? undefined, sides),
      turned: (logged?.turned ?? false) || settings.some(({ turned }) => turned),
      unturned: (logged?.unturned ?? false) || settings.some(({ turned }) => !turned),
    },
  };
}

/** The thickest slab over the thinnest with one more. */
export function ratioWith([low, high]: readonly [number, number], thicknessMm: number): number {
  return Math.max(high, thicknessMm) / Math.min(low, thicknessMm);
}

/** Chance that at least so many of independent events happen. */
function atLeast(wanted: number, chances: readonly number[]): number {
  let counts = [1];
  for (const chance of chances)
    counts = [...counts, 0].map((same, count) => same * (1 - chance) + (counts[count - 1] ?? 0) * chance);
  return counts.slice(Math.max(0, Math.ceil(wanted))).reduce((sum, chance) => sum + chance, 0);
}
