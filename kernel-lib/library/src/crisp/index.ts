// clocks: core, crust and browning over time, thickness and load

export { type ClocksOverTime, type ClocksOverTimeOptions, clocksOverTime } from "./clocks/clocks-over-time";
export { type LargestThickness, largestThickness } from "./clocks/largest-thickness";

// calibration: the clocks' constants from logged trials

export { type CalibratedConstant, type CrispCalibration, calibrateCrisp } from "./calibration/calibrate-crisp";
export type { CrispObservation } from "./calibration/crisp-observation";
export { type CrispPrior, type CrispPriorsOptions, crispPriors } from "./calibration/crisp-priors";
export type { CalibrateCrispOptions, CrispNoise } from "./calibration/crisp-residuals";

// window: from when to when, and how often it will do

export type { SuccessOverTime } from "./window/success-over-time";
export {
  type CrispWindow,
  type Moment,
  type RecommendedTime,
  type WindowAtOptions,
  windowAt,
} from "./window/window-at";
export {
  type WindowCoverage,
  type WindowCoverageOptions,
  type WindowCoverageRow,
  windowCoverage,
} from "./window/window-coverage";
export { type WindowMap, type WindowMapOptions, windowMapOverSetpoint, windowMapOverTime } from "./window/window-map";
export {
  type WindowOverThickness,
  type WindowOverThicknessOptions,
  windowOverThickness,
} from "./window/window-over-thickness";
export type { SettledSetting, WindowSetting } from "./window/window-setting";
