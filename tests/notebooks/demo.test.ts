import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import Ajv from "ajv-draft-04";
import { compareOutputs, notebookText, type Run, runNotebook, tagsOf, textOf, titleOf } from "slabwright-host";
import { describe, expect, it, vi } from "vitest";

vi.setConfig({ testTimeout: 180_000 });

const root = resolve(__dirname, "../..");
const names = readdirSync(join(root, "notebooks")).filter((name) => name.endsWith(".ipynb"));
const schema = JSON.parse(readFileSync(join(root, "tests/published/nbformat/nbformat.v4.5.schema.json"), "utf8"));
const isValid = new Ajv({ strict: false }).compile(schema);

describe.each(names)("notebooks/%s", (name) => {
  let run: Run;

  it("runs from end to end on a real kernel", async () => {
    run = await runNotebook({ path: join(root, "notebooks", name) });
    expect(run.failure).toBeNull();
    expect(isValid(JSON.parse(notebookText(run.notebook))), JSON.stringify(isValid.errors)).toBe(true);
  });

  it("gives the same once more, in another time zone and language", async () => {
    const environment = { TZ: "Asia/Kathmandu", LANG: "de_DE.UTF-8", LC_ALL: "de_DE.UTF-8" };
    const again = await runNotebook({ path: join(root, "notebooks", name), environment });
    expect(compareOutputs(run.notebook, again.notebook)).toEqual([]);
  });

  it("says something in every form: each figure carries words, plotly's data and a still picture", () => {
    const shown = run.notebook.cells.flatMap((cell) => cell.outputs ?? []);
    expect(shown.length).toBeGreaterThan(0);
    for (const output of shown) {
      if (output.output_type !== "display_data") continue;
      expect(textOf(output.data["text/plain"] as string).trim()).not.toBe("");
      if ("application/vnd.plotly.v1+json" in output.data) {
        expect(textOf(output.data["image/svg+xml"] as string)).toMatch(/^<svg[\s\S]*<\/svg>$/);
      }
    }
    expect(shown.filter(({ output_type }) => output_type === "error")).toEqual([]);
  });

  it("opens with a numbered title, is set for the kernel by name, and stores no path of this machine", () => {
    const { metadata, cells } = run.notebook;
    expect(titleOf(run.notebook, "")).toMatch(/^\d+\. /);
    expect(metadata.kernelspec).toMatchObject({ name: "tslab", language: "typescript" });
    expect(JSON.stringify(run.notebook)).not.toContain(root);
    const ids = cells.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const cell of cells)
      for (const tag of tagsOf(cell)) expect(["answer", "terminal", "parameters"]).toContain(tag);
  });
});
