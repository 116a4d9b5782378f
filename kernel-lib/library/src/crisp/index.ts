// clocks: core, crust and browning over time, thickness and load

export { type ClocksOverTime, type ClocksOverTimeOptions, clocksOverTime } from "./window/clocks-over-time";
export { type LargestThickness, largestThickness } from "./window/largest-thickness";

// calibration: the clocks' constants from logged trials

export {
  type CalibrateCrispOptions,
  type CalibratedConstant,
  type CrispCalibration,
  calibrateCrisp,
} from "./calibration/calibrate-crisp";
export type { Contradiction } from "./calibration/contradictions";
export type { CrispNoise } from "./calibration/crisp-noise";
export type { CrispObservation } from "./calibration/crisp-observation";
export { type CrispPrior, type CrispPriorsOptions, crispPriors } from "./calibration/crisp-priors";
export type { LoggedRange } from "./calibration/logged-range";

// window: from when to when, and how often it will do

export { type CardTime, type CardTimeOptions, cardTime, GOOD_CHANCE } from "./window/card-time";
export { type Misfit, misfitAt } from "./window/misfit-at";
export type { SuccessOverTime } from "./window/success-over-time";
export {
  type CrispWindow,
  type Moment,
  type RecommendedTime,
  type WindowAtOptions,
  windowAt,
} from "./window/window-at";
export { type WindowMap, type WindowMapOptions, windowMapOverSetpoint, windowMapOverTime } from "./window/window-map";
export {
  type WindowOverThickness,
  type WindowOverThicknessOptions,
  windowOverThickness,
} from "./window/window-over-thickness";
export type { SettledSetting, WindowSetting } from "./window/window-setting";
