// notebook: files in, figures out

export { appendTrial } from "./append-trial";
export { checkKitchenFolder } from "./check-kitchen-folder";
export { type ChosenVariantsOptions, chosenVariants } from "./chosen-variants";
export { type ComparedKitchens, compareKitchens } from "./compare-kitchens";
export {
  type CorrectedTrial,
  type CorrectTrialOptions,
  correctTrial,
  trialHistory,
  type UndoLogOptions,
  type UndoneLog,
  undoLog,
} from "./correct-trial";
export { type EachVariantOptions, eachVariant } from "./each-variant";
export { type CheckedDraft, checkDraft } from "./form/check-draft";
export { type LoggedDraft, logDraft } from "./form/log-draft";
export { type TrialForm, type TrialFormField, type TrialFormVariant, trialForm } from "./form/trial-form";
export { kitchenAnswers } from "./kitchen-answers";
export { type ExampleIds, type KitchenGlance, kitchenGlance, type ProductGlance } from "./kitchen-glance";
export { kitchenNext, type ProductNext } from "./kitchen-next";
export { kitchenPhotos } from "./kitchen-photos";
export { kitchenToShare, type SharedKitchenFiles } from "./kitchen-to-share";
export { loadFoods } from "./load-foods";
export { loadKitchen } from "./load-kitchen";
export type { LogDeed } from "./log-file/log-history";
export { type LogQuestions, logQuestions } from "./log-questions";
export { checkTrial, type LoggedTrial, type LogTrialOptions, logTrial } from "./log-trial";
export { type MergedLog, type MergeLogOptions, mergeLog } from "./merge-log";
export { type NewKitchenOptions, newKitchen } from "./new-kitchen";
export { loadPlan, planNames, plannedNames, type SavedPlan, savePlan } from "./plans/save-plan";
export { writeRunSheet } from "./plans/write-run-sheet";
export { type Showable, show } from "./show";
export { showTogether } from "./show-together";
export { whereEnough } from "./where-enough";
export { writeBenchSheet } from "./write-bench-sheet";
export { writePage } from "./write-page";
