import { readFileSync } from "node:fs";
import { basename } from "node:path";
import { fail } from "../check/check";
import { failAll } from "../check/csv";
import { freezeDeep } from "../check/freeze-deep";
import { logShape } from "../trials/log/log-shape";
import { type MergeChoice, type MergeConflict, mergeTrials } from "../trials/log/merge-trials";
import { readTrials } from "../trials/log/read-trials";
import { changedLine } from "../trials/log/write/log-line";
import type { Trial } from "../trials/trial";
import { appendTrial } from "./append-trial";
import { lineOfTrial } from "./correct-trial";
import { isRerun } from "./is-rerun";
import { kitchenFolder } from "./kitchen-folder-of";
import { whileLocked } from "./log-file/file-lock";
import { replaceLine } from "./log-file/replace-line";
import { logPath, logText, openKitchen, withRoomFor } from "./log-file/trial-log";
import { writeWholeFile } from "./log-file/whole-file";

/** Where another log goes, and what was decided. */
export interface MergeLogOptions {
  readonly folder?: string;
  /** file of the kitchen's folder `trials` that takes what is theirs */
  readonly into: string;
  /** by their trial's id; a conflict that is not decided keeps ours */
  readonly choose?: Readonly<Record<string, MergeChoice>>;
  readonly by?: string;
  /** only tell what would be done; false unless given */
  readonly dry?: boolean;
}

/** What a merge did, or would do. */
export interface MergedLog {
  readonly kind: "merged log";
  readonly file: string;
  /** ids that were added */
  readonly added: readonly string[];
  /** ids of ours whose line changed */
  readonly changed: readonly string[];
  readonly alike: readonly string[];
  readonly conflicts: readonly MergeConflict[];
  readonly sentence: string;
}

/**
 * Takes another kitchen's log, or another copy of this one, into a log: what only theirs holds is added, what both hold alike
 * stands once, and where the two differ nothing is decided silently (`mergeTrials`). Each change goes to the log's history.
 * While all notebooks are run (`npm start`), it only tells what would be done.
 *
 * @param theirs path of their log, in any format that `readTrials` reads
 * @throws every problem of either log, or of what the merge would bring; nothing is written then
 */
export function mergeLog(theirs: string, options: MergeLogOptions): MergedLog {
  const { choose = {}, by = null } = options;
  const dry = options.dry === true || isRerun();
  const folder = kitchenFolder(options.folder, "mergeLog: folder");
  const path = logPath(folder, options.into);
  const file = `trials/${basename(path)}`;
  const other = readTrials(new Uint8Array(readFileSync(theirs)), basename(theirs));
  failAll(other.problems);
  const own = readTrials(logText(path), file);
  failAll(own.problems);
  const merged = mergeTrials({ ours: own.records, theirs: other.records, choose });
  const before = new Map(own.records.map((trial) => [trial.trialId, trial]));
  const elsewhere = new Set(openKitchen(folder, "mergeLog: folder").kitchen.trials.map(({ trialId }) => trialId));
  const added = merged.trials.filter(({ trialId }) => !before.has(trialId));
  const changed = merged.trials.filter((trial) => {
    const old = before.get(trial.trialId);
    return old !== undefined && JSON.stringify(old) !== JSON.stringify(trial);
  });
  const taken = added.filter(({ trialId }) => elsewhere.has(trialId)).map(({ trialId }) => trialId);
  if (taken.length > 0)
    fail(`mergeLog: trials of ${basename(theirs)}`, "must have names that no other log of the kitchen has", taken);
  if (!dry) {
    widen(path, file, [...added, ...changed]);
    for (const trial of added) appendTrial(path, trial, by);
    for (const trial of changed) amend(path, file, before.get(trial.trialId) as Trial, trial, by);
  }
  const undecided = merged.conflicts.filter(({ kind, chosen }) => kind !== "fills in" && chosen === "ours").length;
  const ends =
    undecided === 0
      ? ""
      : ` ${undecided} of theirs ${undecided === 1 ? "differs" : "differ"} and ${undecided === 1 ? "was" : "were"} not taken: decide with choose.`;
  return freezeDeep({
    kind: "merged log",
    file,
    added: added.map(({ trialId }) => trialId),
    changed: changed.map(({ trialId }) => trialId),
    alike: merged.alike,
    conflicts: merged.conflicts,
    sentence: `${isRerun() ? AGAIN : ""}${file}: ${added.length} added, ${changed.length} changed, ${merged.alike.length} alike.${ends}`,
  });
}

const AGAIN = "Nothing is merged while all notebooks are run; this cell in the open notebook would. ";

/** Gives a log every column that these trials need, before the first of them is written. */
function widen(path: string, file: string, trials: readonly Trial[]): void {
  if (trials.length === 0) return;
  whileLocked(path, () => {
    const text = logText(path);
    let wide = text;
    for (const trial of trials) wide = withRoomFor(trial, { text: wide, file, units: "metric" });
    if (wide !== text) writeWholeFile(path, wide);
  });
}

function amend(path: string, file: string, before: Trial, after: Trial, by: string | null): void {
  whileLocked(path, () => {
    const text = logText(path);
    const shape = logShape(text, file);
    const old = lineOfTrial(text, shape, before.trialId);
    const line = changedLine({ before, after, cells: old.cells, shape });
    replaceLine(path, {
      what: "correct",
      trialId: before.trialId,
      before: old.text,
      after: line,
      by,
      why: "merged with another log",
    });
  });
}
