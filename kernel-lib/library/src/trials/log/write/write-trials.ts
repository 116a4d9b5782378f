import { csvLine } from "../../../check/csv-line";
import type { KitchenUnits } from "../../../units/unit-table";
import type { Trial } from "../../trial";
import { LOG_FIELDS, type LogName, logHeading, logHeadings } from "../log-fields";
import type { LogFormat } from "../table/log-table";
import { logCells, type WrittenColumn, writtenColumns } from "./log-cells";
import { trialJson } from "./trial-json";
import { xlsxBytes } from "./xlsx-bytes";

/** How `writeTrials` writes. */
export interface WriteTrialsOptions {
  /** by the ending of the file's name */
  readonly format: LogFormat;
  /** what the headings are in; JSON Lines hold a trial in kitchen units whatever is asked */
  readonly units: KitchenUnits;
  /** headings of the columns; those that are filled unless given */
  readonly headings?: readonly string[];
  /** named in errors */
  readonly file?: string;
}

const NEEDED: ReadonlySet<LogName> = new Set<LogName>([
  "trialId",
  "date",
  "variantId",
  "panId",
  "applianceId",
  "setpointC",
  "startC",
  "timeMin",
]);

/**
 * A whole log, which `readTrials` reads back as the same trials, number for number: a text, or the bytes of a workbook.
 * Throws when a trial holds something that a log cannot.
 */
export function writeTrials(trials: readonly Trial[], options: WriteTrialsOptions): string | Uint8Array {
  const { format, units, file = "writeTrials" } = options;
  if (format === "jsonl") return trials.map((trial) => `${trialJson(trial)}\n`).join("");
  const headings = options.headings ?? filledHeadings(trials, units);
  const columns: readonly WrittenColumn[] = writtenColumns(headings, file);
  const rows = trials.map((trial) => logCells(trial, columns, { file, places: "exact" }));
  if (format === "xlsx") return xlsxBytes(columns, rows);
  const delimiter = format === "tsv" ? "\t" : ",";
  return [headings, ...rows].map((cells) => `${csvLine(cells, delimiter)}\n`).join("");
}

/** The headings that these trials fill, those of every trial, and their own at the end. */
function filledHeadings(trials: readonly Trial[], units: KitchenUnits): readonly string[] {
  if (trials.length === 0) return logHeadings(units);
  const isFilled = (value: unknown): boolean =>
    value !== null && value !== undefined && !(Array.isArray(value) && value.length === 0);
  const own = LOG_FIELDS.filter(({ name }) => {
    if (name === "tasters") return false;
    if (NEEDED.has(name)) return true;
    return trials.some((trial) => isFilled(trial[name]) || (name === "coresC" && trial.coreC !== null));
  });
  const extra = new Set<string>();
  for (const trial of trials) for (const heading of Object.keys(trial.extra)) extra.add(heading);
  return [...own.map((field) => logHeading(field, units)), ...extra];
}
