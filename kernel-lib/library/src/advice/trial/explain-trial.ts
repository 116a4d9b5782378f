import { freezeDeep } from "../../check/freeze-deep";
import type { CrispCalibration } from "../../crisp/calibration/calibrate-crisp";
import { probedMm } from "../../crisp/calibration/crisp-noise";
import { browningOf } from "../../crisp/clocks/browning-clock";
import { coreReadingC } from "../../crisp/clocks/core-clock";
import { crustMmAt, lossPercentOf } from "../../crisp/clocks/crust-clock";
import { LOOSE_LOAD } from "../../crisp/clocks/load-effect";
import { heatedMin } from "../../crisp/clocks/look-cost";
import { brownScoreAt, crispScoreAt, meanWritten } from "../../crisp/clocks/panel-score";
import { GOOD_CHANCE } from "../../crisp/window/card-time";
import { modePiece } from "../../crisp/window/draw-pieces";
import { basisOf } from "../../crisp/window/window-setting";
import { chanceText, minutesText } from "../../crisp/window/window-words";
import { limitText } from "../../safety/limit-text";
import type { Kitchen, KitchenTrial } from "../../trials/kitchen";
import { trialOf } from "../../trials/kitchen-lookup";
import { sidesOfTrial } from "../../trials/pieces/sides-of-trial";
import { trialNotices } from "../../trials/pieces/trial-notices";
import { SETPOINT_STEP_K } from "../../units/setpoint-step";
import { ownSettingText } from "../../units/setting-text";
import { ownTemperatureText } from "../../units/temperature-text";
import { thicknessWords } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import { crispWindow, type KitchenWindow } from "../window/crisp-window";
import { observationOf, windowCalibration } from "../window/window-calibration";
import { meanOf, measuredFailures } from "./measured-failures";

/** What `explainTrial` works from. */
export interface ExplainTrialOptions {
  readonly kitchen: Kitchen;
  readonly trialId: string;
  /** browning score that is too dark, 0 to 9; default 7, our judgement */
  readonly tooBrownScore?: number;
  /** mass lost that is too dry (%); default 25, our judgement */
  readonly tooDryPercent?: number;
}

/** One measurement of the trial against what the other trials say it should have been. */
export interface Surprise {
  readonly of: "core (°C)" | "loss (%)" | "crispness (0 to 9)" | "browning (0 to 9)";
  readonly seen: number;
  readonly expected: number;
  /** seen less expected, in standard deviations of such a measurement [-] */
  readonly deviations: number;
}

/** One clock at the time of taking out. */
export interface ClockState {
  readonly clock: "core" | "crust" | "browning" | "drying";
  readonly failed: boolean;
  /** minutes by which the time was off: positive when it was too short, negative when too long; 0 when it did not fail */
  readonly byMin: number;
  /** in words, with what was seen and what the clocks say */
  readonly sentence: string;
}

/** Why a trial failed, or that it did not. */
export interface TrialExplanation {
  readonly kind: "trial explanation";
  readonly trialId: string;
  readonly failed: boolean;
  readonly clocks: readonly ClockState[];
  /** doubts about the log itself, one sentence each */
  readonly doubts: readonly string[];
  readonly surprises: readonly Surprise[];
  /** the single change that would most likely have worked, with its chance; null when none was needed */
  readonly change: { readonly sentence: string; readonly success: number } | null;
  /** the window of the trial's own setting, calibrated without this trial */
  readonly window: KitchenWindow;
  readonly caution: string;
  /** all of it in words */
  readonly sentence: string;
}

/** Probe readings of one slab spread further than this are worth a second look: share of the mean, our judgement. */
const UNEVEN = 0.1;

/**
 * Why a trial failed: which clock, by how much, whether its log is doubtful, and which single change would most likely
 * have worked. The clocks are calibrated on the variant's other trials, so that the trial does not explain itself.
 *
 * A clock's failure is what was measured where it was measured (core reading, checks and scores, weights), else what
 * the clocks predict. Changes tried: another time, a thinner slab, 10 and 20 K up and down, a looser load, a turn.
 *
 * @example
 * explainTrial({ kitchen: loadKitchen(), trialId: "PD-01" }).clocks.filter((clock) => clock.failed).map((clock) => clock.clock); // → ["crust"]
 */
