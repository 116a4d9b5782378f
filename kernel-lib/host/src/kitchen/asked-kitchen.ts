import { createHash } from "node:crypto";
import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import { askLibrary } from "../command/ask-library";
import type { Glance, PlainTable } from "./kitchen-answer";

/** A kitchen as its page asks of it. */
export interface AskedKitchen {
  /** its slips, its notices, its products and how much is logged of each */
  readonly glance: () => Promise<Glance>;
  /** the setting for each product, which takes seconds to work out */
  readonly answers: () => Promise<PlainTable>;
}

/** How many folders deep a kitchen's files lie. */
const DEEPEST = 4;

/**
 * Asks the project's library of a kitchen, each time in a process of its own, one at a time. An answer is kept for as long as no file
 * of the kitchen changes.
 */
export function askedKitchen(options: { readonly project: string; readonly folder: string }): AskedKitchen {
  const { project, folder } = options;
  const kept = new Map<string, { readonly stamp: string; readonly answer: Promise<unknown> }>();
  let last: Promise<unknown> = Promise.resolve();
  const ask = async <T>(name: string): Promise<T> => {
    const stamp = await stampOf(folder);
    const known = kept.get(name);
    if (known?.stamp === stamp) return known.answer as Promise<T>;
    const call = { door: "slabwright/notebook", name, args: [folder] };
    const answer = last.catch(() => {}).then(() => askLibrary<T>(project, call));
    last = answer;
    kept.set(name, { stamp, answer });
    answer.catch(() => kept.get(name)?.answer === answer && kept.delete(name));
    return answer;
  };
  return { glance: () => ask("kitchenGlance"), answers: () => ask("kitchenAnswers") };
}

/** Changes when a file below `folder` is written, added or removed; what runs write there does not count. */
async function stampOf(folder: string): Promise<string> {
  const hash = createHash("sha256");
  const look = async (path: string, depth: number): Promise<void> => {
    const entries = await readdir(join(folder, path), { withFileTypes: true }).catch(() => []);
    for (const entry of entries.sort((one, other) => (one.name < other.name ? -1 : 1))) {
      const below = join(path, entry.name);
      if (below === "out" || entry.name === "node_modules" || entry.name.startsWith(".")) continue;
      if (entry.isDirectory() && depth > 1) await look(below, depth - 1);
      if (!entry.isFile()) continue;
      const facts = await stat(join(folder, below)).catch(() => null);
      hash.update(`${below}\0${facts?.size}\0${facts?.mtimeMs}\0`);
    }
  };
  await look("", DEEPEST);
  return hash.digest("hex");
}
