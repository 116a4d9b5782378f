import type { Cell } from "slabwright-host";
import { describe, expect, it } from "vitest";
import { briefOf } from "../../../kernel-lib/host/src/report/brief";

const text = (source: string): Cell => ({ id: "a", cell_type: "markdown", metadata: {}, source });
const code = (tags: string[], ...data: Record<string, unknown>[]): Cell => ({
  id: "a",
  cell_type: "code",
  metadata: { tags },
  source: "1",
  outputs: data.map((one) => ({ output_type: "display_data", metadata: {}, data: one })),
});
const figure = { "application/vnd.plotly.v1+json": { data: [], layout: {} } };
const words = { "text/plain": "words" };
const notebook = (...cells: Cell[]) => ({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells });

describe("briefOf", () => {
  it("takes the opening, the first figure and every caution", () => {
    const { cells, figureCell } = briefOf(
      notebook(
        text("# Q?"),
        code([], words),
        code([], words, figure),
        text("more"),
        code([], figure),
        text("> Probe."),
      ),
    );
    expect([...cells]).toEqual([0, 2, 5]);
    expect(figureCell).toBe(2);
  });

  it("takes what is tagged in place of the first figure", () => {
    const { cells, figureCell } = briefOf(notebook(text("# Q?"), code([], figure), code(["summary"], words)));
    expect([...cells]).toEqual([0, 2]);
    expect(figureCell).toBeNull();
  });

  it("leaves out a notebook that shows neither, and a figure that opens the report already", () => {
    expect(briefOf(notebook(text("# Q?"), code([], words), text("> Probe."))).cells.size).toBe(0);
    expect(briefOf(notebook(text("# Q?"), code(["answer"], figure))).cells.size).toBe(0);
  });
});
