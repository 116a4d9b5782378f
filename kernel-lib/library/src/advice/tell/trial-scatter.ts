import { freezeDeep } from "../../check/freeze-deep";
import type { CrispCalibration } from "../../crisp/calibration/calibrate-crisp";
import { USUAL_NOISE, USUAL_WORTH } from "../../crisp/calibration/crisp-noise";
import type { PiecePlace } from "../../crisp/calibration/piece-at";
import { browningOf } from "../../crisp/clocks/browning-clock";
import { clockBasis } from "../../crisp/clocks/clock-basis";
import { crispMin, crustMmAt, lossPercentOf } from "../../crisp/clocks/crust-clock";
import { airAtLoadC } from "../../crisp/clocks/load-effect";
import { heatedMin } from "../../crisp/clocks/look-cost";
import { brownScoreAt, crispScoreAt, meanWritten } from "../../crisp/clocks/panel-score";
import { modePiece } from "../../crisp/window/draw-pieces";
import { chiSquaredQuantile } from "../../statistics/distributions/chi-squared-distribution";
import { distinctTrials } from "../../trials/distinct-trials";
import type { Kitchen, KitchenTrial } from "../../trials/kitchen";
import { tastersOf } from "../trial/plan-words";
import type { KitchenWindow } from "../window/crisp-window";
import { observationOf } from "../window/window-calibration";

/** What of a trial is compared. */
export type Told = "crispTime" | "crispScore" | "brownScore" | "lossPercent";

/** How far trials of one variant at one setting scatter in one quantity. */
export interface TrialScatter {
  readonly of: Told;
  /** standard deviation of one trial beside others of the same morning, each from a slab of its own: min, points or % points */
  readonly sd: number;
  /** 95 % interval of it, from how many measurements it rests on */
  readonly sd95: readonly [number, number];
  /** of what all trials of one morning share, same unit */
  readonly morningSd: number;
  /** measurements of it in this variant's log, of trials that were seen crisp; the usual scatter counts as six more */
  readonly measurements: number;
}

/** What `trialScatter` works from. */
export interface TrialScatterOptions {
  readonly kitchen: Kitchen;
  /** the setting at which trials are compared */
  readonly window: KitchenWindow;
}

/** Readings of a slab's depth, on the mean of which its thickness rests; our judgement, as a log asks for them. */
const PROBES = 5;
/** Minutes between two looks where no log tells; our judgement. */
const USUAL_LOOKS_MIN = 1;
const USUAL_TASTERS = 2;
/** Constants of the clocks that the trials settle for one quantity, counted off its measurements; our judgement. */
const SETTLED = 4;

/**
 * How far trials of one variant scatter at its setting: sd = usual · √((6 + Σ (rᵢ/usualᵢ)²)/(6 + max(n − 4, n/2))), rᵢ being what each
 * of its n trials that was seen crisp missed the clocks by, usualᵢ the usual scatter at that trial's own setting: of its looks, its
 * panel or the scale (`USUAL_NOISE`), and what a run's coefficient and five probes of a slab leave open there. So a score that stands
 * on the steep of the scale may miss by more than one at its end. The usual scatter counts as six trials. Scores and loss are those at
 * the window's recommended time.
 *
 * @returns crisp time, crispness, browning and loss, each with the scatter that a morning shares
 */
export function trialScatter({ kitchen, window }: TrialScatterOptions): readonly TrialScatter[] {
  const { calibration, setting, recommended } = window;
  const trials = distinctTrials(kitchen.trials.filter((trial) => trial.variantId === window.variantId));
  const at: Heated = { ...setting, timeMin: recommended.timeMin };
  const here = clocksAt(calibration, at);
  const usual = usualScatter(calibration, at, {
    lookMin: looksEveryMin(trials),
    tasters: tastersOf(kitchen, window.variantId) ?? USUAL_TASTERS,
  });
  const missed = missesOf(kitchen, calibration, trials);
  const morning = clocksAt(calibration, at, { hotter: calibration.noise.session });
  const quantities = (Object.keys(missed) as Told[]).filter((of) => Number.isFinite(here[of]));
  return freezeDeep(
    quantities.map((of) => {
      const measurements = missed[of].length;
      const squares = missed[of].reduce((sum, miss) => sum + miss * miss, 0);
      const freedom = USUAL_WORTH + Math.max(measurements - SETTLED, measurements / 2);
      const sd = usual[of] * Math.sqrt((USUAL_WORTH + squares) / freedom);
      const end = (share: number): number => sd * Math.sqrt(freedom / chiSquaredQuantile(share, freedom));
      const sd95 = [end(0.975), end(0.025)] as const;
      return { of, sd, sd95, morningSd: Math.abs(morning[of] - here[of]), measurements };
    }),
  );
}

type Quantities = Readonly<Record<Told, number>>;

