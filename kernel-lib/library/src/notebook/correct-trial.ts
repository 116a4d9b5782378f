import { basename } from "node:path";
import { fail } from "../check/check";
import { freezeDeep } from "../check/freeze-deep";
import { type LogShape, logShape } from "../trials/log/log-shape";
import { amendedTrial, type TypedTrial } from "../trials/log/new-trial";
import { readTrials } from "../trials/log/read-trials";
import { changedLine } from "../trials/log/write/log-line";
import type { Trial } from "../trials/trial";
import { isRerun } from "./is-rerun";
import { kitchenFolder } from "./kitchen-folder-of";
import { whileLocked } from "./log-file/file-lock";
import { type LogDeed, readHistory } from "./log-file/log-history";
import { replaceLine } from "./log-file/replace-line";
import { checkWith, logPath, logText, type OpenKitchen, openKitchen, withRoomFor } from "./log-file/trial-log";
import { undoLast } from "./log-file/undo-last";
import { writeWholeFile } from "./log-file/whole-file";
import { today } from "./today";

/** Whose correction it is, and why. */
export interface CorrectTrialOptions {
  readonly folder?: string;
  readonly by?: string;
  /** kept with the old line */
  readonly why: string;
}

/** A trial as it was and as it is. */
export interface CorrectedTrial {
  readonly kind: "corrected trial";
  readonly before: Trial;
  readonly after: Trial;
  readonly file: string;
  /** what the correction brings to look at */
  readonly notices: readonly string[];
  readonly sentence: string;
}

/**
 * Corrects a logged trial: `correctTrial("OB-07", { core_c: 78 }, { why: "misread 87" })`. Cells that are given replace
 * those of the log, `null` says that it is not known after all; other cells stay as they were typed. The old line goes to
 * the log's history with who, when and why (`trialHistory`), and `undoLog` gives it back.
 *
 * @throws when the trial is in no log that is text, nothing is changed, or the kitchen would not be sound
 *
 * @example
 * correctTrial("BL-02", { core_c: 300 }, { why: "misread" }); // throws "expected a core temperature of -30 to 115 °C"
 */
export function correctTrial(trialId: string, typed: TypedTrial, options: CorrectTrialOptions): CorrectedTrial {
  const { why } = options;
  if (typeof why !== "string" || why.trim() === "") fail("correctTrial: why", "must say why the log is corrected", why);
  const folder = kitchenFolder(options.folder, "correctTrial: folder");
  const file = logOfTrial(openKitchen(folder, "correctTrial: folder"), trialId);
  const path = logPath(folder, file);
  return whileLocked(path, () => {
    const open = openKitchen(folder, "correctTrial: folder");
    const before =
      open.kitchen.trials.find((trial) => trial.trialId === trialId) ??
      fail("correctTrial: trial", `must be in ${file}`, trialId);
    const { trial: after, notices } = amendedTrial({
      kitchen: open.kitchen,
      trial: before,
      typed,
      today: today(),
    });
    const written = logText(path);
    const roomy = withRoomFor(after, { text: written, file, units: open.kitchen.units });
    const shape = logShape(roomy, file);
    const old = lineOfTrial(roomy, shape, trialId);
    const line = changedLine({ before, after, cells: old.cells, shape });
    if (line === old.text && !isRerun()) fail("correctTrial: the correction", "must change something", typed);
    const whole = roomy.slice(0, old.from) + line + roomy.slice(old.to);
    const brought = checkWith(open, file, whole, today());
    if (!isRerun() && roomy !== written) writeWholeFile(path, roomy);
    if (!isRerun())
      replaceLine(path, { what: "correct", trialId, before: old.text, after: line, by: options.by ?? null, why });
    return freezeDeep({
      kind: "corrected trial",
      before,
      after,
      file,
      notices: [...notices, ...brought],
      sentence: isRerun()
        ? "Nothing is corrected while all notebooks are run: run this cell in the open notebook."
        : `${trialId} in ${file} is corrected (${why}). Its old line is in the history.`,
    });
  });
}

