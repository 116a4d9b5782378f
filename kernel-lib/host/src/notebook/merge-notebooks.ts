import { type Cell, type Notebook, textOf } from "./notebook";

/**
 * Two people's versions of a notebook as one that holds every cell of both. Cells are told by their ids: one that both have and that
 * reads the same stands once, one that reads otherwise stands twice, the second's behind the first's with an id of its own; cells of
 * the second alone stand behind the cell that they follow there. Outputs stay only with cells that both have alike.
 */
export function mergeNotebooks(first: Notebook, second: Notebook): Notebook {
  const merged: Cell[] = first.cells.map((cell) => structuredClone(cell));
  const taken = new Set(merged.map(({ id }) => id));
  let after = 0;
  for (const cell of second.cells) {
    const at = merged.findIndex(({ id }) => id === cell.id);
    if (at >= 0 && isAlike(merged[at], cell)) {
      after = at + 1;
      continue;
    }
    const copy = { ...structuredClone(cell), id: freeId(cell.id, taken) };
    if (copy.cell_type === "code") Object.assign(copy, { outputs: [], execution_count: null });
    taken.add(copy.id);
    after = at >= 0 ? at + 1 : after;
    merged.splice(after, 0, copy);
    after++;
  }
  return { ...structuredClone(first), cells: merged };
}

function isAlike(one: Cell, other: Cell): boolean {
  return one.cell_type === other.cell_type && textOf(one.source) === textOf(other.source);
}

function freeId(id: string, taken: ReadonlySet<string>): string {
  if (!taken.has(id)) return id;
  for (let number = 2; ; number++) {
    const other = `${id.slice(0, 60)}-${number}`;
    if (!taken.has(other)) return other;
  }
}
