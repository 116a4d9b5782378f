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

  it("gives a cell whose id is none, or another cell's, a new one", () => {
    const cell = (id: unknown): object => ({ cell_type: "markdown", id, metadata: {}, source: "x" });
    const cells = [cell("a"), cell("a"), cell("not an id!"), cell(7), cell("")];
    const ids = parseNotebook(JSON.stringify({ nbformat: 4, nbformat_minor: 5, cells }), "x").cells.map(({ id }) => id);
    expect(ids[0]).toBe("a");
    expect(new Set(ids).size).toBe(5);
    for (const id of ids.slice(1)) expect(id).toMatch(/^[0-9a-f]{8}$/);
  });

  it("reads text behind a byte-order mark", () => {
    expect(parseNotebook('\ufeff{"nbformat":4,"nbformat_minor":5,"cells":[]}', "x").cells).toEqual([]);
  });

  const code = (outputs: unknown, more: object = {}): object => ({ cell_type: "code", source: "", outputs, ...more });
  it.each([
    [null, "must be a notebook of nbformat 4, got nbformat null"],
    [[], "must be a notebook of nbformat 4, got nbformat a list"],
    [{ nbformat: 3, worksheets: [] }, "must be a notebook of nbformat 4, got nbformat 3"],
    [{ nbformat: 4, cells: {} }, "must be a notebook of nbformat 4"],
    [{ nbformat: 4, nbformat_minor: "5", cells: [] }, "must have a whole number as nbformat_minor, got 5"],
    [{ nbformat: 4, metadata: [], cells: [] }, "must have an object as metadata, got a list"],
    [[null], "cell 1 must be an object, got null"],
    [["text"], "cell 1 must be an object, got text"],
    [[{ cell_type: "markdown" }], "cell 1 must have text or lines of text as source, got undefined"],
    [[{ cell_type: "raw", source: ["a", 1] }], "cell 1 must have text or lines of text as source, got a list"],
    [[{ cell_type: "raw", source: "", metadata: 1 }], "cell 1 must have an object as metadata, got 1"],
    [[{ cell_type: "raw", source: "", attachments: { a: "b" } }], "must have objects as attachments, got an object"],
    [[code("none")], "cell 1 must have a list of outputs, got none"],
    [[code([], { execution_count: "<b>" })], "cell 1 must have a whole number as execution_count, got <b>"],
    [[code([null])], "cell 1, output 1 must be an object, got null"],
    [[code([{ output_type: "pyout" }])], "must be of type stream, display_data, execute_result or error, got pyout"],
    [[code([{ output_type: "stream", text: "" }])], "cell 1, output 1 must name its stream, got undefined"],
    [[code([{ output_type: "stream", name: "stdout", text: 1 }])], "must have text or lines of text, got 1"],
    [[code([{ output_type: "display_data" }])], "cell 1, output 1 must have an object as data, got undefined"],
    [[code([{ output_type: "display_data", data: {}, metadata: "x" }])], "must have an object as metadata, got x"],
    [[code([{ output_type: "execute_result", data: {}, execution_count: -1 }])], "as execution_count, got -1"],
    [[code([{ output_type: "error", evalue: "" }])], "cell 1, output 1 must have text as ename, got undefined"],
    [[code([{ output_type: "error", ename: "", evalue: 1 }])], "must have text as evalue, got 1"],
    [[code([{ output_type: "error", ename: "", evalue: "", traceback: "x" }])], "lines of text as traceback, got x"],
  ])("refuses %j in one sentence", (given, sentence) => {
    const value = Array.isArray(given) && given.length > 0 ? { nbformat: 4, cells: given } : given;
    expect(() => parseNotebook(JSON.stringify(value), "bad.ipynb")).toThrow(
      /^parseNotebook: bad\.ipynb.* must [^\n]*$/,
    );
    expect(() => parseNotebook(JSON.stringify(value), "bad.ipynb")).toThrow(sentence);
  });

  it("refuses what nests so deep that writing it would overflow the stack", () => {
    const nested = (depth: number): string =>
      `{"nbformat":4,"cells":[],"metadata":{"x":${"[".repeat(depth)}${"]".repeat(depth)}}}`;
    expect(parseNotebook(nested(150), "x").cells).toEqual([]);
    expect(() => parseNotebook(nested(400_000), "x")).toThrow("must nest at most 200 levels deep");
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

  const titled = (source: string): string => {
    const cells = [{ id: "a", cell_type: "markdown" as const, metadata: {}, source }];
    return titleOf({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells }, "none");
  };
  it.each([
    ["# A title", "A title"],
    ["text\n\n###  *A* `title`  ##  \n\nmore", "A title"],
    ["#no title\n#######  nor this\n##\t1. Title", "1. Title"],
    ["#   \r\n# Title\r\n", "Title"],
    ["# ##", "##"],
    ["no title", "none"],
  ])("%j", (source, title) => expect(titled(source)).toBe(title));

  it("is cut after 200 characters", () => {
    expect(titled(`# ${"long ".repeat(100)}`)).toHaveLength(200);
  });
});