export function explainTrial(options: ExplainTrialOptions): TrialExplanation {
  const { kitchen, trialId, tooBrownScore, tooDryPercent } = options;
  const trial = trialOf(kitchen, trialId);
  const calibration = windowCalibration({ kitchen, variantId: trial.variantId, without: [trialId] });
  const at = (changed: Partial<Parameters<typeof crispWindow>[0]>): KitchenWindow =>
    crispWindow({
      kitchen,
      variantId: trial.variantId,
      thicknessMm: trial.thicknessMm,
      piece: pieceOfTrial(kitchen, trial),
      applianceId: trial.applianceId,
      setpointC: trial.setpointC,
      loadFraction: trial.loadFraction ?? undefined,
      turned: trial.flipMin !== null,
      startC: trial.startC,
      tooBrownScore,
      tooDryPercent,
      calibration,
      draws: 600,
      ...changed,
    });
  const window = at({});
  const clocks = clockStates(kitchen, trial, window);
  const failures = clocks.filter((clock) => clock.failed);
  const surprises = surprisesOf(kitchen, trial, calibration, window);
  const doubts = doubtsOf(kitchen, trial, surprises);
  const change = failures.length === 0 ? null : bestChange(trial, window, at);
  const verdict = failures.length === 0 ? "nothing failed" : failures.map((clock) => clock.sentence).join("; ");
  const sentence = [
    `Trial ${trialId}, ${thicknessWords(trial.thicknessMm, kitchen.units)} at ${ownSettingText(trial.setpointC, kitchen.units)} for ${trial.timeMin} min: ${verdict}.`,
    ...(change === null ? [] : [`Most likely to have worked: ${change.sentence}.`]),
    ...(doubts.length === 0 ? [] : [`Doubtful: ${doubts.join("; ")}.`]),
  ].join(" ");
  return freezeDeep({
    kind: "trial explanation",
    trialId,
    failed: failures.length > 0,
    clocks,
    doubts,
    surprises,
    change,
    window,
    caution: window.limit.caution,
    sentence,
  });
}

function pieceOfTrial(kitchen: Kitchen, trial: KitchenTrial): { lengthMm: number; widthMm: number } {
  const [lengthMm, widthMm] = sidesOfTrial(kitchen, trial);
  return { lengthMm, widthMm };
}

function clockStates(kitchen: Kitchen, trial: KitchenTrial, window: KitchenWindow): ClockState[] {
  const { timeMin } = trial;
  const { limit, setting } = window;
  const state = (clock: ClockState["clock"], failed: boolean, byMin: number, sentence: string): ClockState => ({
    clock,
    failed,
    byMin: failed ? byMin : 0,
    sentence,
  });
  const { tooBrownScore, tooDryPercent } = setting;
  const measured = measuredFailures({ kitchen, trial, tooBrownScore, tooDryPercent });
  const coreFailed = measured.core ?? timeMin < window.core.min;
  const core = trial.coreC === null ? "not read" : ownTemperatureText(trial.coreC, kitchen.units);
  const crispScore = meanOf(trial.crispScores);
  const crisp = !(measured.crust ?? timeMin < window.crisp.min);
  const brownScore = meanOf(trial.brownScores);
  const brown = measured.browning ?? timeMin > window.brown.min;
  const { lossPercent } = observationOf(kitchen, trial);
  const dry = measured.drying ?? timeMin > window.dry.min;
  const score = (value: number | null): string => (value === null ? "not scored" : `score ${value.toFixed(1)}`);
  return [
    state(
      "core",
      coreFailed,
      Math.max(0, window.core.min - timeMin),
      `core ${coreFailed ? "below" : "at"} its limit of ${limitText(limit, kitchen.units)} (${core}; the clocks reach it at ${minutesText(window.core.min)} min)`,
    ),
    state(
      "crust",
      !crisp,
      Math.max(0, window.crisp.min - timeMin),
      `${crisp ? "crisp" : "not crisp"} (${score(crispScore)}; the clocks say crisp from ${minutesText(window.crisp.min)} min)`,
    ),
    state(
      "browning",
      brown,
      Math.min(0, window.brown.min - timeMin),
      `${brown ? "too brown" : "not too brown"} (${score(brownScore)}; the clocks say too brown from ${minutesText(window.brown.min)} min)`,
    ),
    state(
      "drying",
      dry,
      Math.min(0, window.dry.min - timeMin),
      `${dry ? "too dry" : "not too dry"} (${lossPercent === null ? "not weighed" : `${lossPercent.toFixed(1)} % lost`}; the clocks say too dry from ${minutesText(window.dry.min)} min)`,
    ),
  ];
}

