import { basename, resolve } from "node:path";

/** The line under the report's heading: which kitchen, and the day it was made. */
export function subtitleOf(kitchen: string | null): string {
  const day = new Date().toISOString().slice(0, 10);
  return `${kitchen === null ? "Demo kitchen (invented)" : `Kitchen ${basename(resolve(kitchen))}`}, made ${day}`;
}
