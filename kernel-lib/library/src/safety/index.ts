// safety: limits that outrank crispness

export { type CoreLimit, coreLimit } from "./core-limit";
export { formulaLimit } from "./formula-limit";
export { type Lethality, type LethalityOptions, lethality } from "./lethality";
export { bothLimits, limitCaution, limitText } from "./limit-text";

// cold: cooling, storage

export {
  COOLING_LIMITS,
  type CoolingCheck,
  type CoolingCheckOptions,
  type CoolingLimits,
  type CoolingStage,
  coolingCheck,
} from "./cold/cooling-check";
export {
  HOLDING_LIMIT_MIN,
  type HoldingCheck,
  type HoldingCheckOptions,
  type HoldingSpan,
  holdingCheck,
} from "./cold/holding-check";
export { type PackTurn, type StockPlan, type StoredPack, stockPlan } from "./cold/stock-plan";
export {
  STORAGE_LIVES,
  type StorageLife,
  type StorageLifeOptions,
  type StorageStep,
  type StoredFood,
  storageLife,
} from "./cold/storage-life";