/** What was taken back in a log. */
export interface UndoneLog {
  readonly kind: "undone";
  /** what was taken back; null while all notebooks are run, when nothing is */
  readonly deed: LogDeed | null;
  readonly file: string;
  readonly sentence: string;
}

/** Who takes back, why, and of which trial. */
export interface UndoLogOptions extends Partial<CorrectTrialOptions> {
  /** nothing is taken back unless it was done to this trial */
  readonly trialId?: string;
}

/**
 * Takes back what `logTrial`, `correctTrial` or `appendTrial` last did to a log, and what was done before that when called
 * again. What is taken back stays in the history. While all notebooks are run (`npm start`), nothing is taken back.
 *
 * @param log file of the kitchen's folder `trials`
 * @throws when nothing is left to take back, the last thing was done to another trial than asked for, or its line was changed by hand
 *
 * @example
 * undoLog("no-such-log.csv"); // throws "must hold something to take back"
 */
export function undoLog(log: string, options: UndoLogOptions = {}): UndoneLog {
  const path = logPath(kitchenFolder(options.folder, "undoLog: folder"), log);
  const file = `trials/${basename(path)}`;
  if (isRerun())
    return freezeDeep({
      kind: "undone",
      deed: null,
      file,
      sentence: "Nothing is taken back while all notebooks are run: run this cell in the open notebook.",
    });
  const deed = whileLocked(path, () =>
    undoLast(path, { by: options.by ?? null, why: options.why ?? null, trialId: options.trialId ?? null }),
  );
  const was = deed.what === "add" ? "is taken out again" : "is as it was before its correction";
  return freezeDeep({ kind: "undone", deed, file, sentence: `${deed.trialId} in ${file} ${was}.` });
}

/**
 * What was done to a trial through `logTrial` and `correctTrial`: when, what, by whom, why, the line before and after.
 *
 * @example
 * trialHistory("BL-02").length; // → 0
 */
export function trialHistory(trialId: string, options: { readonly folder?: string } = {}): readonly LogDeed[] {
  const folder = kitchenFolder(options.folder, "trialHistory: folder");
  const logs = openKitchen(folder, "trialHistory: folder").files.filter(
    ({ file, text }) => file.startsWith("trials/") && text !== null,
  );
  const deeds = logs.flatMap(({ file }) => readHistory(logPath(folder, file)).deeds);
  return deeds.filter((deed) => deed.trialId === trialId).sort((a, b) => (a.at < b.at ? -1 : 1));
}

/** The log that holds a trial; throws where none that is text does. */
export function logOfTrial({ files }: OpenKitchen, trialId: string): string {
  const holding = files.filter(
    ({ file, text, bytes }) =>
      file.startsWith("trials/") &&
      text !== null &&
      readTrials(bytes ?? text, file).records.some((trial) => trial.trialId === trialId),
  );
  if (holding.length === 0) fail("correctTrial: trial", "must be the name of a logged trial", trialId);
  return holding[0].file;
}

/** The line of a log that holds a trial. */
export function lineOfTrial(
  text: string,
  shape: LogShape,
  trialId: string,
): { text: string; cells: readonly string[]; from: number; to: number } {
  const at = shape.columns.findIndex(({ field }) => field?.name === "trialId");
  const line =
    shape.format === "jsonl"
      ? shape.lines.find(
          ({ from = 0, to = 0 }) =>
            readTrials(text.slice(from, to), shape.file, { format: "jsonl" }).records[0]?.trialId === trialId,
        )
      : shape.lines.find(({ cells }) => cells[at] === trialId);
  const { cells, from, to } = line ?? fail(`${shape.file}: trial`, "must stand in one line", trialId);
  return { text: text.slice(from, to), cells, from: from as number, to: to as number };
}
