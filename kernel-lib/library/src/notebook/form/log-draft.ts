import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { LOG_FIELDS } from "../../trials/log/log-fields";
import { newTrial, type TypedTrial } from "../../trials/log/new-trial";
import { trialJson } from "../../trials/log/write/trial-json";
import { type Trial, TrialSchema } from "../../trials/trial";
import { logOfTrial, trialHistory } from "../correct-trial";
import { kitchenFolder } from "../kitchen-folder-of";
import type { LogDeed } from "../log-file/log-history";
import { lineFor, logPath, logText, type OpenKitchen, openKitchen } from "../log-file/trial-log";
import { type LoggedTrial, type LogTrialOptions, logTrial } from "../log-trial";
import { today as thisDay } from "../today";
import { coldCore } from "./cold-core";

/** What became of a trial that a form sent. */
export interface LoggedDraft {
  /** `"already logged"`: it had come before, and is not logged a second time */
  readonly kind: "logged" | "already logged";
  readonly trialId: string;
  /** the log, as `"trials/week.csv"` */
  readonly file: string;
  readonly notices: readonly string[];
  /** where the coldest core is below what the product must reach; null else */
  readonly coldCore: string | null;
  readonly sentence: string;
}

/**
 * `logTrial` for a form whose answer may get lost on the way: a trial that was logged already with these very cells is not logged a
 * second time, and is told apart from another trial of the same name.
 *
 * @throws as `logTrial` does; for another trial of the same name it says in what they differ
 *
 * @example
 * logDraft({ trial: "BL-02", variant: "beet-lentil", thickness_mm: 9, time_min: 10 }); // throws "must be a name that no other trial has"
 */
export function logDraft(typed: TypedTrial, options: LogTrialOptions = {}): LoggedDraft {
  const folder = kitchenFolder(options.folder, "logDraft: folder");
  let logged: LoggedTrial;
  try {
    logged = logTrial(typed, { ...options, folder });
  } catch (error) {
    const before = loggedBefore(typed, { ...options, folder });
    if (before === null) throw error;
    return before;
  }
  const { trial, file, sentence } = logged;
  const { kitchen, aside } = openKitchen(folder, "logDraft: folder");
  const notices = logged.notices.filter((notice) => !aside.includes(notice));
  const cold = coldCore(trial, kitchen);
  return freezeDeep({ kind: "logged", trialId: trial.trialId, file, notices, coldCore: cold, sentence });
}

function loggedBefore(typed: TypedTrial, options: LogTrialOptions & { readonly folder: string }): LoggedDraft | null {
  const { folder } = options;
  const open = openKitchen(folder, "logDraft: folder");
  const there = open.kitchen.trials.find(({ trialId }) => trialId === typed.trial);
  if (there === undefined) return null;
  const { trialId } = there;
  const others = { ...open.kitchen, trials: open.kitchen.trials.filter((trial) => trial.trialId !== trialId) };
  const { trial, notices } = newTrial({ kitchen: others, typed, today: options.today ?? thisDay() });
  const file = logOfTrial(open, trialId);
  const differing = differences(trial, there);
  if (differing.length > 0 && !wasAdded(trial, { folder, file, open }))
    fail(
      "logDraft: trial",
      `must be a name that no other trial has (that of ${file} differs in ${differing.join(", ")})`,
      trialId,
    );
  return freezeDeep({
    kind: "already logged",
    trialId,
    file,
    notices,
    coldCore: coldCore(there, open.kitchen),
    sentence: `${trialId} was in ${file} already, as it was sent; it was not logged a second time.`,
  });
}

/** What two trials do not share, by column where it has one. */
function differences(one: Trial, other: Trial): readonly string[] {
  const fields = (trial: Trial): Record<string, unknown> => JSON.parse(trialJson(TrialSchema.parse(trial)));
  const [a, b] = [fields(one), fields(other)];
  const names = [...new Set([...Object.keys(a), ...Object.keys(b)])];
  const differing = names.filter((name) => JSON.stringify(a[name]) !== JSON.stringify(b[name]));
  const column = (name: string): string =>
    LOG_FIELDS.find((field) => field.name === name)?.column ?? NO_COLUMN[name] ?? name;
  return [...new Set(differing.map(column))];
}

/** Where fields stand in a log that are no column of their own. */
const NO_COLUMN: Readonly<Record<string, string>> = { coreC: "core", crispTasters: "tasters", brownTasters: "tasters" };

/** Whether the trial that stands in the log came from these cells and was corrected since, as the log's history tells. */
function wasAdded(
  trial: Trial,
  { folder, file, open }: { readonly folder: string; readonly file: string; readonly open: OpenKitchen },
): boolean {
  const text = logText(logPath(folder, file));
  const { line } = lineFor(trial, { text, file, units: open.kitchen.units });
  const standing: LogDeed[] = [];
  for (const deed of trialHistory(trial.trialId, { folder })) {
    if (deed.what === "undo" || deed.what === "unfinished") standing.pop();
    else standing.push(deed);
  }
  const lines = new Set(text.split(/\r?\n/).map((one) => one.trim()));
  const [first, last] = [standing.at(0), standing.at(-1)];
  return first?.after?.trim() === line.trim() && lines.has(last?.after?.trim() ?? "");
}
