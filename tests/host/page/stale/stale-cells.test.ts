import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CellNow, ranDigest, ranOf, staleCells } from "../../../../kernel-lib/host/page/stale/stale-cells";

const LOG = "kitchen/trials/week.csv";

/** A notebook of code cells, none of which ran. */
const notebook = (...sources: readonly string[]): CellNow[] =>
  sources.map((source, at) => ({ id: `c${at + 1}`, number: at + 1, source, ran: null }));

/** Runs cells in an order, by number, as a kernel would, and gives the notebook as it then stands. */
function run(
  cells: readonly CellNow[],
  order: readonly number[],
  reads: Readonly<Record<number, object>> = {},
): CellNow[] {
  const now = [...cells];
  const before: CellNow[] = [];
  for (const number of order) {
    const cell = now[number - 1];
    const ran = ranOf({ source: cell.source, reads: (reads[number] ?? {}) as Record<string, string>, before });
    now[number - 1] = { ...cell, ran };
    before.push(now[number - 1]);
  }
  return now;
}

const edited = (cells: readonly CellNow[], number: number, source: string): CellNow[] =>
  cells.map((cell) => (cell.number === number ? { ...cell, source } : cell));
const said = (cells: readonly CellNow[], files: Record<string, string | null> = {}): string[] =>
  staleCells(cells, files).map(({ number, why }) => `${number}: ${why}`);

const SOURCES = ["const kitchen = loadKitchen();", "const pan = kitchen.pans[0];", "show(pan);", "show(1);"];
const fresh = run(notebook(...SOURCES), [1, 2, 3, 4], { 1: { [LOG]: "aa" } });

describe("staleCells", () => {
  it("finds nothing after a run from the top, nor in a cell that never ran", () => {
    expect(said(fresh, { [LOG]: "aa" })).toEqual([]);
    expect(said(notebook(...SOURCES))).toEqual([]);
  });

  it("finds an edited cell and all that take from it, and no other", () => {
    expect(said(edited(fresh, 2, "const pan = kitchen.pans[1];"))).toEqual([
      "2: edited since it ran",
      "3: cell 2, which it uses, is out of date",
    ]);
  });

  it("finds a cell above that was edited and run alone", () => {
    const again = run(edited(fresh, 2, "const pan = kitchen.pans[1];"), [1, 2], { 1: { [LOG]: "aa" } });
    expect(said(again)).toEqual(["3: cell 2, which it uses, has changed since it ran"]);
  });

  it("is calm about a cell that ran again as it was", () => {
    expect(said(run(fresh, [1, 2], { 1: { [LOG]: "aa" } }))).toEqual([]);
  });

  it("finds a file that changed or is gone, and what takes from its reader", () => {
    expect(said(fresh, { [LOG]: "bb" })).toEqual([
      `1: ${LOG} has changed since it ran`,
      "2: cell 1, which it uses, is out of date",
      "3: cell 2, which it uses, is out of date",
    ]);
    expect(said(fresh, { [LOG]: null })[0]).toBe(`1: ${LOG} is gone since it ran`);
  });

  it("finds a name that came from below, one whose cell was removed, and one that a new cell gives", () => {
    const below = run(notebook("show(pan);", "const pan = 1;"), [2, 1]);
    expect(said(below)).toEqual(["1: it takes a name from cell 2, which stands below it"]);
    expect(said(fresh.filter(({ number }) => number !== 2))).toEqual([
      "3: a cell that it took a name from was removed",
    ]);
    const between = [...fresh.slice(0, 2), { ...notebook("const pan = 2;")[0], id: "new" }, ...fresh.slice(2)];
    expect(said(between)).toEqual(["3: cell 1 gives it pan now, and did not when it ran"]);
  });

  it("holds for random notebooks: a run from the top is calm, and an edit marks exactly what hangs on it", () => {
    const letters = ["a", "b", "c", "d", "e", "f"];
    const cell = fc.record({ takes: fc.subarray(letters), gives: fc.constantFrom(...letters) });
    fc.assert(
      fc.property(fc.array(cell, { minLength: 1, maxLength: 8 }), fc.nat(), (cells, pick) => {
        const source = ({ takes, gives }: (typeof cells)[number], more = ""): string =>
          `const ${gives} = [${takes.filter((name) => name !== gives).join(", ")}]${more};`;
        const all = cells.map((one) => source(one));
        const order = all.map((_, at) => at + 1);
        const ran = run(notebook(...all), order);
        expect(said(ran)).toEqual([]);
        const at = pick % cells.length;
        const touched = new Set([at]);
        for (let later = at + 1; later < cells.length; later++) {
          const givers = cells[later].takes
            .filter((name) => name !== cells[later].gives)
            .map((name) => cells.slice(0, later).findLastIndex((one) => one.gives === name));
          if (givers.some((giver) => touched.has(giver))) touched.add(later);
        }
        const stale = staleCells(edited(ran, at + 1, source(cells[at], ".length")), {});
        expect(stale.map(({ number }) => number - 1)).toEqual([...touched].sort((one, other) => one - other));
      }),
    );
  });
});

describe("ranDigest", () => {
  it("is one for one run, whatever the order in which files and cells were noted", () => {
    const one = { source: "s", reads: { a: "1", b: "2" }, from: { x: "3", y: "4" } };
    const other = { source: "s", reads: { b: "2", a: "1" }, from: { y: "4", x: "3" } };
    expect(ranDigest(one)).toBe(ranDigest(other));
    expect(ranDigest({ ...one, reads: { a: "1" }, from: { b: "2", ...one.from } })).not.toBe(ranDigest(one));
  });
});
