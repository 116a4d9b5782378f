import { CRUST_FORM_ERROR } from "../../heat/formulas/crust-depth";
import { ownLengthText } from "../../units/length-text";
import { rangeText } from "../../units/range-text";
import { ownSettingText } from "../../units/setting-text";
import { ownTemperatureText } from "../../units/temperature-text";
import { thicknessWords } from "../../units/thickness-text";
import type { CrispCalibration } from "../calibration/calibrate-crisp";
import { PROBED_THICKER_SD, SETTING_MISFIT, THICKNESS_POWER } from "../calibration/crisp-noise";
import { sideOf } from "../calibration/logged-range";
import { EDGE_SPEED_ERROR } from "../clocks/edge-speed";
import type { SettledSetting } from "./window-setting";

/** How far the clocks may miss a setting (sd of the logarithm of their times; browning: of its rate), and how far off it is. */
export interface Misfit {
  readonly core: number;
  readonly crust: number;
  readonly brown: number;
  /** 0 inside what was logged; 1 is a third thicker or thinner, 15 K hotter, half the floor fuller, or twice the piece [-] */
  readonly distance: number;
  /** what lies outside, in words; empty when nothing does */
  readonly outside: readonly string[];
}

/** Whether a setting was tried; outside what was tried a chance is a guess that nobody should print. */
export type Standing = "tried" | "on the edge of what was tried" | "outside what was tried";

/** From this distance on a setting is on the edge of what was tried, and from the second on outside it; our judgement. */
const EDGE_DISTANCE = 0.17;
const OUTSIDE_DISTANCE = 1.2;

/** Growth of the misfit over one unit of distance: for the core, the crust and browning; our judgement. */
export const MISFIT_GROWTH: { readonly core: number; readonly crust: number; readonly brown: number } = {
  core: 0.015,
  crust: 0.03,
  brown: 0.1,
};

/**
 * What the clocks may miss at a setting: a floor, larger where the log has shown it to be (`noise.misfit`), and a part
 * that grows with the distance from what was logged in thickness, setpoint, load, start, cut and turn. The core's has which piece
 * was probed in it (`PROBED_THICKER_SD`).
 *
 * Distances add as squares: ln(L/L₀)/ln(4/3), ΔT/15 K, Δload/0.5, Δstart/20 K, ln(side/side₀)/ln 2, and 1 for a turn
 * that was never logged; each from the nearest value that was. Without trials everything is far: distance 2.
 */
export function misfitAt(calibration: CrispCalibration, setting: SettledSetting, coreError: number): Misfit {
  const { logged, noise, constants, unevenness } = calibration;
  const outside: string[] = [];
  let squares = 0;
  const far = (units: number, sentence: string): void => {
    if (units <= 0) return;
    squares += units * units;
    if (units >= EDGE_DISTANCE) outside.push(sentence);
  };
  if (logged === null) {
    outside.push("no trial of it was logged");
    squares = 4;
  } else {
    const past = (value: number, [low, high]: readonly [number, number]): number =>
      Math.max(low - value, value - high, 0);
    const ratio = (value: number, [low, high]: readonly [number, number]): number =>
      Math.max(Math.log(low / value), Math.log(value / high), 0);
    const { thicknessMm, setpointC, loadFraction, startC, sidesMm, turned, applianceId, units } = setting;
    far(
      ratio(thicknessMm, logged.thicknessMm) / Math.log(4 / 3),
      `${thicknessWords(thicknessMm, units)} is outside the trials, ${thicknessWords(logged.thicknessMm, units)}`,
    );
    far(
      past(setpointC, logged.setpointC) / 15,
      `${ownSettingText(setpointC, units)} is outside the trials, ${rangeText(logged.setpointC, (setting) => ownSettingText(setting, units))}`,
    );
    far(
      past(loadFraction, logged.loadFraction) / 0.5,
      `${Math.round(100 * loadFraction)} % of the floor is outside the trials, ${logged.loadFraction.map((load) => Math.round(100 * load)).join(" to ")} %`,
    );
    far(
      past(startC, logged.startC) / 20,
      `a start at ${ownTemperatureText(startC, units)} is outside the trials, ${rangeText(logged.startC, (start) => ownTemperatureText(start, units))}`,
    );
    if (sidesMm !== null && logged.sideMm !== null)
      far(
        ratio(sideOf(sidesMm), logged.sideMm) / Math.log(2),
        `pieces of ${ownLengthText(sidesMm, units)} are ${sideOf(sidesMm) < logged.sideMm[0] ? "smaller" : "larger"} than those logged`,
      );
    if (turned && !logged.turned) far(1, "no turned pieces were logged");
    if (!turned && !logged.unturned) far(1, "only turned pieces were logged");
    const coefficient = constants.find((constant) => constant.name === `coefficient:${applianceId}`);
    if (coefficient !== undefined && !coefficient.informed)
      far(1, `none of its trials in ${applianceId} tells of the coefficient`);
  }
  const distance = Math.sqrt(squares);
  const size = (clock: keyof typeof MISFIT_GROWTH, own: number): number =>
    Math.hypot(noise.misfit * SETTING_MISFIT[clock], MISFIT_GROWTH[clock] * distance, own);
  const edges = setting.sidesMm === null ? 0 : EDGE_SPEED_ERROR;
  // near what was logged the short forms' own errors are in what a clock misses at a setting, which its constants take up there
  const formError = Math.min(1, distance) * Math.hypot(coreError, edges);
  return {
    core: size("core", Math.hypot(formError, PROBED_THICKER_SD * THICKNESS_POWER * unevenness)),
    crust: size("crust", CRUST_FORM_ERROR),
    brown: size("brown", 0),
    distance,
    outside,
  };
}

/** Where a setting stands, by its distance from what was logged. */
export function standingOf({ distance }: Pick<Misfit, "distance">): Standing {
  if (distance < EDGE_DISTANCE) return "tried";
  return distance < OUTSIDE_DISTANCE ? "on the edge of what was tried" : "outside what was tried";
}
