import { basename } from "node:path";
import { fail } from "../../check/check";
import { type LogDeed, readHistory } from "./log-history";
import { replaceLine } from "./replace-line";

/** Who takes back, and why. */
export interface Undoing {
  readonly by: string | null;
  readonly why: string | null;
  /** the trial whose last deed is meant; any where left out or null */
  readonly trialId?: string | null;
}

/**
 * Takes back the last thing that was done to a log that the caller has locked: a correction gives its old line back, a new
 * line is taken out (and stays in the history). Called again, it takes back what was done before that.
 *
 * @returns what was taken back; throws when nothing is left, or when the line was changed by hand since
 */
export function undoLast(log: string, { by, why, trialId = null }: Undoing, now: Date = new Date()): LogDeed {
  const done: LogDeed[] = [];
  for (const deed of readHistory(log).deeds) {
    if (deed.what === "undo" || deed.what === "unfinished") done.pop();
    else done.push(deed);
  }
  const last = done.at(-1);
  if (last === undefined || last.after === null)
    return fail("undoLast: the history", `of ${basename(log)} must hold something to take back`, "nothing");
  if (trialId !== null && last.trialId !== trialId)
    fail("undoLog: the last thing", `done to ${basename(log)} must have been done to ${trialId}`, last.trialId);
  const written = last.after.replace(/^[\r\n]+|[\r\n]+$/g, "");
  replaceLine(log, { what: "undo", trialId: last.trialId, before: written, after: last.before, by, why }, now);
  return last;
}
