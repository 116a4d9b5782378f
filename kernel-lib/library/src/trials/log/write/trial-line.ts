import { csvLine } from "../../../check/csv-line";
import type { Trial } from "../../trial";
import type { LogDialect } from "../read-trials";
import { logCells, writtenColumns } from "./log-cells";

/**
 * A trial as one line of a log that has these headings, in the log's own units, numbers rounded as a person writes them.
 *
 * @param dialect what parts the log's cells, and its decimal sign, as `readTrials` found them; a comma and a point unless given
 */
export function trialLine(
  trial: Trial,
  headings: readonly string[],
  file: string,
  dialect: Pick<LogDialect, "delimiter" | "decimalSign"> = { delimiter: ",", decimalSign: "." },
): string {
  const { decimalSign, delimiter } = dialect;
  const cells = logCells(trial, writtenColumns(headings, file), { file, places: "rounded", decimalSign });
  return csvLine(cells, delimiter ?? ",");
}
