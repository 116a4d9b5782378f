import { freezeDeep } from "../../check/freeze-deep";
import type { Kitchen } from "../../trials/kitchen";
import { type LogName, logField, logHeading } from "../../trials/log/log-fields";
import { newTrial, type TypedTrial } from "../../trials/log/new-trial";
import { kitchenFolder } from "../kitchen-folder-of";
import { openKitchen } from "../log-file/trial-log";
import { checkTrial, type LogTrialOptions } from "../log-trial";
import { today as thisDay } from "../today";
import { coldCore } from "./cold-core";

/** What is to be said of a trial that is still being typed. */
export interface CheckedDraft {
  readonly kind: "checked draft";
  /** why it could not be logged, a sentence each */
  readonly problems: readonly string[];
  readonly assumed: readonly string[];
  readonly notices: readonly string[];
  /** where the coldest core is below what the product must reach; null else */
  readonly coldCore: string | null;
  /** headings that must still be typed */
  readonly missing: readonly string[];
}

/** The longest time that a trial can have (min): nothing that was typed comes after it. */
const LONGEST_MIN = 180;

/**
 * `checkTrial` for a form: says what is wrong instead of throwing it. Before the pieces are out there is no time yet; the other cells
 * are then held against a time that all of them come before, and what is said of the time itself is left out.
 *
 * @example
 * checkDraft({ variant: "beet-lentil", thickness_mm: "nine" }).problems.length; // → 1
 */
export function checkDraft(typed: TypedTrial, options: LogTrialOptions = {}): CheckedDraft {
  const folder = kitchenFolder(options.folder, "checkDraft: folder");
  const { kitchen, aside } = openKitchen(folder, "checkDraft: folder");
  const field = logField("timeMin");
  const heading = field === undefined ? "time_min" : logHeading(field, kitchen.units);
  const given = typed[heading];
  const lacks = given === undefined || given === null || given === "";
  const aboutTime = (sentence: string): boolean => lacks && sentence.includes(`column ${heading}`);
  const missing = lacks ? [heading] : [];
  try {
    const checked = checkTrial(lacks ? { ...typed, [heading]: LONGEST_MIN } : typed, { ...options, folder });
    return freezeDeep({
      kind: "checked draft",
      problems: [],
      assumed: checked.assumed,
      notices: checked.notices.filter((notice) => !aboutTime(notice) && !aside.includes(notice)),
      coldCore: coldCore(checked.trial, kitchen),
      missing,
    });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const problems = error.message.split("\n").filter((problem) => !aboutTime(problem));
    const cold = coldCoreAlone(typed, kitchen);
    return freezeDeep({ kind: "checked draft", problems, assumed: [], notices: [], coldCore: cold, missing });
  }
}

/** The caution about a cold core, where other cells cannot be read yet: it must not wait for them. */
function coldCoreAlone(typed: TypedTrial, kitchen: Kitchen): string | null {
  const names: readonly LogName[] = ["variantId", "coresC", "timeMin"];
  const headings = names.flatMap((name) => logField(name) ?? []).map((field) => logHeading(field, kitchen.units));
  const [variant, core, time] = headings;
  const cells = { [variant]: typed[variant] ?? null, [core]: typed[core] ?? null, [time]: LONGEST_MIN };
  try {
    return coldCore(newTrial({ kitchen, typed: cells, today: thisDay() }).trial, kitchen);
  } catch {
    return null;
  }
}
