import { existsSync, readFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fail } from "../../check/check";
import { csvLine } from "../../check/csv-line";
import { checkKitchen } from "../../trials/check-kitchen";
import type { Kitchen } from "../../trials/kitchen";
import { type FolderFile, isKitchenFile } from "../../trials/kitchen-folder";
import { type LogShape, logShape } from "../../trials/log/log-shape";
import { lackingHeadings, logLine } from "../../trials/log/write/log-line";
import type { Trial } from "../../trials/trial";
import type { KitchenUnits } from "../../units/unit-table";
import { readKitchenFolder } from "../read-kitchen-folder";
import { today } from "../today";

/** A kitchen on the disk, sound in all that trials rest on, with its files as they were read. */
export interface OpenKitchen {
  readonly folder: string;
  readonly files: readonly FolderFile[];
  readonly kitchen: Kitchen;
  /** all that check-kitchen says of it */
  readonly notices: readonly string[];
  /** slips of `day.csv`, `pantry.csv` and `packs.csv`, which stop no trial, a sentence each */
  readonly aside: readonly string[];
}

/** Reads a kitchen to write into one of its logs; throws, with every problem, when what trials rest on is not sound. */
export function openKitchen(folder: string, where: string): OpenKitchen {
  const files = readKitchenFolder(folder, where);
  const { kitchen, problems, notices, aside } = checkKitchen(files, { today: today(), trialsAlone: true });
  if (kitchen === null) throw new RangeError(problems.join("\n"));
  return { folder, files, kitchen, notices, aside: aside.map((slip) => `${slip}; trials are logged all the same`) };
}

/** The kitchen as it stands now: the one that was opened, or, when a file has changed since, opened again. */
export function openAgain(seen: OpenKitchen, where: string): OpenKitchen {
  const now = readKitchenFolder(seen.folder, where);
  const isSame = ({ file, text, bytes }: FolderFile, at: number): boolean => {
    const was = seen.files[at];
    return file === was.file && text === was.text && Buffer.compare(bytes ?? NOTHING, was.bytes ?? NOTHING) === 0;
  };
  return now.length === seen.files.length && now.every(isSame) ? seen : openKitchen(seen.folder, where);
}

const NOTHING = new Uint8Array();

/** The text of a log, which must be UTF-8: anything else would be changed by being written again. */
export function logText(path: string): string {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(new Uint8Array(readFileSync(path)));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") throw error;
    return fail(basename(path), "must be UTF-8 text to be written to", "another encoding: save it as CSV in UTF-8");
  }
}

/** A log with room for everything that a trial holds, and the trial as one of its lines. */
export interface LineFor {
  /** the log's text, with columns added where it lacked some; the same text where it did not */
  readonly text: string;
  readonly line: string;
  /** headings of the columns that were added */
  readonly added: readonly string[];
}

/** A log as it stands in its file. */
export interface LogText {
  readonly text: string;
  readonly file: string;
  /** what the headings of new columns are in */
  readonly units: KitchenUnits;
}

/** Where a trial goes in a log, column by column; columns that the log lacks are added at its right edge. */
export function lineFor(trial: Trial, log: LogText): LineFor {
  const { file, units } = log;
  const text = withRoomFor(trial, log);
  const added = text === log.text ? [] : lackingHeadings(trial, logShape(log.text, file), units);
  return { text, line: logLine(trial, logShape(text, file)), added };
}

/** A log with a column for everything that a trial holds: columns that it lacks are added at its right edge. */
export function withRoomFor(trial: Trial, { text, file, units }: LogText): string {
  const shape = logShape(text, file);
  const headings = lackingHeadings(trial, shape, units);
  return headings.length === 0 ? text : withColumns(text, shape, headings);
}

function withColumns(
  text: string,
  { lines, columns, headingRow, delimiter, file }: LogShape,
  headings: readonly string[],
): string {
  const bare = lines.filter(({ cells }) => cells.some((cell) => cell.includes("\n")));
  if (bare.length > 0)
    fail(
      `${file}: columns ${headings.join(", ")}`,
      "must be added by hand, as cells hold line ends",
      `row ${bare[0].row}`,
    );
  const widths = new Map(lines.map(({ row, cells }) => [row, cells.length]));
  const width = columns.length;
  let row = 0;
  return text.replace(/[^\r\n]*(?:\r\n|\n|\r|$)/g, (physical) => {
    if (physical === "") return physical;
    row++;
    const end = /[\r\n]*$/.exec(physical)?.[0] ?? "";
    const line = physical.slice(0, physical.length - end.length);
    if (row === headingRow) return `${line}${delimiter}${csvLine(headings, delimiter)}${end}`;
    return (widths.get(row) ?? -1) >= width ? `${line}${delimiter.repeat(headings.length)}${end}` : physical;
  });
}

/**
 * Holds a kitchen with a log as it would be against all that is asked of a kitchen. Throws when that brings a problem that
 * was not there before.
 *
 * @returns the notices that it brings
 */
export function checkWith(
  { files, notices }: OpenKitchen,
  file: string,
  text: string,
  today: string,
): readonly string[] {
  const others = files.filter((one) => one.file !== file);
  const after = checkKitchen([...others, { file, text, bytes: new TextEncoder().encode(text) }], {
    today,
    trialsAlone: true,
  });
  if (after.problems.length > 0) throw new RangeError(after.problems.join("\n"));
  const before = new Set(notices);
  return after.notices.filter((notice) => !before.has(notice));
}

/** The path of a kitchen's log, by its name with or without the folder `trials`; throws for what is no log of a kitchen. */
export function logPath(folder: string, log: string): string {
  const file = log.startsWith("trials/") ? log : `trials/${log}`;
  if (!isKitchenFile(file) || basename(file) !== file.slice("trials/".length))
    fail("a log", "must be a file of the folder trials that ends in .csv, .tsv or .jsonl", log);
  return join(folder, file);
}

/** The kitchen that a log lies in; null where it lies elsewhere. */
export function kitchenAround(path: string): string | null {
  const folder = dirname(dirname(path));
  return basename(dirname(path)) === "trials" && existsSync(join(folder, "variants.csv")) ? folder : null;
}
