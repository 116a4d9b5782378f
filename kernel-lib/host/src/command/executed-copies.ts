import { basename, join } from "node:path";
import { type Notebook, readNotebook } from "../notebook/notebook";
import type { CommandKitchen } from "./kitchen";
import { notebookPaths } from "./project";

/** What an executed copy says of itself, in its metadata. */
export interface RunStamp {
  /** the kitchen's name */
  readonly kitchen: string;
  /** the kitchen's folder as seen from the `out` folder */
  readonly folder: string;
  /** when the run began that the copy is of, the same in all copies of it: ISO 8601, UTC */
  readonly run: string;
}

/** An executed copy. */
export interface ExecutedCopy {
  readonly path: string;
  readonly notebook: Notebook;
}

/** The executed copies of a kitchen. */
export interface ExecutedCopies {
  /** when the last run began; null when none is there */
  readonly run: string | null;
  /** those of the last run, in the order of their names */
  readonly copies: readonly ExecutedCopy[];
  /** names of the others: of an earlier run, of another kitchen, or without a word about either */
  readonly others: readonly string[];
}

/** The executed copies in a kitchen's `out`, parted into those of its last run and all others. */
export async function executedCopies(kitchen: CommandKitchen): Promise<ExecutedCopies> {
  const paths = await notebookPaths(join(kitchen.out, "notebooks"));
  const all = await Promise.all(paths.map(async (path) => ({ path, notebook: await readNotebook(path) })));
  const runOf = ({ notebook }: ExecutedCopy): string | null => {
    const stamp = stampOf(notebook);
    return stamp !== null && stamp.folder === kitchen.fromOut ? stamp.run : null;
  };
  const run = all.map(runOf).reduce((last, one) => (one !== null && (last === null || one > last) ? one : last), null);
  const isLast = (copy: ExecutedCopy): boolean => run !== null && runOf(copy) === run;
  return {
    run,
    copies: all.filter(isLast),
    others: all.filter((copy) => !isLast(copy)).map(({ path }) => basename(path)),
  };
}

/** What copies of a run that begins now, or began at `run`, carry. */
export function newStamp(kitchen: CommandKitchen, run: string = new Date().toISOString()): RunStamp {
  return { kitchen: kitchen.name, folder: kitchen.fromOut, run };
}

/** What a copy says of itself; null when it says nothing that can be read. */
export function stampOf(notebook: Notebook): RunStamp | null {
  const { kitchen, folder, run } = (notebook.metadata.slabwright ?? {}) as Record<string, unknown>;
  return typeof kitchen === "string" && typeof folder === "string" && typeof run === "string"
    ? { kitchen, folder, run }
    : null;
}

/** The report's heading and the line under it: the kitchen, the day of the run, and what the kitchen says about itself. */
export function headingsOf(
  { kitchen, run }: RunStamp,
  { about }: CommandKitchen,
): { readonly title: string; readonly subtitle: string } {
  return { title: kitchen, subtitle: [`Settings and trials, ${run.slice(0, 10)}.`, about ?? ""].join(" ").trimEnd() };
}
