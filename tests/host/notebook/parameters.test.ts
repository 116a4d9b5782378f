import fc from "fast-check";
import type { Notebook } from "slabwright-host";
import { textOf } from "slabwright-host";
import { describe, expect, it } from "vitest";
import { parametersOf, withParameters } from "../../../kernel-lib/host/src/notebook/parameters";

function notebook(source: string, tags: string[] = ["parameters"]): Notebook {
  const cell = { id: "a", cell_type: "code" as const, metadata: { tags }, source, outputs: [] };
  return { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [cell] };
}
const SOURCE = `// where the slabs freeze
const freezerC = -18; // °C
const label: string = "still air";
const turned = false;
const looks = [14, 16];
const other = null;`;
const set = (asked: Record<string, string>): string =>
  textOf(withParameters(notebook(SOURCE), asked, "04.ipynb").cells[0].source);

describe("parameters of a notebook", () => {
  it("are the constants of its tagged cells, each with its kind of value", () => {
    expect(parametersOf(notebook(SOURCE), "04.ipynb").map(({ name, value, cell }) => [name, value, cell])).toEqual([
      ["freezerC", -18, 1],
      ["label", "still air", 1],
      ["turned", false, 1],
      ["looks", [14, 16], 1],
      ["other", null, 1],
    ]);
    expect(parametersOf(notebook(SOURCE, []), "04.ipynb")).toEqual([]);
    expect(() => parametersOf(notebook("const airC = 2 * 9;"), "04.ipynb")).toThrow(
      '04.ipynb: a line of cell 1, tagged parameters, must be like const freezerC = -18; got "const airC = 2 * 9;"',
    );
  });

  it("are set in place: nothing else of the cell changes", () => {
    expect(set({ freezerC: "-20", label: 'a "fan"', turned: "true", looks: "10,12.5", other: "x" })).toBe(
      SOURCE.replace("-18", "-20")
        .replace('"still air"', '"a \\"fan\\""')
        .replace("false", "true")
        .replace("[14, 16]", "[10,12.5]")
        .replace("null", '"x"'),
    );
    expect(set({ elsewhere: "1" })).toBe(SOURCE);
  });

  it.each([
    [{ freezerC: "cold" }, '--set freezerC must be a number, as in cell 1 of 04.ipynb (-18), got "cold"'],
    [{ freezerC: " " }, "must be a number"],
    [{ turned: "maybe" }, "--set turned must be true or false"],
    [{ looks: "10,soon" }, "--set looks must be a number"],
  ])("refuses a value of another kind: %o", (asked, says) => {
    expect(() => set(asked)).toThrow(says);
  });

  it("read back what was set, whatever the text", () => {
    fc.assert(
      fc.property(fc.string(), (label) => {
        const changed = withParameters(notebook(SOURCE), { label }, "04.ipynb");
        expect(parametersOf(changed, "04.ipynb")[1].value).toBe(label);
      }),
    );
  });
});
