import { closeSync, fstatSync, openSync, readFileSync } from "node:fs";
import { appendBytes } from "./append-bytes";
import { addToHistory, type LogDeed } from "./log-history";
import { mendUnfinished } from "./mend-unfinished";
import { readBytes } from "./read-bytes";

/** A line for the end of a log. */
export interface NewLine {
  readonly trialId: string;
  /** the line, without its line end; may hold line ends in quotes */
  readonly line: string;
  readonly by: string | null;
}

/**
 * Adds a line to a log that the caller has locked (`whileLocked`): first to its history, then to the log, each forced to
 * the disk, so that whatever ends the process, the line is in the log whole, or is cut off and named by the next call.
 * The line ends as the log's lines do.
 *
 * @returns the line of an earlier call that was never finished and is now cut off, or null
 */
export function addLine(log: string, { trialId, line, by }: NewLine, now: Date = new Date()): LogDeed | null {
  const at = now.toISOString();
  const unfinished = mendUnfinished(log, at);
  const { size, ends, hasEnd } = endOf(log);
  const after = `${hasEnd ? "" : ends}${line}${ends}`;
  addToHistory(log, { at, what: "add", trialId, by, why: null, before: null, after, size });
  appendBytes(log, after);
  return unfinished;
}

/** How a log ends: its size, its line ends, and whether its last line has one. */
function endOf(log: string): { size: number; ends: "\n" | "\r\n" | "\r"; hasEnd: boolean } {
  const handle = openSync(log, "r");
  try {
    const { size } = fstatSync(handle);
    const text = new TextDecoder("latin1").decode(readBytes(handle, Math.max(0, size - 2), 2));
    if (text.endsWith("\r\n")) return { size, ends: "\r\n", hasEnd: true };
    if (text.endsWith("\n")) return { size, ends: "\n", hasEnd: true };
    const whole = readFileSync(log, "latin1");
    const ends = whole.includes("\r\n") ? "\r\n" : whole.includes("\n") || !whole.includes("\r") ? "\n" : "\r";
    return { size, ends, hasEnd: size === 0 || text.endsWith("\r") };
  } finally {
    closeSync(handle);
  }
}
