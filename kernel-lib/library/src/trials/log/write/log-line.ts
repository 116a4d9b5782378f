import { fail } from "../../../check/check";
import { csvLine } from "../../../check/csv-line";
import { noticeLines } from "../../../check/notice";
import type { KitchenUnits } from "../../../units/unit-table";
import { type Trial, TrialSchema } from "../../trial";
import { LOG_FIELDS, type LogName, logHeading } from "../log-fields";
import type { LogShape } from "../log-shape";
import { readTrials } from "../read-trials";
import { logCells } from "./log-cells";
import { trialJson } from "./trial-json";

/**
 * A trial as a line of a log, in the log's own columns, units, separators and decimal sign. What is written is read again
 * and must be the same trial; otherwise nothing is returned and the error says what differs.
 */
export function logLine(trial: Trial, shape: LogShape): string {
  const { file, format, columns, delimiter, sign } = shape;
  const sound = checked(trial, shape);
  const line = format === "jsonl" ? trialJson(sound) : csvLine(cellsOf(sound, shape), delimiter);
  const head =
    format === "jsonl"
      ? ""
      : `${csvLine(
          columns.map(({ heading }) => heading),
          delimiter,
        )}\n`;
  const back = readTrials(`${head}${line}\n`, file, format === "jsonl" ? { format } : { format, decimalSign: sign });
  if (back.problems.length > 0) throw new RangeError(back.problems.join("\n"));
  const [again] = back.records;
  const differ = (Object.keys(sound) as (keyof Trial)[]).filter((field) => !isAlike(sound[field], again?.[field]));
  if (differ.length > 0)
    fail(
      `${file}: trial ${sound.trialId}`,
      `must read back as it was written, and ${differ.join(", ")} would not (${noticeLines(back.notices).join("; ") || "no notice"})`,
      differ.map((field) => sound[field]),
    );
  return line;
}

/** Whether two values are the same, numbers within a hundred-millionth: what a conversion there and back leaves. */
function isAlike(one: unknown, other: unknown): boolean {
  if (typeof one === "number" && typeof other === "number") return Math.abs(one - other) <= 1e-8 * Math.abs(one);
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return one === other;
  const names = Object.keys(one);
  return (
    names.length === Object.keys(other).length &&
    names.every((name) => isAlike(one[name as keyof typeof one], other[name as keyof typeof other]))
  );
}

/** What `changedLine` works from. */
export interface ChangedLineOptions {
  readonly before: Trial;
  readonly after: Trial;
  /** the line's cells as they stand in the log */
  readonly cells: readonly string[];
  readonly shape: LogShape;
}

/** The line of a trial in which some fields changed: cells of other fields stay as they were typed. */
export function changedLine({ before, after, cells, shape }: ChangedLineOptions): string {
  const line = logLine(after, shape);
  if (shape.format === "jsonl") return line;
  const changed = new Set<string>(
    (Object.keys(TrialSchema.parse(after)) as (keyof Trial)[]).filter(
      (field) => JSON.stringify(before[field]) !== JSON.stringify(after[field]),
    ),
  );
  const fresh = cellsOf(checked(after, shape), shape);
  const touches = (name: LogName): boolean =>
    changed.has(name) ||
    (name === "coresC" && changed.has("coreC")) ||
    ((name === "crispScores" || name === "tasters") && changed.has("crispTasters")) ||
    ((name === "brownScores" || name === "tasters") && changed.has("brownTasters"));
  return csvLine(
    shape.columns.map(({ field }, at) => (field !== null && touches(field.name) ? fresh[at] : (cells[at] ?? ""))),
    shape.delimiter,
  );
}

/** The headings that a log lacks for a trial, in the kitchen's units. */
export function lackingHeadings(trial: Trial, shape: LogShape, units: KitchenUnits): readonly string[] {
  if (shape.format === "jsonl") return [];
  const has = new Set<string>(shape.columns.flatMap(({ field }) => (field === null ? [] : [field.name])));
  const filled = LOG_FIELDS.filter(({ name }) => name !== "tasters" && !has.has(name) && isFilled(trial, name));
  const known = new Set(shape.columns.filter(({ field }) => field === null).map(({ heading }) => heading));
  return [
    ...filled.map((field) => logHeading(field, units)),
    ...Object.keys(trial.extra ?? {}).filter((heading) => !known.has(heading)),
  ];
}

function isFilled(trial: Trial, name: Exclude<LogName, "tasters">): boolean {
  const value = name === "coresC" && trial.coresC.length === 0 ? trial.coreC : trial[name];
  return value !== null && value !== undefined && !(Array.isArray(value) && value.length === 0);
}

function checked(trial: Trial, { file, columns }: LogShape): Trial {
  const parsed = TrialSchema.safeParse(trial);
  if (parsed.success) return parsed.data;
  const reasons = parsed.error.issues.map(({ path, message }) => {
    const field = String(path[0] ?? "");
    const heading = columns.find((one) => one.field?.name === (field === "coreC" ? "coresC" : field))?.heading ?? field;
    return `${file}: trial ${trial.trialId}, column ${heading}: expected ${message}, got ${JSON.stringify(trial[field as keyof Trial])}`;
  });
  throw new RangeError(reasons.join("\n"));
}

function cellsOf(trial: Trial, { columns, file, sign }: LogShape): readonly string[] {
  return logCells(trial, columns, { file, places: "close", decimalSign: sign });
}
