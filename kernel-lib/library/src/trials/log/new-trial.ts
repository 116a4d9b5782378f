import { fail } from "../../check/check";
import { nearestName } from "../../check/nearest-name";
import { noticeLines } from "../../check/notice";
import { slipLines } from "../../check/slip";
import { massText } from "../../units/mass-text";
import { ownSettingText } from "../../units/setting-text";
import { temperatureText } from "../../units/temperature-text";
import type { Kitchen } from "../kitchen";
import { kitchenNames, unknownNames } from "../known-names";
import { type Trial, TrialSchema } from "../trial";
import { LOG_FIELDS, type LogField, type LogName, logField, logHeading } from "./log-fields";
import { type ReadTrialsOptions, readTrials } from "./read-trials";
import { settleNames } from "./settle-names";
import { readHeading } from "./table/read-heading";
import { trialJson } from "./write/trial-json";

/** What was typed into one cell. */
export type Typed = string | number | boolean | null | readonly (string | number)[];

/** A trial as a person gives it: headings of a log with what was typed, `{ thickness_mm: "9.1; 8.8", time_min: 12 }`. */
export type TypedTrial = Readonly<Record<string, Typed>>;

/** What `newTrial` works from. */
export interface NewTrialOptions {
  readonly kitchen: Kitchen;
  readonly typed: TypedTrial;
  /** as `2026-03-14`: the day of the trial where none is typed */
  readonly today: string;
  /** order of day and month in days such as 11/3/2026, as the log's heading has it; such a day is refused unless given */
  readonly dayOrder?: ReadTrialsOptions["dayOrder"];
}

/** A trial that was typed, and what was made of it. */
export interface NewTrial {
  readonly trial: Trial;
  /** what was taken from the variant or the day, as it was not typed: a sentence each */
  readonly assumed: readonly string[];
  /** how cells were read, and what is unlikely in them */
  readonly notices: readonly string[];
}

/** How many names an error lists. */
const MOST_LISTED = 12;

/** Frozen pieces go in at the temperature of a freezer: common practice, no source. */
const FROZEN_C = -18;

/**
 * The trial that a few typed cells tell, in the columns and units of a log. What was not typed is taken from the variant
 * (pan, appliance, setpoint; the batch where no depth was read) and from the day, and is said; what was measured is never
 * made up. Every problem is told at once: what is no column, no known id, no number, or missing.
 */
export function newTrial({ kitchen, typed, today, dayOrder }: NewTrialOptions): NewTrial {
  const given = Object.entries(typed).filter(([, value]) => !isNothing(value));
  const names = columnsOf(
    given.map(([heading]) => heading),
    kitchen,
  );
  const assumed: string[] = [];
  const cells: Record<string, Typed> = Object.fromEntries(given);
  const assume = (name: LogName, value: Typed, sentence: string): void => {
    if (names.has(name)) return;
    const heading = logHeading(logField(name) as LogField, "metric");
    names.set(name, heading);
    cells[heading] = value;
    assumed.push(sentence);
  };
  if (kitchen.variants.length === 1)
    assume("variantId", kitchen.variants[0].variantId, `the variant is ${kitchen.variants[0].variantId}, the only one`);
  const variantHeading = names.get("variantId");
  const wanted = variantHeading === undefined ? null : String(cells[variantHeading]);
  const known = kitchenNames(kitchen).variantId;
  const variantId = wanted === null || known.has(wanted) ? wanted : known.sameAs(wanted);
  const variant = kitchen.variants.find((one) => one.variantId === variantId);
  if (variant === undefined) {
    const some = known.known.slice(0, MOST_LISTED).join(", ");
    const nearest = wanted === null ? null : known.nearestTo(wanted);
    fail(
      "logTrial: variant",
      `must be one of ${some}${nearest === null ? "" : `, ${nearest} perhaps`}`,
      wanted ?? "none",
    );
  }
  assume("panId", variant.panId, `the pan is ${variant.panId}, as the variant's`);
  assume("applianceId", variant.applianceId, `the appliance is ${variant.applianceId}, as the variant's`);
  assume(
    "setpointC",
    variant.setpointC,
    `the setpoint is ${ownSettingText(variant.setpointC, kitchen.units)}, as the variant's`,
  );
  if (!names.has("probesMm"))
    assume(
      "batchG",
      variant.batchG,
      `the batch is ${massText(variant.batchG, kitchen.units)}, as the variant's, for no depth was given`,
    );
  assume("trialId", nextId(kitchen, variant.variantId), "the trial's name is the next free one");
  assume(
    "startC",
    FROZEN_C,
    `the pieces went in at ${temperatureText(FROZEN_C, kitchen.units)}, straight from the freezer`,
  );
  assume("date", today, `the day is today, ${today}`);

  const { trial, notices } = readTyped(cells, { kitchen, today, dayOrder });
  if (kitchen.trials.some(({ trialId }) => trialId === trial.trialId))
    fail("logTrial: trial", "must be a name that is not used yet", trial.trialId);
  return Object.freeze({ trial, assumed, notices });
}

