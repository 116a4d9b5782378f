import { readFileSync } from "node:fs";
import { basename } from "node:path";
import { fail } from "../../check/check";
import { addToHistory, type LogDeed } from "./log-history";
import { mendUnfinished } from "./mend-unfinished";
import { writeWholeFile } from "./whole-file";

/** A line of a log that becomes another. */
export interface ReplacedLine {
  readonly what: "correct" | "undo";
  readonly trialId: string;
  /** the line as it stands, without its line end; it must stand in the log once */
  readonly before: string;
  /** what takes its place; null takes the line out, with its line end */
  readonly after: string | null;
  readonly by: string | null;
  readonly why: string | null;
}

/**
 * Puts a line of a log that the caller has locked (`whileLocked`) in place of another. The old line goes to the log's
 * history first, with who and why; then the file is replaced whole. Everything else in it stays to the byte.
 */
export function replaceLine(log: string, line: ReplacedLine, now: Date = new Date()): LogDeed {
  const at = now.toISOString();
  mendUnfinished(log, at);
  const bytes = new Uint8Array(readFileSync(log));
  const text = decoded(bytes, log);
  const from = onlyPlaceOf(text, line.before);
  if (from === null)
    fail(`replaceLine: the line of ${line.trialId}`, `must stand in ${basename(log)} once as it was read`, line.before);
  const deed: LogDeed = { at, ...line, size: bytes.length };
  addToHistory(log, deed);
  const rest = text.slice(from + line.before.length);
  writeWholeFile(log, text.slice(0, from) + (line.after === null ? rest.replace(/^\r?\n|^\r/, "") : line.after + rest));
  return deed;
}

/** Where a line begins that stands once in a text, between line ends; else null. */
function onlyPlaceOf(text: string, line: string): number | null {
  let found: number | null = null;
  for (let at = text.indexOf(line); at >= 0; at = text.indexOf(line, at + 1)) {
    const isWhole =
      /^$|[\n\r\ufeff]$/.test(text.slice(Math.max(0, at - 1), at)) &&
      /^$|^[\n\r]/.test(text.slice(at + line.length, at + line.length + 1));
    if (!isWhole) continue;
    if (found !== null) return null;
    found = at;
  }
  return found;
}

function decoded(bytes: Uint8Array, log: string): string {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return fail(
      `replaceLine: ${basename(log)}`,
      "must be UTF-8 text",
      "another encoding: save it as CSV in UTF-8 first",
    );
  }
}
