import type { ICell } from "@jupyterlab/nbformat";
import type { Notebook } from "@jupyterlab/notebook";
import { choiceDialog } from "./choice-dialog";

/** A cell that was deleted, and where it stood. */
interface Deleted {
  /** when, ISO 8601 */
  readonly at: string;
  /** id of the cell above it; null for the first */
  readonly below: string | null;
  readonly cell: ICell;
}

/** How many are kept of a notebook, and how much of one, characters: a figure can be run again. */
const MOST = 20;
const LONGEST = 50_000;

/** Keeps the chosen cells, which are about to be deleted, in the browser, so that they can come back after a reload too. */
export function keepDeleted(notebook: Notebook, path: string): void {
  const at = new Date().toISOString();
  const gone = notebook.widgets.flatMap((cell, index): readonly Deleted[] => {
    if (!notebook.isSelectedOrActive(cell) || cell.model.sharedModel.getSource().trim() === "") return [];
    const whole = cell.model.toJSON();
    const { outputs: _, execution_count: __, ...bare } = whole;
    const isLong = JSON.stringify(whole).length > LONGEST;
    const kept = isLong && whole.cell_type === "code" ? { ...bare, outputs: [], execution_count: null } : whole;
    return [{ at, below: notebook.widgets[index - 1]?.model.id ?? null, cell: kept as ICell }];
  });
  write(path, [...gone.reverse(), ...deletedIn(path)].slice(0, MOST));
}

/** Whether a notebook has deleted cells that can come back. */
export function hasDeleted(path: string): boolean {
  return deletedIn(path).length > 0;
}

/** Puts the cell that was deleted last back where it stood. */
export function bringBackLast(notebook: Notebook, path: string): void {
  const [last] = deletedIn(path);
  if (last) bringBack(notebook, path, last);
}

/** Lists the deleted cells of a notebook, the last first; a click puts one back where it stood. */
export function deletedDialog(notebook: Notebook, path: string): void {
  const deleted = deletedIn(path);
  if (deleted.length === 0) throw new Error("no cell of this notebook was deleted in this browser");
  choiceDialog({
    label: "bring back a deleted cell",
    words: "Cells that were deleted in this browser. One that you choose goes back to where it stood.",
    choices: deleted.map((one) => {
      const first = [one.cell.source].flat().join("").trim().split("\n")[0].slice(0, 60);
      const when = new Date(one.at).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });
      return { label: `${first}  (${when})`, run: () => bringBack(notebook, path, one) };
    }),
  });
}

function bringBack(notebook: Notebook, path: string, one: Deleted): void {
  const ids = notebook.widgets.map((cell) => cell.model.id);
  const place = one.below === null ? 0 : ids.indexOf(one.below) + 1 || ids.length;
  const { id, ...rest } = one.cell;
  const isFree = typeof id === "string" && !ids.includes(id);
  notebook.model?.sharedModel.insertCell(place, (isFree ? { ...rest, id } : rest) as never);
  notebook.activeCellIndex = place;
  write(
    path,
    deletedIn(path).filter((other) => JSON.stringify(other) !== JSON.stringify(one)),
  );
}

function keyOf(path: string): string {
  return `slabwright deleted cells of ${path}`;
}

function deletedIn(path: string): readonly Deleted[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(path)) ?? "[]");
    return Array.isArray(kept) ? (kept as readonly Deleted[]) : [];
  } catch {
    return []; // a browser that keeps nothing, or something that is no list
  }
}

function write(path: string, deleted: readonly Deleted[]): void {
  try {
    localStorage.setItem(keyOf(path), JSON.stringify(deleted));
  } catch {
    // a browser that keeps nothing: the notebook's own undo is left
  }
}
