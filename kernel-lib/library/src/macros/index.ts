// macros: what is in a piece, how sure, and as a label prints it

export { type Energy, type EnergyBasis, type EnergyOfOptions, energyOf } from "./energy-of";
export { type LabelLine, type LabelValues, labelEu, labelUs } from "./label-values";
export type { MacroDoubt, PieceMacrosOptions, StageYield } from "./macro-model";
export { type Amount, type MacroAmounts, type PieceMacros, pieceMacros } from "./piece-macros";
export { type PieceMacrosMonteCarloOptions, pieceMacrosMonteCarlo } from "./piece-macros-monte-carlo";
export { type EuLabelNutrient, type RoundLabelEuOptions, roundLabelEu } from "./round-label-eu";
export { type RoundLabelUsOptions, roundLabelUs, type UsLabelNutrient } from "./round-label-us";
