import type { Values } from "../fit";
import type { CensoredTimesFit } from "./fit-censored-times";

/** The line of log time at one case: intercept plus each entry times its coefficient. */
export function censoredLine(fit: CensoredTimesFit, row: readonly number[], values: Values): number {
  return row.reduce((sum, entry, j) => sum + entry * values[fit.names[j + 1]], values.intercept);
}
