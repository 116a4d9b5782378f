import { CRISP_SCORE } from "../../crisp/clocks/panel-score";
import { TOO_BROWN_SCORE, TOO_DRY_PERCENT } from "../../crisp/window/window-setting";
import type { Kitchen, KitchenTrial } from "../../trials/kitchen";
import { variantOf } from "../../trials/kitchen-lookup";
import { observationOf } from "../window/window-calibration";

/** What a trial's own measurements say of each clock: failed, not failed, or `null` where nobody measured. */
export interface MeasuredFailures {
  readonly core: boolean | null;
  readonly crust: boolean | null;
  readonly browning: boolean | null;
  readonly drying: boolean | null;
}

/** What `measuredFailures` works from. */
export interface MeasuredFailuresOptions {
  readonly kitchen: Kitchen;
  readonly trial: KitchenTrial;
  /** browning score that is too dark, 0 to 9; default 7, our judgement */
  readonly tooBrownScore?: number;
  /** mass lost that is too dry (%); default 25, our judgement */
  readonly tooDryPercent?: number;
}

/** Whether a trial's core, crust, colour or weight failed, by what was measured alone: core reading, looks and scores, weights. */
export function measuredFailures(options: MeasuredFailuresOptions): MeasuredFailures {
  const { kitchen, trial, tooBrownScore = TOO_BROWN_SCORE, tooDryPercent = TOO_DRY_PERCENT } = options;
  const { limitC } = variantOf(kitchen, trial.variantId).limit;
  const crispScore = meanOf(trial.crispScores);
  const brownScore = meanOf(trial.brownScores);
  const { lossPercent } = observationOf(kitchen, trial);
  const scored = crispScore === null ? null : crispScore < CRISP_SCORE;
  return Object.freeze({
    core: trial.coreC === null ? null : trial.coreC < limitC,
    crust: trial.crispMin !== null ? false : trial.notCrispMin !== null ? true : scored,
    browning: brownScore === null ? null : brownScore >= tooBrownScore,
    drying: lossPercent === null ? null : lossPercent >= tooDryPercent,
  });
}

/** Mean of a panel's scores; null without any. */
export function meanOf(scores: readonly number[]): number | null {
  return scores.length === 0 ? null : scores.reduce((sum, score) => sum + score, 0) / scores.length;
}
