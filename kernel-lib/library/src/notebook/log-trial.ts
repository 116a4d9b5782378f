import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { basename, dirname } from "node:path";
import { freezeDeep } from "../check/freeze-deep";
import { logHeadings } from "../trials/log/log-fields";
import { logShape } from "../trials/log/log-shape";
import { newTrial, type TypedTrial } from "../trials/log/new-trial";
import { logFormat } from "../trials/log/table/log-table";
import type { Trial } from "../trials/trial";
import type { KitchenUnits } from "../units/unit-table";
import { isRerun } from "./is-rerun";
import { kitchenFolder } from "./kitchen-folder-of";
import { addLine } from "./log-file/add-line";
import { whileLocked } from "./log-file/file-lock";
import { checkWith, lineFor, logPath, logText, type OpenKitchen, openAgain, openKitchen } from "./log-file/trial-log";
import { writeWholeFile } from "./log-file/whole-file";
import { today as thisDay } from "./today";

/** Where and by whom a trial is logged. */
export interface LogTrialOptions {
  /** the kitchen's folder; found as `loadKitchen` finds it unless given */
  readonly folder?: string;
  /** file of its folder `trials`; the one that holds the variant's last trial unless given, or else the first */
  readonly log?: string;
  /** who logs it, for the log's history */
  readonly by?: string;
  /** the day, as `2026-03-14`; today unless given */
  readonly today?: string;
}

/** A trial that was logged, or that would be. */
export interface LoggedTrial {
  readonly kind: "logged trial";
  readonly trial: Trial;
  /** the log, as `"trials/week.csv"` */
  readonly file: string;
  /** its line there */
  readonly line: string;
  /** what was taken from the variant or the day, a sentence each */
  readonly assumed: readonly string[];
  /** how cells were read, and what is unlikely in them or does not agree with the kitchen */
  readonly notices: readonly string[];
  /** columns that the log lacked and that were added */
  readonly added: readonly string[];
  readonly sentence: string;
}

/** Where trials go in a kitchen without a log. */
const FIRST_LOG = "log.csv";

/**
 * Logs one trial: `logTrial({ variant: "oat-bars", thickness_mm: "9.1; 8.8; 9.4", crisp_min: 12, time_min: 13 })`. Columns and
 * units are those of a log, cells as people type them. What is not given is taken from the variant and the day, and said.
 * The kitchen with the new line is checked as a whole first; then the line is added to the log's history and to the log,
 * each forced to the disk, while no other process writes. Either the whole trial is logged or nothing is changed.
 *
 * While all notebooks are run (`npm start`), nothing is logged a second time.
 *
 * @throws every problem at once: unknown columns and ids, what is no number, what is missing, a name that is used
 *
 * @example
 * logTrial({ variant: "beet-lentil", thickness_mm: "9.1; 8.8; 9.4", not_crisp_min: 8, crisp_min: 9.5, time_min: 9 }); // throws "at most the time of taking out (9 min)"
 */
export function logTrial(typed: TypedTrial, options: LogTrialOptions = {}): LoggedTrial {
  if (isRerun()) return notAgain(typed, options);
  const folder = kitchenFolder(options.folder, "logTrial: folder");
  const seen = openKitchen(folder, "logTrial: folder");
  const path = logPath(folder, options.log ?? logOf(seen, typed, options));
  if (!existsSync(path)) begin(path, seen.kitchen.units);
  return whileLocked(path, () => {
    const open = openAgain(seen, "logTrial: folder");
    const made = make(open, typed, options, path);
    if (made.added.length > 0) writeWholeFile(path, made.text);
    const unfinished = addLine(path, { trialId: made.trial.trialId, line: made.line, by: options.by ?? null });
    const lost =
      unfinished === null
        ? []
        : [
            `${made.file}: ${unfinished.trialId} was not written to its end, or was taken out since; its history has it`,
          ];
    return told(made, lost);
  });
}

/**
 * What `logTrial` would log, and what is to be said of it; nothing is written.
 *
 * @example
 * checkTrial({ variant: "beet-lentil", thickness_mm: "9.1; 8.8", time_min: 10 }).trial.trialId; // → "BL-33"
 */
export function checkTrial(typed: TypedTrial, options: LogTrialOptions = {}): LoggedTrial {
  const folder = kitchenFolder(options.folder, "checkTrial: folder");
  const open = openKitchen(folder, "checkTrial: folder");
  return told(make(open, typed, options, logPath(folder, options.log ?? logOf(open, typed, options))), []);
}

