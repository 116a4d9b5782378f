import { readSync } from "node:fs";

/** The bytes of an open file from a place on; fewer when the file ends before. */
export function readBytes(handle: number, from: number, count: number): Uint8Array {
  const bytes = new Uint8Array(count);
  let at = 0;
  while (at < count) {
    const read = readSync(handle, bytes, at, count - at, from + at);
    if (read === 0) break;
    at += read;
  }
  return bytes.subarray(0, at);
}
