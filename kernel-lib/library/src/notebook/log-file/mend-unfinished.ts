import { closeSync, fstatSync, fsyncSync, ftruncateSync, openSync } from "node:fs";
import { addToHistory, type LogDeed, lastDeed } from "./log-history";
import { readBytes } from "./read-bytes";

/**
 * Cuts off the part of a line that a process left when it was ended while it wrote, as the log's history tells: only what
 * begins where that line should, and is no more than its beginning. Call it while the log is locked.
 *
 * @param now what the history says as the time of it
 * @returns the line that was never finished, or null when there is none
 */
export function mendUnfinished(log: string, now: string): LogDeed | null {
  const deed = lastDeed(log);
  if (deed === null || deed.what !== "add" || deed.after === null) return null;
  const handle = openSync(log, "r+");
  try {
    const { size } = fstatSync(handle);
    const line = new TextEncoder().encode(deed.after);
    const extra = size - deed.size;
    if (extra < 0 || extra >= line.length) return null;
    if (readBytes(handle, deed.size, extra).some((byte, at) => byte !== line[at])) return null;
    ftruncateSync(handle, deed.size);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
  const mended: LogDeed = { ...deed, at: now, what: "unfinished" };
  addToHistory(log, mended);
  return mended;
}
