import { closeSync, fsyncSync, openSync, readFileSync, renameSync, rmSync, writeSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fail } from "../check/check";
import { failAll, readCsv } from "../check/csv";
import { readTrials } from "../trials/log/read-trials";
import { trialLine } from "../trials/log/write/trial-line";
import type { Trial } from "../trials/trial";

/**
 * Adds one trial to the end of a log, in the log's own columns and units. The log must be sound before and after, and
 * the trial's name new in it; otherwise nothing is written. The file is replaced whole or not at all.
 *
 * @param path the log, a CSV file with its headings
 * @param trial what was logged; what was not measured is `null` or an empty array
 * @returns how many trials the log holds now
 *
 * @example
 * const [trial] = loadKitchen().trials;
 * appendTrial("trials/my-log.csv", trial); // throws "my-log.csv"
 */
export function appendTrial(path: string, trial: Trial): number {
  const file = basename(path);
  const before = readFileSync(path, "utf8");
  const logged = readTrials(before, file);
  failAll(logged.problems);
  if (logged.records.some((one) => one.trialId === trial.trialId))
    fail("appendTrial: trialId", `must be new in ${file}`, trial.trialId);
  const line = trialLine(trial, readCsv(before, file).headings, file);
  const after = `${before}${before.endsWith("\n") ? "" : "\n"}${line}\n`;
  failAll(readTrials(after, file).problems);
  writeWhole(path, after);
  return logged.records.length + 1;
}

function writeWhole(path: string, text: string): void {
  const draft = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    const handle = openSync(draft, "wx");
    try {
      writeSync(handle, text);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    renameSync(draft, path);
  } catch (error) {
    rmSync(draft, { force: true });
    throw error;
  }
}
