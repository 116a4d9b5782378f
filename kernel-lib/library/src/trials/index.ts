// trials: what was logged, and the kitchen it was logged in

export type { Appliance } from "./appliance";
export { buildKitchen } from "./build-kitchen";
export type { CardLanguage } from "./card-language";
export { type CheckKitchenOptions, checkKitchen, type KitchenCheck } from "./check-kitchen";
export { type CrispTime, type CrispTimes, type CrispTimesOptions, crispTimes } from "./crisp-times";
export type { Kitchen, KitchenFile, KitchenFiles, KitchenTrial, KitchenVariant, TrialTrace } from "./kitchen";
export type { FolderFile } from "./kitchen-folder";
export { applianceOf, panOf, trialOf, variantOf } from "./kitchen-lookup";
export { logHeadings } from "./log/log-fields";
export type { Typed, TypedTrial } from "./log/new-trial";
export {
  type LogDialect,
  type ReadLog,
  type ReadTrialsOptions,
  type RefusedRow,
  readTrials,
  type TakenRow,
} from "./log/read-trials";
export type { LogFormat } from "./log/table/log-table";
export { trialLine } from "./log/write/trial-line";
export { type WriteTrialsOptions, writeTrials } from "./log/write/write-trials";
export { type BatchOnPan, type BatchOnPanOptions, batchOnPan } from "./pieces/batch-on-pan";
export { type PiecesOnPan, type PiecesOnPanOptions, piecesOnPan } from "./pieces/pieces-on-pan";
export { type WeightOfTrial, type WeightOfTrialOptions, weightOfTrial } from "./pieces/weight-of-trial";
export { type ThicknessOfTrial, type ThicknessOfTrialOptions, thicknessOfTrial } from "./thickness-of-trial";
export type { ProgrammeStep, Trial } from "./trial";
export type { Variant } from "./variant";

// what it has for a batch day, and in its stores

export type { DayMinutes, DayPlaces } from "./day/kitchen-day";
export type { FreezerPack } from "./stores/packs";
export type { PantryItem } from "./stores/pantry";

// questions to the log

export { type GroupTrialsOptions, groupTrials, type TrialGroup, type TrialGroupKey } from "./questions/group-trials";
export { type Panel, panelOf } from "./questions/panel-of";
export { type ReadingRow, readingRows } from "./questions/reading-rows";
export { thicknessBand } from "./questions/thickness-band";
export { TRIAL_QUANTITIES, type TrialQuantity, type TrialQuantityName } from "./questions/trial-quantity";
export { type TrialsWhere, trialsWhere } from "./questions/trials-where";

// two logs made one

export {
  type MergeChoice,
  type MergeConflict,
  type MergedTrials,
  type MergeTrialsOptions,
  mergeTrials,
} from "./log/merge-trials";
