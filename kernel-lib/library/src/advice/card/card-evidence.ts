import { counted } from "../../check/counted";
import { GOOD_CHANCE } from "../../crisp/window/card-time";
import { chanceOf, minutesText } from "../../crisp/window/window-words";
import { limitText } from "../../safety/limit-text";
import { largestOf, smallestOf } from "../../statistics/extremes";
import { hasImpossibleCore, highestCore } from "../../trials/core-of-trial";
import { distinctTrials } from "../../trials/distinct-trials";
import type { Kitchen, KitchenTrial } from "../../trials/kitchen";
import { panOf, variantOf } from "../../trials/kitchen-lookup";
import { ownMassText } from "../../units/mass-text";
import { roundToScale } from "../../units/round-to-scale";
import { ownSettingText } from "../../units/setting-text";
import { ownTemperatureText } from "../../units/temperature-text";
import { thicknessWords } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { KitchenWindow } from "../window/crisp-window";

/** One condition of a card: whether the log meets it, what it holds, and what to do where it does not. */
export interface CardCondition {
  readonly name: string;
  readonly met: boolean;
  /** what the log holds */
  readonly found: string;
  /** which trial to run or what to look at; null when it is met */
  readonly todo: string | null;
  /** what is missing, in a few words; null when it is met */
  readonly missing: string | null;
}

/** What `cardEvidence` works from. */
export interface CardEvidenceOptions {
  readonly kitchen: Kitchen;
  /** from `crispWindow` */
  readonly window: KitchenWindow;
}

/** Trials that a card must rest on; our judgement. */
export const LEAST_TRIALS = 6;
/** The thickest slab of them over the thinnest; our judgement. */
export const THICKNESS_RATIO = 1.15;
/** Core readings to either side of the limit, in the appliance of the card; our judgement. */
export const LEAST_CORES = 3;
/** A core up to so far above its limit still climbs, and tells when it was passed (K); our judgement. */
export const CLIMBING_K = 10;

/**
 * Whether a reheat card may be printed: the conditions on the log, each with what is there and what is missing.
 *
 * At least six trials over two thicknesses; in the card's appliance three core readings that still climb (below the limit
 * and 10 K) and three at or above the limit; start, load, turn, cut, thickness and setpoint inside what was logged; the
 * calibration settled, without contradictions; no core below its limit at the card's time or later in an equal or easier
 * setting; a chance of success of 0.9 or more within the accepted time. The counts are our judgement: fewer readings leave
 * the core's clock to its prior, and readings of done pieces alone do not tell when they were done.
 */
