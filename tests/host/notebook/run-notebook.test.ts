import { mkdtemp, readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Notebook, type Run, readNotebook, runNotebook, startKernel, terminalText } from "slabwright-host";
import { describe, expect, it } from "vitest";

const at = (name: string): string => join(__dirname, "..", "notebooks", `${name}.ipynb`);

async function run(name: string, cellLimitS = 30): Promise<Run & { copy: Notebook }> {
  const copyTo = join(await mkdtemp(join(tmpdir(), "slabwright-test-")), "copy.ipynb");
  const outcome = await runNotebook({ path: at(name), copyTo, cellLimitS });
  return { ...outcome, copy: await readNotebook(copyTo) };
}

describe("runNotebook", () => {
  it("keeps outputs of every kind in the standard shape", async () => {
    const { failure, copy } = await run("every-output");
    expect(failure).toBeNull();
    const outputs = copy.cells.map((cell) => cell.outputs);
    expect(outputs[1]).toEqual([
      { output_type: "stream", name: "stdout", text: ["thickness <b>9.5</b> mm\n"] },
      { output_type: "stream", name: "stderr", text: ["a notice\n"] },
    ]);
    expect(outputs[2]).toMatchObject([
      { output_type: "display_data", data: { "application/vnd.plotly.v1+json": { data: [{ x: [6, 9, 12] }] } } },
    ]);
    expect(outputs[5], "a later cell updated it").toMatchObject([{ data: { "text/plain": ["after"] } }]);
    expect(outputs[6]).toEqual([{ output_type: "stream", name: "stdout", text: ["42\n"] }]);
    expect(copy.cells.map((cell) => cell.execution_count)).toEqual([undefined, 1, 2, 3, 4, 5, 6, null]);
    expect(terminalText(copy)).toBe("decision: keep at 9.5 mm");
  });

  it("drops what the page noted of an earlier run, and keeps a cell's other metadata", async () => {
    const folder = await mkdtemp(join(tmpdir(), "slabwright-test-"));
    const metadata = {
      tags: ["answer"],
      slabwright: { ran: { source: "s", reads: { "kitchen/other.csv": "d" }, from: {} } },
    };
    const cell = { cell_type: "code", id: "a", metadata, execution_count: 3, outputs: [], source: "1;" };
    const path = join(folder, "a.ipynb");
    await writeFile(path, JSON.stringify({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [cell] }));
    const { notebook } = await runNotebook({
      path,
      kernel: startKernel({ folder: join(__dirname, "..", "notebooks") }),
    });
    expect(notebook.cells[0].metadata).toEqual({ tags: ["answer"] });
  });

  it("keeps the text of a display with broken JSON, 50,000 lines, and 20 of 120 MB of displays", async () => {
    const { failure, copy } = await run("floods");
    expect(failure).toBeNull();
    const [broken, lines, displays] = copy.cells.map((cell) => cell.outputs ?? []);
    expect(broken).toEqual([
      {
        output_type: "display_data",
        data: { "application/vnd.plotly.v1+json": "{ broken", "text/plain": ["{ broken"] },
        metadata: {},
      },
      { output_type: "stream", name: "stdout", text: ["after\n"] },
    ]);
    expect(lines).toEqual([
      { output_type: "stream", name: "stdout", text: Array.from({ length: 50_000 }, (_, line) => `${line}\n`) },
    ]);
    expect(JSON.stringify(displays).length).toBeLessThan(20_100_000);
    expect(displays.filter(({ output_type }) => output_type === "display_data")).toHaveLength(9);
    expect(displays.slice(9)).toEqual([
      {
        output_type: "stream",
        name: "stderr",
        text: ["A display of 2.0 MB is left out: a cell may show 20 MB.\n"],
      },
      { output_type: "stream", name: "stdout", text: ["the end\n"] },
      { output_type: "stream", name: "stderr", text: ["51 displays of this cell, 102.0 MB, are left out.\n"] },
    ]);
  });

  it("stops at the first failing cell, names it, and still writes the copy", async () => {
    const { failure, copy } = await run("fails");
    expect(failure).toMatchObject({ cell: 3, source: expect.stringContaining("throw new RangeError") });
    expect(failure?.message).toContain("RangeError: slabThickness: batchG must be > 0 g, got -12");
    expect(failure?.message).not.toContain("node_modules/tslab");
    expect(copy.cells[2].outputs).toMatchObject([
      { output_type: "stream", name: "stderr", text: ["a notice before\n"] },
      { output_type: "error", ename: "RangeError", evalue: "slabThickness: batchG must be > 0 g, got -12" },
    ]);
    expect(copy.cells[3]).toMatchObject({ execution_count: null, outputs: [] });
  });

  it("shows what the compiler said", async () => {
    const { failure, copy } = await run("does-not-compile");
    expect(failure?.message.split("\n").filter((line) => line.includes(" - "))).toEqual([
      "1:7 - Type 'string' is not assignable to type 'number'.",
      "2:7 - Type 'number' is not assignable to type 'string'.",
    ]);
    expect(copy.cells[0].outputs).toMatchObject([{ output_type: "error", ename: "CompileError" }]);
  });

  it("interrupts a cell over its limit", async () => {
    const { failure } = await run("loops", 0.5);
    expect(failure?.message).toContain("longer than its limit of 0.5 s");
  });

  it("names the cell that ended the kernel", async () => {
    const { failure, copy } = await run("ends-the-kernel");
    expect(failure).toMatchObject({ cell: 2, message: expect.stringContaining("exit code 3") });
    expect(copy.cells[0].outputs).toMatchObject([{ text: ["2\n"] }]);
  });

  it("heeds the tags raises-exception and skip-execution", async () => {
    const { failure, copy } = await run("may-fail");
    expect(failure).toBeNull();
    expect(copy.cells[0].outputs).toMatchObject([{ output_type: "error", evalue: "on purpose" }]);
    expect(copy.cells[1].outputs).toMatchObject([{ text: ["went on\n"] }]);
    expect(copy.cells[2].execution_count).toBeNull();
  });

  it("leaves the notebook itself as it was", async () => {
    const before = await readFile(at("every-output"), "utf8");
    await run("every-output");
    expect(await readFile(at("every-output"), "utf8")).toBe(before);
  });

  it("names a file that is no notebook", async () => {
    const path = join(await mkdtemp(join(tmpdir(), "slabwright-test-")), "no.ipynb");
    await writeFile(path, "{");
    await expect(runNotebook({ path })).rejects.toThrow(`${path} must be JSON`);
    await writeFile(path, '{"nbformat": 3, "worksheets": []}');
    await expect(runNotebook({ path })).rejects.toThrow("must be a notebook of nbformat 4, got nbformat 3");
  });
});