/** Where and how long a piece is heated. */
interface Heated extends PiecePlace {
  readonly thicknessMm: number;
  readonly startC: number;
  readonly timeMin: number;
}

interface Changed {
  /** share by which the coefficient is higher, as a logarithm */
  readonly hotter?: number;
  /** share by which the slab is thicker */
  readonly thicker?: number;
}

/** What the clocks make of a piece at the most probable constants. */
function clocksAt(calibration: CrispCalibration, at: Heated, { hotter = 0, thicker = 0 }: Changed = {}): Quantities {
  const own = modePiece(calibration, at);
  const piece = { ...own, coefficientWm2K: own.coefficientWm2K * Math.exp(hotter) };
  const thicknessMm = at.thicknessMm * (1 + thicker);
  const { food, noise } = calibration;
  const airC = airAtLoadC(at.setpointC, at.loadFraction);
  const basis = clockBasis({ food, startC: at.startC, airC, limitC: ANY_LIMIT_C });
  const depthMm = crustMmAt(basis, piece, thicknessMm, at.timeMin);
  return {
    crispTime: crispMin(basis, piece, thicknessMm),
    crispScore: meanWritten(crispScoreAt(depthMm, piece.crustMm, piece.panelWidthMm), noise.crispScore),
    brownScore: meanWritten(
      brownScoreAt(browningOf(basis, piece, thicknessMm, depthMm), piece.brownSteepness),
      noise.brownScore,
    ),
    lossPercent: lossPercentOf(basis, piece, thicknessMm, depthMm),
  };
}

/** A basis asks for a core limit, on which neither crust nor browning depends (°C). */
const ANY_LIMIT_C = 74;

/** What every trial that was seen crisp missed the clocks by, over the usual scatter at its setting. */
function missesOf(
  kitchen: Kitchen,
  calibration: CrispCalibration,
  trials: readonly KitchenTrial[],
): Readonly<Record<Told, readonly number[]>> {
  const missed: Record<Told, number[]> = { crispTime: [], crispScore: [], brownScore: [], lossPercent: [] };
  for (const trial of trials) {
    const {
      notCrispMin,
      crispMin: seenMin,
      crispScores,
      brownScores,
      lossPercent,
      looksMin,
      ...logged
    } = observationOf(kitchen, trial);
    if (seenMin === null) continue;
    const heated = (minutes: number): number => heatedMin(looksMin, minutes);
    const at = { ...logged, timeMin: heated(logged.timeMin) };
    const clocks = clocksAt(calibration, at);
    const lookMin = notCrispMin === null ? USUAL_LOOKS_MIN : seenMin - notCrispMin;
    const tasters = Math.max(1, crispScores.length, brownScores.length);
    const usual = usualScatter(calibration, at, { lookMin, tasters });
    const note = (of: Told, measured: number): void => {
      if (Number.isFinite(clocks[of]) && usual[of] > 0) missed[of].push((measured - clocks[of]) / usual[of]);
    };
    if (notCrispMin !== null) note("crispTime", (heated(notCrispMin) + heated(seenMin)) / 2);
    if (crispScores.length > 0) note("crispScore", meanOf(crispScores));
    if (brownScores.length > 0) note("brownScore", meanOf(brownScores));
    if (lossPercent !== null) note("lossPercent", lossPercent);
  }
  return missed;
}

/** The scatter that is usual at a setting, before a log tells, with looks so far apart and so many tasters. */
function usualScatter(
  calibration: CrispCalibration,
  at: Heated,
  { lookMin, tasters }: { readonly lookMin: number; readonly tasters: number },
): Quantities {
  const here = clocksAt(calibration, at);
  const run = clocksAt(calibration, at, { hotter: USUAL_NOISE.run });
  const slab = clocksAt(calibration, at, { thicker: calibration.unevenness / Math.sqrt(PROBES) });
  const all = (of: Told, own: number): number => Math.hypot(own, run[of] - here[of], slab[of] - here[of]);
  return {
    crispTime: all("crispTime", Math.hypot(USUAL_NOISE.crispTime * here.crispTime, lookMin / Math.sqrt(12))),
    crispScore: all("crispScore", USUAL_NOISE.crispScore / Math.sqrt(tasters)),
    brownScore: all("brownScore", USUAL_NOISE.brownScore / Math.sqrt(tasters)),
    lossPercent: all("lossPercent", USUAL_NOISE.lossPercent),
  };
}

/** Minutes between the last look at which pieces were not crisp and the first at which they were: the middle of the log's. */
function looksEveryMin(trials: readonly KitchenTrial[]): number {
  const gaps = trials.flatMap(({ notCrispMin, crispMin: seen }) =>
    notCrispMin === null || seen === null ? [] : [seen - notCrispMin],
  );
  return gaps.length === 0 ? USUAL_LOOKS_MIN : gaps.sort((a, b) => a - b)[gaps.length >> 1];
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
