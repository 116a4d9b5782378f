import { headingUnit } from "../../../units/columns/heading-unit";
import { findUnit } from "../../../units/find-unit";
import type { KitchenUnits } from "../../../units/unit-table";
import { LOG_FIELDS, type LogField } from "../log-fields";

/** What a heading of a log means. */
export interface LogHeading {
  readonly heading: string;
  /** `null` for one that stands for no column that is known */
  readonly field: LogField | null;
  /** unit of its cells, in this library's spelling, or `"%"`, or `"min:s"`, or `"d/m/y"`; `null` without one */
  readonly unit: string | null;
  /** why it cannot be taken: what was expected */
  readonly expected: string | null;
}

/** The longest heading that is taken apart: our judgement. */
const LONGEST = 120;

const BY_WORDS: ReadonlyMap<string, LogField> = new Map(
  LOG_FIELDS.flatMap((field) => [wordsOf(field.column), ...field.also].map((words) => [words, field] as const)),
);

/**
 * What a heading of a log means: `thickness_mm`, `Setpoint (°F)`, `thickness [mm]`, `Batch, g`, `Core temp C`, `setpointC`.
 * The name must stand in `LOG_FIELDS`, whatever its capitals; nothing is guessed.
 */
export function readHeading(heading: string, units: KitchenUnits = "metric"): LogHeading {
  const unknown: LogHeading = { heading, field: null, unit: null, expected: null };
  if (heading.length > LONGEST) return unknown;
  const spaced = /^[a-z]+(?:[A-Z][a-z]*\d?)+$/.test(heading) ? heading.replace(/([a-z])([A-Z])/g, "$1 $2") : heading;
  const words = wordsOf(spaced);
  const whole = fieldOf(words);
  if (whole !== null) return { heading, field: whole, unit: null, expected: null };
  let wrong: LogHeading | null = null;
  for (const [name, unitText, isApart] of splitsOf(spaced)) {
    const field = fieldOf(wordsOf(name)) ?? fieldOf(wordsOf(name.replace(/\s+in\s*$/i, "")));
    if (field === null) continue;
    const unit = headingUnit(unitText);
    // pounds and ounces stand in the cells themselves
    if (unit === "lb oz" && field.kind === "mass") return { heading, field, unit: null, expected: null };
    if (unit !== null && fits(field, unit)) return { heading, field, unit, expected: null };
    // what stands apart may be any remark, but not where a unit or a scale belongs
    const isScore = field.holds === "scores";
    if (isApart && field.kind === null && (!isScore || /^0\s?(?:-|–|to|\.\.)\s?9$/.test(unitText.trim())))
      return { heading, field, unit: null, expected: null };
    if (wrong === null && (unit !== null || isApart))
      wrong = { heading, field, unit: null, expected: wanted(field, units) };
  }
  return wrong ?? unknown;
}

function fieldOf(words: string): LogField | null {
  return BY_WORDS.get(words) ?? null;
}

function wanted(field: LogField, units: KitchenUnits): string {
  if (field.kind !== null) return `a unit of ${field.kind}, such as ${field.column}_${field.endings?.[units]}`;
  return `the heading ${field.column}, ${field.holds === "scores" ? "scores from 0 to 9" : "without a unit"}`;
}

function fits(field: LogField, unit: string): boolean {
  if (unit === "lb oz") return false;
  if (unit === "%") return field.holds === "share";
  if (unit === "min:s") return field.holds === "time" && field.base === "min";
  if (unit === "d/m/y" || unit === "m/d/y" || unit === "y-m-d") return field.holds === "day";
  return field.kind !== null && findUnit(unit, "readHeading: heading").kind === field.kind;
}

/** A heading as name and unit, by each way to part them. */
function splitsOf(heading: string): readonly (readonly [name: string, unit: string, isApart: boolean])[] {
  const text = heading.trim();
  const splits: [string, string, boolean][] = [];
  const last = text.at(-1) ?? "";
  const open = { ")": "(", "]": "[", "}": "{" }[last];
  if (open !== undefined) {
    const at = text.lastIndexOf(open);
    if (at > 0) splits.push([text.slice(0, at), text.slice(at + 1, -1), true]);
  }
  for (const mark of [",", "/", ":"]) {
    const at = text.indexOf(mark);
    if (at > 0) splits.push([text.slice(0, at), text.slice(at + 1), false]);
  }
  const parts = text.split(/[\s_]+/);
  for (const count of [2, 1])
    if (parts.length > count) splits.push([parts.slice(0, -count).join(" "), parts.slice(-count).join(" "), false]);
  return splits;
}

/** Lower case, words parted by one space. */
function wordsOf(text: string): string {
  return text
    .toLowerCase()
    .replace(/[\s_.:#-]+/g, " ")
    .trim();
}
