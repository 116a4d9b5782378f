import type { Trial } from "../../trial";
import { csvLine } from "./csv-line";
import { logCells, writtenColumns } from "./log-cells";

/**
 * A trial as one line of a comma-separated log that has these headings, in the log's own units, numbers rounded as a person
 * writes them.
 */
export function trialLine(trial: Trial, headings: readonly string[], file: string): string {
  return csvLine(logCells(trial, writtenColumns(headings, file), { file, places: "rounded" }), ",");
}
