import { createHash } from "node:crypto";
import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import { askLibrary } from "../command/ask-library";
import type {
  CheckedDraft,
  Glance,
  LoggedDraft,
  PlainTable,
  ProductNext,
  TrialForm,
  UndoneLog,
} from "./kitchen-answer";

/** A kitchen as its page asks of it. */
export interface AskedKitchen {
  /** its slips, its notices, its products and how much is logged of each */
  readonly glance: () => Promise<Glance>;
  /** the setting for each product, which takes seconds to work out */
  readonly answers: () => Promise<PlainTable>;
  /** what to do next with each product */
  readonly next: () => Promise<readonly ProductNext[]>;
  /** what the form for one trial begins with */
  readonly form: () => Promise<TrialForm>;
  readonly checkDraft: (cells: TypedCells) => Promise<CheckedDraft>;
  readonly logDraft: (cells: TypedCells, by: string | null) => Promise<LoggedDraft>;
  /** takes a trial that was logged last out of its log again */
  readonly undo: (file: string, trialId: string) => Promise<UndoneLog>;
}

/** What was typed, by heading of a log. */
export type TypedCells = Readonly<Record<string, string>>;

/** How many folders deep a kitchen's files lie. */
const DEEPEST = 4;

/** How many questions of forms may wait; a person has one or two open. */
const MOST_WAITING = 16;

/**
 * Asks the project's library of a kitchen, each time in a process of its own, one at a time. An answer is kept for as long as no file
 * of the kitchen changes. What a form asks has a queue of its own, as it must not wait for answers that take seconds.
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
  let waiting = 0;
  let lastOfForms: Promise<unknown> = Promise.resolve();
  const askNow = async <T>(name: string, ...args: readonly unknown[]): Promise<T> => {
    if (waiting >= MOST_WAITING) throw new Error("too many trials are being checked at once; wait a moment");
    waiting++;
    const answer = lastOfForms
      .catch(() => {})
      .then(() => askLibrary<T>(project, { door: "slabwright/notebook", name, args }));
    lastOfForms = answer;
    return answer.finally(() => waiting--);
  };
  return {
    glance: () => ask("kitchenGlance"),
    answers: () => ask("kitchenAnswers"),
    next: () => ask("kitchenNext"),
    form: () => askNow("trialForm", folder),
    checkDraft: (cells) => askNow("checkDraft", cells, { folder }),
    logDraft: (cells, by) => askNow("logDraft", cells, by === null ? { folder } : { folder, by }),
    undo: (file, trialId) => askNow("undoLog", file, { folder, trialId }),
  };
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