/** What `amendedTrial` works from. */
export interface AmendedTrialOptions extends NewTrialOptions {
  /** as it was logged */
  readonly trial: Trial;
}

/** A logged trial with some cells typed again; `null` makes a cell unknown. Its other fields stay as they are. */
export function amendedTrial({
  kitchen,
  trial,
  typed,
  today,
  dayOrder,
}: AmendedTrialOptions): Omit<NewTrial, "assumed"> {
  const names = columnsOf(Object.keys(typed), kitchen);
  if (names.has("trialId")) fail("correctTrial: trial", "must keep its name", typed[names.get("trialId") as string]);
  const fields = JSON.parse(trialJson(TrialSchema.parse(trial))) as Record<string, Typed>;
  for (const name of names.keys()) {
    delete fields[name];
    if (name === "coresC") delete fields.coreC;
    if (name === "crispScores" || name === "brownScores") delete fields[name.replace("Scores", "Tasters")];
  }
  const cells = Object.fromEntries(Object.entries(typed).filter(([, value]) => !isNothing(value)));
  return readTyped({ ...fields, ...cells }, { kitchen, today, dayOrder });
}

/** The columns that headings name, each once; throws for one that is none. */
function columnsOf(headings: readonly string[], kitchen: Kitchen): Map<LogName, string> {
  const names = new Map<LogName, string>();
  for (const heading of headings) {
    const { field } = readHeading(heading);
    if (field === null) {
      const known = LOG_FIELDS.map((one) => logHeading(one, kitchen.units));
      const nearest = nearestName(heading, known);
      return fail(
        "a column",
        nearest === null ? `must be one of ${known.join(", ")}` : `must be known, ${nearest} perhaps`,
        heading,
      );
    }
    const before = names.get(field.name);
    if (before !== undefined) fail("a column", "must be given once", [before, heading]);
    names.set(field.name, heading);
  }
  return names;
}

function readTyped(
  cells: Readonly<Record<string, unknown>>,
  { kitchen, today, dayOrder }: Omit<NewTrialOptions, "typed">,
): Omit<NewTrial, "assumed"> {
  const file = "the trial";
  const read = { ...readTrials(JSON.stringify(cells), file, { format: "jsonl", today, dayOrder }), file };
  const known = kitchenNames(kitchen);
  const log = settleNames(read, known);
  const problems = slipLines([...log.slips, ...unknownNames(log, known)]);
  if (problems.length > 0) throw new RangeError(problems.join("\n"));
  return { trial: log.records[0], notices: noticeLines(log.notices) };
}

function isNothing(value: Typed): boolean {
  return value === null || value === "" || (Array.isArray(value) && value.length === 0);
}

/** The name after the variant's last trial, with as many digits; else from the words of its id: `oat-bar` begins with OB-01. */
export function nextId(
  { trials }: { readonly trials: readonly Pick<Trial, "trialId" | "variantId">[] },
  variantId: string,
): string {
  const used = new Set(trials.map(({ trialId }) => trialId));
  const last = trials.filter((trial) => trial.variantId === variantId).at(-1)?.trialId ?? null;
  const counted = last === null ? null : /^(.*?)(\d{1,9})$/.exec(last);
  const stem =
    counted?.[1] ??
    `${variantId
      .split(/[-_. ]+/)
      .map((word) => word.charAt(0))
      .join("")
      .toUpperCase()}-`;
  const digits = counted?.[2].length ?? 2;
  for (let number = Number(counted?.[2] ?? 0) + 1; ; number++) {
    const name = `${stem}${String(number).padStart(digits, "0")}`;
    if (!used.has(name)) return name;
  }
}
