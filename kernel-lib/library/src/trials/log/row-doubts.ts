import type { Notice } from "../../check/notice";
import { measuredOf } from "../distinct-trials";
import type { Trial } from "../trial";
import { shownCell } from "./cell/fill-draft";
import type { LogName } from "./log-fields";
import type { LogColumn } from "./table/lay-out";
import { clockDoubt, trialDoubts } from "./trial-doubts";

/** A row of a log that became a trial. */
export interface DoubtRow {
  readonly row: number;
  readonly trial: Trial;
  readonly cells: readonly string[];
  readonly columnOf: ReadonlyMap<LogName, LogColumn>;
}

/**
 * Makes the function that is handed the rows of a file one after the other and says of each what is unlikely in it: by
 * itself, as typed, and as the double of an earlier row.
 */
export function doubtsOf(file: string, today?: string): (row: DoubtRow) => readonly Notice[] {
  const seen = new Map<number, { readonly row: number; readonly trial: Trial }>();
  let timed: readonly (readonly [LogName, LogColumn])[] | null = null;
  return ({ row, trial, cells, columnOf }) => {
    const notices: Notice[] = [];
    const doubt = (name: LogName, says: string, taken: string | null): void => {
      const column = columnOf.get(name);
      const given = column === undefined ? null : shownCell(cells[column.at] ?? "");
      const at = column === undefined ? null : `column ${column.heading}`;
      notices.push({ file, row, at, kind: "doubt", given, taken, says });
    };
    for (const { name, says, taken } of trialDoubts(trial, { today })) doubt(name, says, taken);
    timed ??= [...columnOf].filter(([, { field, unit }]) => field?.holds === "time" && unit === "min");
    for (const [name, column] of timed) {
      const cell = cells[column.at] ?? "";
      if (/[.,]/.test(cell) && clockDoubt(cell.trim().replace(/ ?min\.?$/i, "")))
        doubt(name, "was read as a decimal number; is it minutes and seconds?", null);
    }
    const key = sumOf(trial);
    const earlier = seen.get(key);
    if (earlier === undefined) seen.set(key, { row, trial });
    else if (earlier.trial.trialId !== trial.trialId && measuredOf(earlier.trial) === measuredOf(trial))
      notices.push({
        file,
        row,
        at: null,
        kind: "doubt",
        given: JSON.stringify(trial.trialId),
        taken: null,
        says: `holds the same as row ${earlier.row} under another name, and counts once`,
      });
    return notices;
  };
}

/** A number that trials with the same measurements share, and others seldom. */
function sumOf(trial: Trial): number {
  const { date, probesMm, timeMin, coreC, massBeforeG, massAfterG, crispScores, batchG, setpointC } = trial;
  let sum = 0;
  for (let at = 0; at < date.length; at++) sum = 1.7 * sum + date.charCodeAt(at);
  sum += timeMin + 31 * (coreC ?? -1) + 977 * (massBeforeG ?? -1) + 40_009 * (massAfterG ?? -1) + 13 * setpointC;
  for (const reading of probesMm) sum = 1.37 * sum + reading;
  for (const score of crispScores) sum = 1.53 * sum + score;
  return sum + 7 * (batchG ?? -1);
}
