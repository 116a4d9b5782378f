// factors: coded units, order of the runs

export { codePoint } from "./factor/code-point";
export { decodePoint } from "./factor/decode-point";
export type { CodedPoint, Factor } from "./factor/factor";
export { type PlannedRun, type RunOrderOptions, runOrder } from "./factor/run-order";

// standard plans

export { type BoxBehnkenOptions, boxBehnken } from "./standard/box-behnken";
export { type CentralComposite, type CentralCompositeOptions, centralComposite } from "./standard/central-composite";
export { type ConfoundedBlocks, type ConfoundedBlocksOptions, confoundedBlocks } from "./standard/confounded-blocks";
export {
  type FractionalFactorial,
  type FractionalFactorialOptions,
  fractionalFactorial,
} from "./standard/fractional-factorial";
export { type FullFactorialOptions, fullFactorial } from "./standard/full-factorial";
export { type LatinSquareOptions, latinSquare } from "./standard/latin-square";

// the best runs for a model

export { type BlockedRuns, type BlockRunsOptions, blockRuns } from "./optimal/block-runs";
export { type ContinuousDesign, type ContinuousDesignOptions, continuousDesign } from "./optimal/continuous-design";
export type { DesignModel } from "./optimal/design-model";
export { type DesignQuality, type DesignQualityOptions, designQuality } from "./optimal/design-quality";
export { type GradientModelOptions, gradientModel } from "./optimal/gradient-model";
export { type OptimalDesign, type OptimalDesignOptions, optimalDesign } from "./optimal/optimal-design";
export { type PolynomialForm, polynomialTerms } from "./optimal/polynomial-terms";
export { type TermsModelOptions, termsModel } from "./optimal/terms-model";

// power: how many trials see a difference

export {
  type CensoredTimesPower,
  type CensoredTimesPowerResult,
  powerOfCensoredTimes,
} from "./power/censored-times";
export {
  type CoefficientDifference,
  powerOfCoefficientDifference,
  replicatesForCoefficientDifference,
} from "./power/coefficient-difference";
export { powerOfSeveralMeans, type SeveralMeans, trialsForSeveralMeans } from "./power/several-means";
export { powerOfTwoMeans, type TwoMeans, trialsForTwoMeans } from "./power/two-means";
export { powerOfTwoShares, type TwoShares, trialsForTwoShares } from "./power/two-shares";

// schedules: tasks that share resources

export { checkSchedule } from "./schedule/check-schedule";
export { type FreeSpan, freeSpans } from "./schedule/free-spans";
export type {
  ScheduleHold,
  ScheduleLink,
  SchedulePart,
  ScheduleProblem,
  ScheduleResource,
  ScheduleTask,
} from "./schedule/schedule-problem";
export { scheduleSlack, type TaskSlack } from "./schedule/schedule-slack";
export { type Schedule, type ScheduledTask, type ScheduleOptions, scheduleTasks } from "./schedule/schedule-tasks";

// what a measurement is worth to a decision

export { type Learning, type LearningFromOptions, learningFrom } from "./value/learning-from";
export { type TargetDraws, targetDraws } from "./value/target-draws";
export {
  type Judge,
  type Judged,
  judgeByMean,
  type ValueOfInformation,
  type ValueOfInformationOptions,
  valueOfInformation,
} from "./value/value-of-information";