export function cardEvidence({ kitchen, window }: CardEvidenceOptions): readonly CardCondition[] {
  const { setting, limit, calibration, recommended, standing, extrapolation, doubts } = window;
  const variant = variantOf(kitchen, window.variantId);
  const trials = distinctTrials(kitchen.trials.filter((trial) => trial.variantId === window.variantId));
  const here = trials.filter((trial) => trial.applianceId === setting.applianceId);
  const thicknesses = trials.map((trial) => trial.thicknessMm);
  const ratio = trials.length === 0 ? 1 : largestOf(thicknesses) / smallestOf(thicknesses);
  const impossible = here.filter(hasImpossibleCore);
  const cores = here.filter((trial) => !hasImpossibleCore(trial)).flatMap((trial) => highestCore(trial) ?? []);
  const climbing = cores.filter((core) => core < limit.limitC + CLIMBING_K).length;
  const done = cores.filter((core) => core >= limit.limitC).length;
  const unscored = [
    ...(trials.some(({ crispScores }) => crispScores.length > 0) ? [] : ["crispness"]),
    ...(trials.some(({ brownScores }) => brownScores.length > 0) ? [] : ["browning"]),
  ];
  const pan = panOf(kitchen, variant.panId);
  const { units } = kitchen;
  const spread = (share: number): string =>
    `${ownMassText(roundToScale(share * variant.batchG, units), units)} on ${pan.name}`;
  const early = `${(0.6 * window.core.min).toFixed(0)} to ${(0.95 * window.core.min).toFixed(0)} min`;
  const cold = coldAtCard(here, window);
  const condition = (name: string, met: boolean, found: string, todo: string, missing: string): CardCondition => ({
    name,
    met,
    found,
    todo: met ? null : todo,
    missing: met ? null : missing,
  });
  return [
    condition(
      "enough trials",
      trials.length >= LEAST_TRIALS,
      `${trials.length} trials (${LEAST_TRIALS} asked for)`,
      `run ${LEAST_TRIALS - trials.length} more trials in ${setting.applianceId} at ${ownSettingText(setting.setpointC, units)}`,
      counted(LEAST_TRIALS - trials.length, "more trial"),
    ),
    condition(
      "two thicknesses",
      ratio >= THICKNESS_RATIO,
      trials.length === 0
        ? "no slab logged"
        : `slabs of ${thicknessWords([smallestOf(thicknesses), largestOf(thicknesses)], units)}`,
      `run a slab a third thicker or thinner: ${spread(4 / 3)} or ${spread(3 / 4)}`,
      "a second thickness",
    ),
    condition(
      "cores still climbing",
      climbing >= LEAST_CORES,
      `${climbing} core readings below ${ownTemperatureText(limit.limitC + CLIMBING_K, units, 0)} in ${setting.applianceId} (${LEAST_CORES} asked for)`,
      `take pieces out early, at ${early}, and read the core at once: ${LEAST_CORES - climbing} more such readings (those pieces are not to be eaten)`,
      `${counted(LEAST_CORES - climbing, "more core")} read early`,
    ),
    condition(
      "cores at the limit",
      done >= LEAST_CORES,
      `${done} core readings of ${limitText(limit, units)} or more in ${setting.applianceId} (${LEAST_CORES} asked for)`,
      `read the core of ${LEAST_CORES - done} more pieces taken out when crisp`,
      `${counted(LEAST_CORES - done, "more core")} read when crisp`,
    ),
    condition(
      "no cold core",
      cold.length === 0,
      cold.length === 0
        ? "no core below its limit at the card's time"
        : cold.map((trial) => coldText(trial, units)).join("; "),
      `a core was below ${limitText(limit, units)} at the card's time of ${recommended.cardMin} min or later, in a setting as easy: find out why before anything is printed`,
      "a cold core that nobody has explained",
    ),
    condition(
      "inside what was logged",
      standing === "tried" && extrapolation.length === 0,
      extrapolation.length === 0 ? "inside the trials" : extrapolation.join("; "),
      "log trials at this very setting",
      "trials at this setting",
    ),
    condition(
      "no contradiction",
      impossible.length === 0 &&
        calibration.contradictions.length === 0 &&
        calibration.converged &&
        doubts.length === 0,
      [
        ...impossible.map((trial) => impossibleText(trial, units)),
        ...calibration.contradictions.map((one) => one.sentence),
        ...doubts,
      ].join("; ") || "trials and clocks agree",
      impossible.length === 0
        ? "look into it, and correct the log or run the trial again"
        : `${impossible.map((trial) => impossibleText(trial, units)).join("; ")}: correct the log`,
      impossible.length === 0 ? "readings that agree" : "a core reading to correct",
    ),
    condition(
      "window open in time",
      window.open && recommended.cardMin <= setting.longestMin,
      window.open
        ? `card ${recommended.cardMin} min, ${setting.longestMin} min accepted`
        : `closed: ready at ${minutesText(window.opens.min)} min, overdone at ${minutesText(window.closes.min)} min`,
      "thinner slab, other setpoint, or a longer accepted time",
      window.open
        ? `takes ${recommended.cardMin} min, ${setting.longestMin} accepted`
        : `too ${window.closedBy === "browning" ? "brown" : "dry"} before it is ready`,
    ),
    condition(
      "chance of success",
      recommended.success >= GOOD_CHANCE,
      chanceOf(window),
      unscored.length > 0
        ? `score ${unscored.join(" and ")} of the next pieces, 0 to 9: without scores nobody can say when a piece is crisp or overdone (${Math.round(100 * GOOD_CHANCE)} % asked for)`
        : `more trials near this setting, or a better one (${Math.round(100 * GOOD_CHANCE)} % asked for)`,
      unscored.length > 0
        ? `scores of ${unscored.join(" and ")}`
        : `a chance of ${percentText(recommended.success)}, ${Math.round(100 * GOOD_CHANCE)} % asked for`,
    ),
  ];
}

/** Conditions that ask for another batch, cut, load or setting rather than for something to log. */
export const OF_THE_SETTING: ReadonlySet<string> = new Set(["window open in time", "chance of success"]);

/** Trials in a setting as easy as the window's or easier, out at its card time or later, with a core below the limit. */
function coldAtCard(trials: readonly KitchenTrial[], { setting, limit, recommended }: KitchenWindow): KitchenTrial[] {
  return trials.filter(
    (trial) =>
      (highestCore(trial) ?? Number.POSITIVE_INFINITY) < limit.limitC &&
      trial.timeMin >= recommended.cardMin - 0.25 &&
      trial.thicknessMm <= 1.05 * setting.thicknessMm &&
      trial.setpointC >= setting.setpointC - 3 &&
      (trial.loadFraction ?? 0) <= setting.loadFraction + 0.05 &&
      trial.startC >= setting.startC - 2,
  );
}

/** A chance in words, rounded down, so that what falls short of 90 % does not read 90 %. */
function percentText(chance: number): string {
  return chance < 0.01 ? "under 1 %" : `${Math.floor(100 * chance)} %`;
}

function impossibleText(trial: KitchenTrial, units: KitchenUnits): string {
  return `${trial.trialId} has a core of ${ownTemperatureText(highestCore(trial) as number, units)}, hotter than any core with water in it (°F that stand under °C?)`;
}

function coldText(trial: KitchenTrial, units: KitchenUnits): string {
  return `${trial.trialId} read ${ownTemperatureText(highestCore(trial) as number, units)} after ${trial.timeMin} min`;
}
