import fc from "fast-check";
import { type Cell, type Notebook, textOf } from "slabwright-host";
import { describe, expect, it } from "vitest";
import { mergeNotebooks } from "../../../kernel-lib/host/src/notebook/merge-notebooks";

const notebook = (cells: readonly (readonly [id: string, source: string])[]): Notebook => ({
  nbformat: 4,
  nbformat_minor: 5,
  metadata: {},
  cells: cells.map(([id, source]): Cell => ({ id, cell_type: "code", metadata: {}, source, outputs: [] })),
});
const read = ({ cells }: Notebook): string[] => cells.map(({ source }) => textOf(source));

describe("mergeNotebooks", () => {
  it("puts what the second has beside what the first has, in the second's order", () => {
    const first = notebook([
      ["a", "1"],
      ["b", "2"],
      ["c", "3"],
    ]);
    const second = notebook([
      ["n", "0"],
      ["a", "1"],
      ["b", "2, otherwise"],
      ["m", "2.5"],
      ["c", "3"],
    ]);
    const merged = mergeNotebooks(first, second);
    expect(read(merged)).toEqual(["0", "1", "2", "2, otherwise", "2.5", "3"]);
    expect(merged.cells.map(({ id }) => id)).toEqual(["n", "a", "b", "b-2", "m", "c"]);
    expect(mergeNotebooks(first, first)).toEqual(first);
  });

  it("never drops a cell of either, keeps the first's order, and gives each an id of its own", () => {
    const cells = fc.uniqueArray(fc.tuple(fc.constantFrom("a", "b", "c", "d", "e", "a-2", "b-2"), fc.string()), {
      selector: ([id]) => id,
    });
    fc.assert(
      fc.property(cells, cells, (one, other) => {
        const [first, second] = [notebook(one), notebook(other)];
        const merged = mergeNotebooks(first, second);
        const sources = read(merged);
        for (const [, source] of [...one, ...other]) expect(sources).toContain(source);
        const ids = merged.cells.map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
        const own = new Set<string>(one.map(([id]) => id));
        expect(ids.filter((id) => own.has(id))).toEqual(one.map(([id]) => id));
      }),
    );
  });
});