/** When all notebooks are run again, a trial that its cell logged is not logged a second time. */
function notAgain(typed: TypedTrial, options: LogTrialOptions): LoggedTrial {
  const says = "Nothing is logged while all notebooks are run: run this cell in the open notebook to log it.";
  const { kitchen } = openKitchen(kitchenFolder(options.folder, "logTrial: folder"), "logTrial: folder");
  const logged = kitchen.trials.find(({ trialId }) => trialId === typed.trial);
  if (logged === undefined) return { ...checkTrial(typed, options), sentence: says };
  return freezeDeep({
    kind: "logged trial",
    trial: logged,
    file: "",
    line: "",
    assumed: [],
    notices: [],
    added: [],
    sentence: `${logged.trialId} is in the log.`,
  });
}

interface Made extends Omit<LoggedTrial, "kind" | "sentence"> {
  /** the log before the line, with the columns that were added */
  readonly text: string;
}

function make(open: OpenKitchen, typed: TypedTrial, options: LogTrialOptions, path: string): Made {
  const today = options.today ?? thisDay();
  const { kitchen } = open;
  const { trial, assumed, notices } = newTrial({ kitchen, typed, today, dayOrder: dayOrderOf(open) });
  const file = `trials/${basename(path)}`;
  const before = existsSync(path) ? logText(path) : `${logHeadings(kitchen.units).join(",")}\n`;
  const { text, line, added } = lineFor(trial, { text: before, file, units: kitchen.units });
  const whole = `${text}${text === "" || /[\r\n]$/.test(text) ? "" : "\n"}${line}\n`;
  const brought = checkWith(open, file, whole, today).filter(
    (notice) => !notices.some((one) => notice.endsWith(one.replace(/^the trial[^:]*: /, ""))),
  );
  return { trial, file, line, assumed, notices: [...notices, ...brought, ...open.aside], added, text };
}

function told({ trial, file, line, assumed, notices, added }: Made, lost: readonly string[]): LoggedTrial {
  const also = assumed.length === 0 ? "" : ` Not given, so: ${assumed.join("; ")}.`;
  const columns = added.length === 0 ? "" : ` New columns in the log: ${added.join(", ")}.`;
  return freezeDeep({
    kind: "logged trial",
    trial,
    file,
    line,
    assumed,
    notices: [...notices, ...lost],
    added,
    sentence: `${trial.trialId} of ${trial.variantId}, ${trial.date}, in ${file}.${also}${columns}`,
  });
}

/** The log that holds the variant's last trial, or else any trial, or else the first that is no workbook. */
function logOf({ files, kitchen }: OpenKitchen, typed: TypedTrial, { today }: LogTrialOptions): string {
  const logs = files.filter(
    ({ file, text }) => file.startsWith("trials/") && text !== null && logFormat(file) !== "xlsx",
  );
  const { trial } = newTrial({ kitchen, typed, today: today ?? thisDay(), dayOrder: dayOrderOf({ files }) });
  const last = kitchen.trials.filter(({ variantId }) => variantId === trial.variantId).at(-1)?.trialId;
  const holds = ({ text }: { text: string | null }, id: string): boolean =>
    new RegExp(`(^|[^\\w.-])${id.replace(/[.\\-]/g, "\\$&")}([^\\w.-]|$)`, "m").test(text ?? "");
  const found = (last !== undefined && logs.findLast((one) => holds(one, last))) || logs.at(0);
  return found ? found.file : FIRST_LOG;
}

/** Headings stand within so many characters of a log; our judgement. */
const HEADINGS_END = 4000;

/** The order of day and month that the headings of a kitchen's logs agree on. */
function dayOrderOf({ files }: Pick<OpenKitchen, "files">): "d/m/y" | "m/d/y" | undefined {
  const said = files.flatMap(({ file, text }): readonly ("d/m/y" | "m/d/y")[] => {
    if (text === null || !file.startsWith("trials/") || /\.(xlsx|jsonl)$/i.test(file)) return [];
    const day = logShape(text.slice(0, HEADINGS_END), file).columns.find(({ field }) => field?.holds === "day");
    const order = day?.unit;
    return order === "d/m/y" || order === "m/d/y" ? [order] : [];
  });
  return new Set(said).size === 1 ? said[0] : undefined;
}

function begin(path: string, units: KitchenUnits): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(
    path,
    logFormat(path) === "jsonl" ? "" : `${logHeadings(units).join(logFormat(path) === "tsv" ? "\t" : ",")}\n`,
    { flag: "a" },
  );
}