function surprisesOf(
  kitchen: Kitchen,
  trial: KitchenTrial,
  calibration: CrispCalibration,
  window: KitchenWindow,
): Surprise[] {
  const { setting } = window;
  const basis = basisOf(calibration, setting);
  const piece = modePiece(calibration, setting);
  const { noise, unevenness } = calibration;
  const { lossPercent, looksMin } = observationOf(kitchen, trial);
  const { thicknessMm, timeMin } = trial;
  const probed = probedMm(thicknessMm, unevenness);
  const doubt = Math.hypot(0.03, noise.run);
  const core = (minutes: number): number =>
    coreReadingC(basis, piece, probed, heatedMin(looksMin, minutes, piece.lookMin), trial.restedCoreC === null);
  const depth = (minutes: number): number => crustMmAt(basis, piece, thicknessMm, heatedMin(looksMin, minutes));
  const crisp = (minutes: number): number =>
    meanWritten(crispScoreAt(depth(minutes), piece.crustMm, piece.panelWidthMm), noise.crispScore);
  const brown = (minutes: number): number =>
    meanWritten(
      brownScoreAt(browningOf(basis, piece, thicknessMm, depth(minutes)), piece.brownSteepness),
      noise.brownScore,
    );
  const loss = (minutes: number): number => lossPercentOf(basis, piece, thicknessMm, depth(minutes));
  const surprise = (
    of: Surprise["of"],
    seen: number | null,
    model: (minutes: number) => number,
    sd: number,
  ): Surprise[] => {
    if (seen === null) return [];
    const expected = model(timeMin);
    const slope = model(timeMin * (1 + doubt)) - expected;
    return [{ of, seen, expected, deviations: (seen - expected) / Math.hypot(sd, slope) }];
  };
  return [
    ...surprise("core (°C)", trial.coreC, core, noise.coreK),
    ...surprise("loss (%)", lossPercent, loss, noise.lossPercent),
    ...surprise(
      "crispness (0 to 9)",
      meanOf(trial.crispScores),
      crisp,
      noise.crispScore / Math.sqrt(trial.crispScores.length || 1),
    ),
    ...surprise(
      "browning (0 to 9)",
      meanOf(trial.brownScores),
      brown,
      noise.brownScore / Math.sqrt(trial.brownScores.length || 1),
    ),
  ];
}

function doubtsOf(kitchen: Kitchen, trial: KitchenTrial, surprises: readonly Surprise[]): string[] {
  const doubts = trialNotices({ kitchen, trials: [trial] }).map((notice) => notice.replace(/^trial \S+: /, ""));
  if (trial.thicknessSdMm !== null && trial.thicknessSdMm > UNEVEN * trial.thicknessMm)
    doubts.push(
      `the probe readings spread by ${thicknessWords(trial.thicknessSdMm, kitchen.units)} about ${thicknessWords(trial.thicknessMm, kitchen.units)}: the slab was uneven, or the probe slipped`,
    );
  for (const { of, seen, expected, deviations } of surprises)
    if (Math.abs(deviations) > 3)
      doubts.push(
        `${measured(of, seen, kitchen.units)} where the other trials expect ${said(of, expected, kitchen.units)} (${deviations > 0 ? "+" : "−"}${Math.abs(deviations).toFixed(1)} standard deviations)`,
      );
  return doubts;
}

/** A measurement with its name; the name of a core carries no unit, as its number does. */
function measured(of: Surprise["of"], value: number, units: KitchenUnits): string {
  return `${of === "core (°C)" ? "core" : of} ${said(of, value, units)}`;
}

function said(of: Surprise["of"], value: number, units: KitchenUnits): string {
  return of === "core (°C)" ? ownTemperatureText(value, units) : value.toFixed(1);
}

function bestChange(
  trial: KitchenTrial,
  window: KitchenWindow,
  at: (changed: Partial<Parameters<typeof crispWindow>[0]>) => KitchenWindow,
): { sentence: string; success: number } {
  const { setting, recommended } = window;
  const found: { sentence: string; success: number }[] = [];
  const add = (what: string, tried: KitchenWindow): void => {
    const { success } = tried.recommended;
    found.push({ sentence: `${what}, chance of success ${chanceText(success)}`, success });
  };
  add(`${recommended.cardMin} min instead of ${trial.timeMin}`, window);
  if (recommended.success >= GOOD_CHANCE) return found[0];
  const timed = (tried: KitchenWindow): string => `(${tried.recommended.cardMin} min)`;
  for (const share of [0.85, 0.7]) {
    const thinner = at({ thicknessMm: share * setting.thicknessMm });
    add(`a slab of ${thicknessWords(thinner.setting.thicknessMm, setting.units)} ${timed(thinner)}`, thinner);
  }
  for (const steps of [-2, -1, 1, 2]) {
    const setpointC = setting.setpointC + steps * SETPOINT_STEP_K[setting.units];
    if (setpointC < 150 || setpointC > 230) continue;
    const other = at({ setpointC });
    add(`${ownSettingText(setpointC, setting.units)} ${timed(other)}`, other);
  }
  if (setting.loadFraction > LOOSE_LOAD + 0.02) {
    const loose = at({ loadFraction: LOOSE_LOAD });
    add(`a load of ${LOOSE_LOAD} of the floor ${timed(loose)}`, loose);
  }
  if (!setting.turned) {
    const turned = at({ turned: true });
    add(`turning past half-way ${timed(turned)}`, turned);
  }
  return found.reduce((best, each) => (each.success > best.success + 1e-9 ? each : best));
}
