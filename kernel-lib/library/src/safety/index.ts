// safety: limits that outrank crispness

export { type CoreLimit, coreLimit } from "./core-limit";
export { formulaLimit } from "./formula-limit";
export { type Lethality, type LethalityOptions, lethality } from "./lethality";
export { bothLimits, limitCaution, limitText } from "./limit-text";
