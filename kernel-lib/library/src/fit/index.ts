// curves: fit and predict

export { type CurveData, type CurveFit, fitCurve } from "./curve/fit-curve";
export { type FitLinearOptions, fitLinear, type LinearFit } from "./curve/fit-linear";
export { type FitPolynomialOptions, fitPolynomial, type PolynomialFit } from "./curve/fit-polynomial";
export { fitRobustCurve, type RobustCurveFit, type RobustLoss } from "./curve/fit-robust-curve";
export {
  fitSlabTime,
  type OneSidedTime,
  type SlabTimeFit,
  type SlabTimeOptions,
  type SlabTimeScatter,
} from "./curve/fit-slab-time";
export { type Prediction, predictCurve } from "./curve/predict-curve";
export { type LinearPrediction, predictLinear } from "./curve/predict-linear";
export { predictPolynomial } from "./curve/predict-polynomial";
export { predictSlabTime, type SlabTimePrediction } from "./curve/predict-slab-time";

// models: ready curves, groups, setpoints, curves of your own

export { type CurveModel, type CurveModelOptions, curveModel, type ParameterRange } from "./models/curve-model";
export { type Curves, curves } from "./models/curves";
export type { Covariates } from "./models/design-columns";
export { type GroupedModelOptions, type GroupedPoint, groupedModel } from "./models/grouped-model";
export { type SetpointModelOptions, type SetpointPoint, setpointModel } from "./models/setpoint-model";
export type { SlabTimeForm } from "./models/slab-time-model";

// outcomes: times seen at checks, yes or no, ordered scores

export { type CensoredProbability, censoredProbability } from "./outcomes/censored-probability";
export { type CensoredQuantile, type CensoredQuantileOptions, censoredQuantile } from "./outcomes/censored-quantile";
export { type CensoredTimesFit, type FitCensoredTimesOptions, fitCensoredTimes } from "./outcomes/fit-censored-times";
export { type FitOrderedScoresOptions, fitOrderedScores, type OrderedScoresFit } from "./outcomes/fit-ordered-scores";
export { type FitYesNoOptions, fitYesNo, type YesNoFit } from "./outcomes/fit-yes-no";
export {
  type NormalPrior,
  type PosteriorMode,
  type PosteriorModeOptions,
  posteriorMode,
} from "./outcomes/posterior-mode";
export { type OrderedScoresPrediction, predictOrderedScores } from "./outcomes/predict-ordered-scores";
export { predictYesNo, type YesNoPrediction } from "./outcomes/predict-yes-no";
export type { TimeDistributionName } from "./outcomes/time-distribution";
export { type ValueAtShare, type ValueAtShareOptions, valueAtShare } from "./outcomes/value-at-share";

// doubt: intervals, influence, lack of fit

export {
  type Bootstrap,
  type BootstrapOptions,
  type BootstrapParameter,
  bootstrapCurve,
} from "./doubt/bootstrap-curve";
export { type Derived, deltaMethod } from "./doubt/delta-method";
export { type Influence, influence, type PointInfluence } from "./doubt/influence";
export { type LackOfFit, lackOfFit, type TestedFit } from "./doubt/lack-of-fit";
export { type ProfileInterval, profileInterval } from "./doubt/profile-interval";
export { type SerialPattern, serialPattern } from "./doubt/serial-pattern";

// surfaces: several factors at once, their top, their ridge, several goals together

export {
  type BestCompromise,
  type BestCompromiseOptions,
  bestCompromise,
  type MetGoal,
  type WantedSurface,
} from "./surface/best-compromise";
export { type CanonicalAnalysis, type CanonicalAxis, canonicalAnalysis } from "./surface/canonical-analysis";
export { desirability, type Goal, overallDesirability } from "./surface/desirability";
export { type FitSurfaceOptions, fitSurface, type SurfaceFit, type SurfaceForm } from "./surface/fit-surface";
export { type RidgePathOptions, type RidgePoint, ridgePath } from "./surface/ridge-path";
export {
  againstStationary,
  type StationaryRegion,
  type StationaryRegionOptions,
  stationaryRegion,
} from "./surface/stationary-region";
export { type SurfaceHeight, surfaceAt } from "./surface/surface-at";

// choice: which curve the data support

export { type ComparedFit, compareFits, type FitComparison } from "./choice/compare-fits";
export { compareNested, type NestedTest } from "./choice/compare-nested";
export { compareSlabTimeForms, type SlabTimeComparison } from "./choice/compare-slab-time-forms";

// least squares: the solver under the curves

export { type LeastSquaresOptions, leastSquares } from "./least-squares/least-squares";
export type { ParameterSetting } from "./least-squares/named-problem";
export type { FitCurveOptions } from "./least-squares/solve-curve";

// what every fit carries

export type { Estimates, Fit, ParameterEstimate, Values } from "./fit";
