import { type CellNames, cellNames } from "./cell-names";
import { textDigest } from "./text-digest";

/** What a cell's outputs rest on, as it stands in the cell's metadata. */
export interface Ran {
  /** digest of the code that ran */
  readonly source: string;
  /** digest of each file that it read, by what it is called */
  readonly reads: Readonly<Record<string, string>>;
  /** the digest of what each cell, by id, had run when this one took a name from it */
  readonly from: Readonly<Record<string, string>>;
}

/** A code cell as it stands now. */
export interface CellNow {
  readonly id: string;
  /** its place in the notebook, 1 for the first cell of whatever type */
  readonly number: number;
  readonly source: string;
  /** what its outputs rest on; null when it did not run, or nobody noted it */
  readonly ran: Ran | null;
}

/** A cell whose outputs are not what it would give now, and why. */
export interface StaleCell {
  readonly id: string;
  readonly number: number;
  readonly why: string;
}

/** One digest for all that a run rests on. */
export function ranDigest({ source, reads, from }: Ran): string {
  const sorted = (record: Readonly<Record<string, string>>): readonly string[] =>
    Object.entries(record)
      .map(([name, digest]) => `${name}\n${digest}`)
      .sort();
  return textDigest([source, ...sorted(reads), "", ...sorted(from)].join("\n\n"));
}

/** What a run rests on: its code, what it read, and the cells above or below that gave it its names. */
export function ranOf(options: {
  readonly source: string;
  readonly reads: Readonly<Record<string, string>>;
  /** cells that had run in the kernel before it, the first that ran first */
  readonly before: readonly CellNow[];
}): Ran {
  const { uses } = cellNames(options.source);
  const from: Record<string, string> = {};
  for (const name of uses) {
    const giver = options.before.findLast((cell) => cell.ran !== null && definesOf(cell).includes(name));
    if (giver?.ran) from[giver.id] = ranDigest(giver.ran);
  }
  return { source: textDigest(options.source), reads: options.reads, from };
}

/**
 * The code cells whose outputs are not what the notebook would give if it ran from the top: edited since, a file that they read
 * changed, or a cell that they take a name from changed, ran otherwise, stands below them or is gone.
 *
 * @param cells code cells in the order of the notebook
 * @param files digests of files as they are now, by what they are called; null for one that is gone. Those that are not named
 *   count as unchanged
 */
export function staleCells(
  cells: readonly CellNow[],
  files: Readonly<Record<string, string | null>>,
): readonly StaleCell[] {
  const places = new Map(cells.map((cell, at) => [cell.id, at]));
  const names = cells.map((cell) => cellNames(cell.source));
  const reasons: (string | null)[] = [];
  for (const [at, cell] of cells.entries())
    reasons.push(
      cell.ran === null ? null : reasonOf({ at, cell, ran: cell.ran, cells, names, places, files, reasons }),
    );
  return cells.flatMap(({ id, number }, at) => {
    const why = reasons[at];
    return why === null ? [] : [{ id, number, why }];
  });
}

interface Looked {
  readonly at: number;
  readonly cell: CellNow;
  readonly ran: Ran;
  readonly cells: readonly CellNow[];
  readonly names: readonly CellNames[];
  readonly places: ReadonlyMap<string, number>;
  readonly files: Readonly<Record<string, string | null>>;
  /** those of the cells above */
  readonly reasons: readonly (string | null)[];
}

function reasonOf({ at, cell, ran, cells, names, places, files, reasons }: Looked): string | null {
  if (textDigest(cell.source) !== ran.source) return "edited since it ran";
  for (const [name, digest] of Object.entries(ran.reads)) {
    const now = Object.hasOwn(files, name) ? files[name] : digest;
    if (now !== digest) return `${name} ${now === null ? "is gone" : "has changed"} since it ran`;
  }
  for (const [id, digest] of Object.entries(ran.from)) {
    const place = places.get(id);
    if (place === undefined) return "a cell that it took a name from was removed";
    const { number, ran: giver } = cells[place];
    if (place > at) return `it takes a name from cell ${number}, which stands below it`;
    if (reasons[place] !== null) return `cell ${number}, which it uses, is out of date`;
    if (giver === null || ranDigest(giver) !== digest) return `cell ${number}, which it uses, has changed since it ran`;
  }
  for (const name of names[at].uses) {
    const above = cells.slice(0, at).findLastIndex((_, one) => names[one].defines.includes(name));
    if (above >= 0 && !Object.hasOwn(ran.from, cells[above].id))
      return `cell ${cells[above].number} gives it ${name} now, and did not when it ran`;
  }
  return null;
}

function definesOf(cell: CellNow): readonly string[] {
  return cellNames(cell.source).defines;
}
