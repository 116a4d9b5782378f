import fc from "fast-check";
import { compareOutputs, type Notebook, type Output } from "slabwright-host";
import { describe, expect, it } from "vitest";

function notebook(...outputs: Output[]): Notebook {
  const cell = { id: "a", cell_type: "code" as const, metadata: {}, source: "", outputs };
  return { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [cell] };
}
const printed = (text: string | string[]): Output => ({ output_type: "stream", name: "stdout", text });
const shown = (data: Record<string, unknown>): Output => ({ output_type: "display_data", data, metadata: {} });
const whats = (one: Notebook, other: Notebook, relative?: number): string[] =>
  compareOutputs(one, other, { relative }).map(({ what }) => what);

describe("compareOutputs", () => {
  it("finds every notebook the same as itself, however its text is split", () => {
    fc.assert(
      fc.property(fc.string(), fc.jsonValue(), (text, value) => {
        const one = notebook(printed(text), shown({ "application/json": value }));
        const lines = text.match(/[^\n]*\n|[^\n]+$/g) ?? [];
        const other = notebook(printed(lines), shown({ "application/json": value }));
        expect(compareOutputs(one, other)).toEqual([]);
      }),
    );
  });

  it("lets numbers in text differ within the tolerance, and no more", () => {
    const one = notebook(printed("crisp at 12.0000001 min\n"));
    expect(whats(one, notebook(printed("crisp at 12.0000002 min\n")))).toEqual([]);
    expect(whats(one, notebook(printed("crisp at 12.001 min\n")))).toEqual([
      "output 1: stored 12.0000001, now 12.001 (+0.0083 %) at text",
    ]);
    expect(whats(one, notebook(printed("crisp at 12.001 min\n")), 1e-3)).toEqual([]);
    expect(whats(one, notebook(printed("burnt at 12.0000001 min\n")))[0]).toContain(
      'stored "crisp at ", now "burnt at "',
    );
  });

  it("goes into figures field by field", () => {
    const figure = (y: number[], title: string): Notebook =>
      notebook(shown({ "application/vnd.plotly.v1+json": { data: [{ y }], layout: { title } } }));
    expect(whats(figure([1, 2], "a"), figure([1, 2 + 1e-9], "a"))).toEqual([]);
    expect(whats(figure([1, 2], "a"), figure([1, 3], "a"))[0]).toContain(
      "stored 2, now 3 (+50 %) at application/vnd.plotly.v1+json.data.0.y.1",
    );
    expect(whats(figure([1], "a"), figure([1, 3], "a"))[0]).toContain("y.1 is there only in the new output");
    expect(whats(figure([1], "a"), figure([1], "b"))[0]).toContain('stored "a", now "b"');
  });

  it("says where in a table a number stands, and passes over what is tagged volatile", () => {
    const table = (cell: string): Notebook =>
      notebook(
        shown({
          "text/plain": `crisp ${cell}`,
          "text/html": `<table><thead><tr><th>slab</th><th>crisp <b>(min)</b></th></tr></thead><tr><td>a</td><td>7.1</td></tr><tr><td>b</td><td>${cell}</td></tr></table>`,
        }),
      );
    expect(whats(table("12.5"), table("12.0"))).toEqual([
      'output 1: stored 12.5, now 12.0 (-4 %) at text/html, row 2, column "crisp (min)"',
    ]);
    const tagged = table("12.5");
    tagged.cells[0].metadata.tags = ["volatile"];
    expect(compareOutputs(tagged, table("12.0"))).toEqual([]);
  });

  it("sees an output that is missing, new, or of another kind, and names the cell", () => {
    expect(compareOutputs(notebook(printed("1")), notebook())).toEqual([
      { cell: 1, what: "1 stored outputs, 0 new ones" },
    ]);
    expect(compareOutputs(notebook(), notebook(printed("1")))).toHaveLength(1);
    expect(compareOutputs(notebook(printed("1")), notebook(shown({ "text/plain": "1" })))).toHaveLength(1);
  });
});
