import { closeSync, fstatSync, fsyncSync, ftruncateSync, openSync } from "node:fs";
import { writeAll } from "./whole-file";

/**
 * Adds text to the end of a file, all of it or none, and forces it to the disk before it returns. What was there is not
 * written again: its bytes, permissions and links stay. When the disk is full the file is cut back to what it was.
 *
 * @returns how many bytes the file held before
 */
export function appendBytes(path: string, text: string): number {
  const handle = openSync(path, "r+");
  try {
    const { size } = fstatSync(handle);
    try {
      writeAll(handle, new TextEncoder().encode(text), size);
      fsyncSync(handle);
    } catch (error) {
      ftruncateSync(handle, size);
      throw error;
    }
    return size;
  } finally {
    closeSync(handle);
  }
}
