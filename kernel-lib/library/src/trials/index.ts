// trials: what was logged, and the kitchen it was logged in

export type { Appliance } from "./appliance";
export { type CrispTime, type CrispTimes, type CrispTimesOptions, crispTimes } from "./crisp-times";
export {
  buildKitchen,
  type Kitchen,
  type KitchenFile,
  type KitchenFiles,
  type KitchenTrial,
  type KitchenVariant,
} from "./kitchen";
export { applianceOf, panOf, trialOf, variantOf } from "./kitchen-lookup";
export { type ThicknessOfTrial, type ThicknessOfTrialOptions, thicknessOfTrial } from "./thickness-of-trial";
export { readTrials, type Trial, trialLine } from "./trial";
export type { Variant } from "./variant";
