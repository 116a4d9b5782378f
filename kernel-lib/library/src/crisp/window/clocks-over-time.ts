import type { CrispCalibration } from "../calibration/calibrate-crisp";
import { browningOf } from "../clocks/browning-clock";
import { coreAtC } from "../clocks/core-clock";
import { crustMmAt, lossPercentOf } from "../clocks/crust-clock";
import { brownScoreAt, crispScoreAt } from "../clocks/panel-score";
import { modePiece } from "./draw-pieces";
import { basisOf, type SettledSetting, settle, type WindowSetting } from "./window-setting";

/** What `clocksOverTime` works from. */
export interface ClocksOverTimeOptions extends WindowSetting {
  readonly calibration: CrispCalibration;
  readonly timesMin: readonly number[];
}

/** The state of one piece over time at the most probable constants. */
export interface ClocksOverTime {
  readonly kind: "clocks over time";
  readonly setting: SettledSetting;
  readonly timesMin: readonly number[];
  readonly coreC: readonly number[];
  readonly crustMm: readonly number[];
  readonly crispScore: readonly number[];
  readonly brownScore: readonly number[];
  readonly lossPercent: readonly number[];
  /** crust depth from which checks say crisp (mm) */
  readonly crispFromMm: number;
}

/**
 * Core, crust, crispness, browning and loss of a piece while it is heated, at the most probable constants.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const calibration = calibrateCrisp({ food, observations: [], applianceIds: ["basket"] });
 * const clocks = clocksOverTime({ calibration, thicknessMm: 9, applianceId: "basket", setpointC: 200, timesMin: [5, 10] });
 * clocks.crustMm; // → [0, 0.247]
 * clocks.coreC; // → [32, 80.3]
 */
export function clocksOverTime(options: ClocksOverTimeOptions): ClocksOverTime {
  const { calibration, timesMin, ...rest } = options;
  const setting = settle(rest, "clocksOverTime");
  const basis = basisOf(calibration, setting);
  const piece = modePiece(calibration, setting);
  const { thicknessMm } = setting;
  const crustMm = timesMin.map((time) => crustMmAt(basis, piece, thicknessMm, time));
  return Object.freeze({
    kind: "clocks over time",
    setting,
    timesMin,
    coreC: timesMin.map((time) => coreAtC(basis, piece, thicknessMm, time)),
    crustMm,
    crispScore: crustMm.map((depth) => crispScoreAt(depth, piece.crustMm, piece.panelWidthMm)),
    brownScore: crustMm.map((depth) =>
      brownScoreAt(browningOf(basis, piece, thicknessMm, depth), piece.brownSteepness),
    ),
    lossPercent: crustMm.map((depth) => lossPercentOf(basis, piece, thicknessMm, depth)),
    crispFromMm: piece.crustMm,
  });
}
