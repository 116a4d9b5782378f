import { existsSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fail } from "../check/check";

/** The nearest folder `data` with a `pans.csv`, at or above the working folder; throws, naming `where`, when there is none. */
export function nearestData(where: string): string {
  for (let at = resolve("."); ; at = dirname(at)) {
    const candidate = join(at, "data");
    if (existsSync(join(candidate, "pans.csv"))) return candidate;
    if (dirname(at) === at)
      fail(where, "must be given when no folder data with a pans.csv is at or above the working folder", resolve("."));
  }
}
