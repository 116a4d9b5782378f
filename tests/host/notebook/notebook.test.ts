import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { notebookText, parseNotebook, titleOf } from "slabwright-host";
import { describe, expect, it } from "vitest";

const file = join(__dirname, "..", "notebooks", "every-output.ipynb");

describe("notebookText", () => {
  it("splits text into lines and keeps JSON outputs whole", async () => {
    const notebook = parseNotebook(await readFile(file, "utf8"), file);
    notebook.cells[1].outputs = [
      { output_type: "stream", name: "stdout", text: "a\nb" },
      { output_type: "display_data", data: { "text/plain": "x\ny\n", "a/b+json": ["x"] }, metadata: {} },
    ];
    notebook.cells[1].metadata = { trusted: true, tags: ["kept"] };
    const [, cell] = JSON.parse(notebookText(notebook)).cells;
    expect(cell.outputs[0].text).toEqual(["a\n", "b"]);
    expect(cell.outputs[1].data).toEqual({ "text/plain": ["x\n", "y\n"], "a/b+json": ["x"] });
    expect(cell.metadata).toEqual({ tags: ["kept"] });
  });

  it("reads what it wrote as the same notebook", async () => {
    const once = notebookText(parseNotebook(await readFile(file, "utf8"), file));
    expect(notebookText(parseNotebook(once, file))).toBe(once);
  });
});

describe("parseNotebook", () => {
  it("gives cells of older minor versions the ids that 4.5 asks for", () => {
    const old = {
      nbformat: 4,
      nbformat_minor: 2,
      metadata: {},
      cells: [{ cell_type: "markdown", metadata: {}, source: "x" }],
    };
    const notebook = parseNotebook(JSON.stringify(old), "old.ipynb");
    expect(notebook.nbformat_minor).toBe(5);
    expect(notebook.cells[0].id).toMatch(/^[0-9a-f]{8}$/);
  });

  it("names a cell type that does not exist", () => {
    const bad = { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [{ cell_type: "heading", source: "" }] };
    expect(() => parseNotebook(JSON.stringify(bad), "bad.ipynb")).toThrow(
      "bad.ipynb: a cell must be code, markdown or raw, got heading",
    );
  });
});

describe("titleOf", () => {
  it("is the first heading, or the fallback", async () => {
    const notebook = parseNotebook(await readFile(file, "utf8"), file);
    expect(titleOf(notebook, "file name")).toBe("Every kind of output");
    expect(titleOf({ ...notebook, cells: [] }, "file name")).toBe("file name");
  });
});
