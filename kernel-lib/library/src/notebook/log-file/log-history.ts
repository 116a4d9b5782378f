import { createHash } from "node:crypto";
import { closeSync, existsSync, fstatSync, fsyncSync, ftruncateSync, mkdirSync, openSync, readFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { appendBytes } from "./append-bytes";
import { readBytes } from "./read-bytes";
import { syncFolder } from "./whole-file";

/** What was done to a log, one line of its history. */
export interface LogDeed {
  /** when, as `2026-03-14T09:26:53.589Z` */
  readonly at: string;
  readonly what: "add" | "correct" | "undo" | "unfinished";
  readonly trialId: string;
  /** who, where it was said */
  readonly by: string | null;
  /** why, as a correction says */
  readonly why: string | null;
  /** the line as it was before; null for a new one */
  readonly before: string | null;
  /** the line as it was written */
  readonly after: string | null;
  /** bytes that the log held before */
  readonly size: number;
}

/** What a history holds, and how many of its lines were damaged. */
export interface LogHistory {
  readonly deeds: readonly LogDeed[];
  readonly damaged: number;
}

/** As much of a history's end as is read to find its last line (bytes); a longer line is found by reading it all. */
const END_BYTES = 65_536;

const LINE_END = 10;

/** Where the history of a log lies: a hidden folder beside it. */
export function historyPath(log: string): string {
  return join(dirname(log), ".history", `${basename(log)}.jsonl`);
}

/**
 * Reads the history of a log: JSON Lines, each with a check sum (SHA-256, its first 16 digits) over the rest of the line.
 * A line whose sum does not fit is left out and counted. No history is an empty one.
 */
export function readHistory(log: string): LogHistory {
  const path = historyPath(log);
  if (!existsSync(path)) return { deeds: [], damaged: 0 };
  const lines = readFileSync(path, "utf8").split("\n").filter(Boolean);
  const deeds = lines.map(deedOf);
  return { deeds: deeds.filter((deed) => deed !== null), damaged: deeds.filter((deed) => deed === null).length };
}

/** Adds a line to the history of a log and forces it to the disk; an unfinished last line is cut off first. */
export function addToHistory(log: string, deed: LogDeed): void {
  const path = historyPath(log);
  const isNew = !existsSync(path);
  if (isNew) {
    mkdirSync(dirname(path), { recursive: true });
    closeSync(openSync(path, "a", 0o600));
    syncFolder(dirname(path));
  } else cutUnfinished(path);
  appendBytes(path, `${JSON.stringify({ ...deed, sum: sumOf(deed) })}\n`);
}

/** The last line of a history that is whole, or null. */
export function lastDeed(log: string): LogDeed | null {
  const path = historyPath(log);
  if (!existsSync(path)) return null;
  const handle = openSync(path, "r");
  try {
    const { size } = fstatSync(handle);
    const end = new TextDecoder().decode(readBytes(handle, Math.max(0, size - END_BYTES), END_BYTES));
    const lines = end.split("\n").slice(0, -1);
    if (lines.length > 1 || size <= END_BYTES) return lines.length > 0 ? deedOf(lines.at(-1) as string) : null;
  } finally {
    closeSync(handle);
  }
  return readHistory(log).deeds.at(-1) ?? null;
}

function cutUnfinished(path: string): void {
  const handle = openSync(path, "r+");
  try {
    const { size } = fstatSync(handle);
    if (size === 0 || readBytes(handle, size - 1, 1)[0] === LINE_END) return;
    ftruncateSync(handle, readFileSync(path).lastIndexOf(LINE_END) + 1);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

function sumOf(deed: LogDeed): string {
  return createHash("sha256").update(JSON.stringify(deed)).digest("hex").slice(0, 16);
}

function deedOf(line: string): LogDeed | null {
  try {
    const { sum, ...deed } = JSON.parse(line) as LogDeed & { readonly sum: string };
    return sum === sumOf(deed) ? deed : null;
  } catch {
    return null;
  }
}
