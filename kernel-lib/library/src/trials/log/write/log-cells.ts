import { fail } from "../../../check/check";
import { convertUnit } from "../../../units/convert-unit";
import { findUnit } from "../../../units/find-unit";
import type { DecimalSign } from "../../../units/typed/decimal-sign";
import { isUnknown } from "../../../units/typed/unknown-mark";
import type { Trial } from "../../trial";
import { guarded } from "../cell/formula-guard";
import { type LogField, type LogName, logField } from "../log-fields";
import { readHeading } from "../table/read-heading";

/** A column that is written: a heading and what it holds; `null` for one that is kept with the trial as it is. */
export interface WrittenColumn {
  readonly heading: string;
  readonly field: LogField | null;
  readonly unit: string | null;
}

/**
 * How numbers are written: `"exact"` reads back as the same number; `"rounded"` to the places that matter, a hundredth of a
 * millimetre, gram, minute or degree, as a person would; `"close"` in the fewest digits that read back within a billionth, as a number
 * that went through other units was typed.
 */
export type WrittenPlaces = "exact" | "close" | "rounded";

/** The columns that headings name; throws for one that stands for a column in a way that cannot be read. */
export function writtenColumns(headings: readonly string[], file: string): readonly WrittenColumn[] {
  return headings.map((heading) => {
    const { field, unit, expected } = readHeading(heading);
    if (expected !== null || (field !== null && field.kind !== null && unit === null))
      fail(`${file}, column ${heading}`, `must be ${expected ?? "a heading with its unit"}`, heading);
    return { heading, field, unit };
  });
}

/** The cells of a trial in the columns given. Throws when the trial holds something that they have no place for. */
export function logCells(
  trial: Trial,
  columns: readonly WrittenColumn[],
  options: { readonly file: string; readonly places: WrittenPlaces; readonly decimalSign?: DecimalSign },
): readonly string[] {
  const { file } = options;
  const fields = new Set<string | undefined>(columns.map(({ field }) => field?.name));
  for (const name of Object.keys(trial) as (keyof Trial)[]) {
    const column = name === "coreC" ? "coresC" : name;
    if (name === "extra" || name === "crispTasters" || name === "brownTasters") continue;
    const value = trial[name];
    const isNone = value === null || value === undefined || (Array.isArray(value) && value.length === 0);
    if (!isNone && !fields.has(column))
      fail(
        `${file}: column ${logField(column as LogName)?.column ?? column}`,
        "must exist, as the record holds it",
        value,
      );
  }
  const extra = new Map(Object.entries(trial.extra ?? {}));
  for (const heading of extra.keys())
    if (!columns.some((one) => one.heading === heading && one.field === null))
      fail(
        `${file}: column ${heading}`,
        "must exist and be no column of its own, as the record holds it",
        extra.get(heading),
      );
  return columns.map((column) => {
    const { field, heading } = column;
    return field === null ? guarded(extra.get(heading) ?? "") : cellOf(trial, column, field, options);
  });
}

function cellOf(
  trial: Trial,
  { unit }: WrittenColumn,
  field: LogField,
  { places, decimalSign = "." }: { readonly places: WrittenPlaces; readonly decimalSign?: DecimalSign },
): string {
  const { name, holds } = field;
  const text = (value: number, of: Omit<NumberTextOptions, "places">): string =>
    numberText(value, { ...of, places }).replace(".", decimalSign);
  // under a heading without its unit each cell has its own
  const own = unit === null && field.kind !== null && holds !== "programme" ? ` ${field.base}` : "";
  const number = (value: number): string => `${text(value, { unit, base: field.base })}${own}`;
  // of several readings all have their unit, or none
  const readings = (values: readonly number[]): string => {
    const texts = values.map(number);
    return texts.some((one) => one.includes(" "))
      ? values.map((one) => `${one} ${field.base}`).join(";")
      : texts.join(";");
  };
  if (name === "tasters") return "";
  if (name === "coresC") {
    const cores = trial.coresC.length > 0 ? trial.coresC : [trial.coreC].filter((core) => core !== null);
    return readings(cores);
  }
  if (name === "programme")
    return trial.programme
      .map(({ setpointC, timeMin }) => `${number(setpointC)}x${text(timeMin, { unit: "min", base: "min" })}`)
      .join(";");
  if (name === "crispScores" || name === "brownScores") {
    const tasters = name === "crispScores" ? trial.crispTasters : trial.brownTasters;
    return trial[name]
      .map((score, at) => (tasters.length > 0 ? `${tasters[at]}:${number(score)}` : number(score)))
      .join(";");
  }
  const value = trial[name];
  if (value === null || value === undefined) return "";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return number(value);
  if (name === "probesMm" || name === "looksMin") return readings(trial[name]);
  if (typeof value !== "string") return (value as readonly string[]).join(";");
  const isKept = name === "note" ? value.trim() !== "" : value.trim() === value && value !== "";
  if (!isKept || (holds === "text" && name !== "note" && name !== "trialId" && isUnknown(value)))
    fail(`writing trial ${trial.trialId}: ${name}`, "must be a text that does not say that nothing is known", value);
  return name === "note" || holds === "text" ? guarded(value) : value;
}

/** The smallest difference that is written where numbers are rounded, in kitchen units: finer than what instruments show. */
const STEP = 0.01;

/** How far a number that is written close may be off, as a share of it. */
const CLOSE = 1e-9;

interface NumberTextOptions {
  readonly unit: string | null;
  readonly base: string | null;
  readonly places: WrittenPlaces;
}

function numberText(value: number, { unit, base, places }: NumberTextOptions): string {
  const off = places === "close" ? CLOSE : 0;
  if (unit === "%") return exactText(value, 100 * value, (percent) => percent / 100, off) ?? String(100 * value);
  if (unit === "min:s") return clockText(value);
  if (unit === null || base === null || unit === base) {
    if (places === "rounded") return toStep(value, STEP);
    return exactText(value, value, (one) => one, off) ?? String(value);
  }
  const inUnit = convertUnit({ value, from: base, to: unit });
  if (places === "rounded")
    return toStep(inUnit, (STEP * findUnit(base, "numberText").factor) / findUnit(unit, "numberText").factor);
  return (
    exactText(value, inUnit, (one) => convertUnit({ value: one, from: unit, to: base }), off) ?? `${value} ${base}`
  );
}

/** The shortest decimal near `written` that reads back as `value`; `null` when none does. */
function exactText(value: number, written: number, back: (written: number) => number, off: number): string | null {
  for (let digits = 1; digits <= 17; digits++) {
    const one = Number(written.toPrecision(digits));
    if (Math.abs(back(one) - value) <= off * Math.abs(value)) return String(one);
  }
  return null;
}

function clockText(timeMin: number): string {
  const seconds = Math.round(60 * timeMin);
  const minutes = Math.floor(seconds / 60);
  const rest = seconds - 60 * minutes;
  return minutes + rest / 60 === timeMin ? `${minutes}:${String(rest).padStart(2, "0")}` : `${timeMin} min`;
}

/** A number to the first decimal place that is no coarser than the step, without zeros at its end. */
function toStep(value: number, step: number): string {
  return String(Number(value.toFixed(Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)))));
}
