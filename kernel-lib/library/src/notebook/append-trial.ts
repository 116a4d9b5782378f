import { existsSync, readdirSync, realpathSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fail } from "../check/check";
import { isKitchenFile } from "../trials/kitchen-folder";
import type { KnownNames } from "../trials/known-names";
import { logLine } from "../trials/log/write/log-line";
import type { Trial } from "../trials/trial";
import { isRerun } from "./is-rerun";
import { addLine } from "./log-file/add-line";
import { whileLocked } from "./log-file/file-lock";
import { idsInLog } from "./log-file/ids-in-log";
import { type FolderNames, namesOfFolder } from "./log-file/names-of-folder";
import { kitchenAround } from "./log-file/trial-log";

/**
 * Adds one trial to the end of a log, in the log's own columns, units and separators, as programs do; `logTrial` is for
 * people. The log must be sound, the trial's name new in it and in the kitchen's other logs, and its variant, pan and
 * appliance known to the kitchen that the log lies in; otherwise nothing is written. What was there stays to the byte; the
 * line is whole or not there, whatever ends the process, and several processes may add at once. While all notebooks are run
 * (`npm start`), nothing is added.
 *
 * @param path the log: CSV or TSV with its headings, or JSON Lines
 * @param trial what was logged; what was not measured is `null` or an empty array
 * @returns how many trials the log holds now
 *
 * @example
 * const [trial] = loadKitchen().trials;
 * appendTrial("trials/my-log.csv", trial); // throws "my-log.csv"
 */
export function appendTrial(path: string, trial: Trial, by: string | null = null): number {
  if (!existsSync(path)) fail("appendTrial: path", "must be a log that is there (logTrial begins one)", path);
  const log = realpathSync(path);
  if (isRerun()) return idsInLog(log, basename(path)).ids.size;
  return whileLocked(log, () => {
    const file = basename(path);
    const { ids, shape } = idsInLog(log, file);
    if (shape === null) throw new RangeError(`${file} is a workbook, which is read and not written: save it as CSV`);
    const { trialId } = trial;
    if (ids.has(trialId)) fail("appendTrial: trialId", `must be new in ${file}`, trialId);
    const line = logLine(trial, shape);
    const folder = kitchenAround(log);
    if (folder !== null) {
      const other = otherLogs(log).find((name) => idsInLog(join(dirname(log), name), name).ids.has(trialId));
      if (other !== undefined) fail("appendTrial: trialId", `must be new, and ${other} has it`, trialId);
      for (const [field, names] of Object.entries(namesOfFolder(folder)) as [keyof FolderNames, KnownNames | null][]) {
        const nearest = names?.nearestTo(trial[field]) ?? null;
        if (names !== null && !names.has(trial[field]))
          fail(
            `appendTrial: ${field}`,
            `must stand in ${names.file}${nearest === null ? "" : `, ${nearest} perhaps`}`,
            trial[field],
          );
      }
    }
    addLine(log, { trialId, line, by });
    return idsInLog(log, file).ids.size;
  });
}

function otherLogs(log: string): readonly string[] {
  return readdirSync(dirname(log)).filter((name) => name !== basename(log) && isKitchenFile(`trials/${name}`));
}
