import { mkdtempSync, readdirSync, readFileSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import Ajv from "ajv-draft-04";
import {
  compareOutputs,
  notebookText,
  type Run,
  runNotebook,
  tagsOf,
  textOf,
  titleOf,
  writeReport,
} from "slabwright-host";
import { describe, expect, it, vi } from "vitest";
import { describeInBrowser, drawAll, launch, printedPages, watchedPage } from "../browser/chromium";

vi.setConfig({ testTimeout: 180_000 });

const root = resolve(__dirname, "../..");
const names = readdirSync(join(root, "notebooks")).filter((name) => name.endsWith(".ipynb"));
const schema = JSON.parse(readFileSync(join(root, "tests/published/nbformat/nbformat.v4.5.schema.json"), "utf8"));
const isValid = new Ajv({ strict: false }).compile(schema);

const runs: Run[] = [];

describe.each(names)("notebooks/%s", (name) => {
  let run: Run;

  it("runs from end to end on a real kernel", async () => {
    run = await runNotebook({ path: join(root, "notebooks", name) });
    runs.push(run);
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
      for (const tag of tagsOf(cell)) expect(["answer", "terminal", "parameters", "summary"]).toContain(tag);
  });
});

describeInBrowser("the demo's report", () => {
  it("is under 4 MB, draws every figure offline, and prints its summary on at most 12 pages of A4 and of Letter", async () => {
    expect(runs.map(({ path }) => path)).toEqual(names.map((name) => join(root, "notebooks", name)));
    const path = join(mkdtempSync(join(tmpdir(), "slabwright-test-")), "report.html");
    await writeReport({ notebooks: runs, path });
    expect(statSync(path).size).toBeLessThan(4e6);
    const home = pathToFileURL(path).href;
    const browser = await launch();
    try {
      const { page, complaints } = await watchedPage(browser, home, { offline: true });
      await page.goto(home);
      for (const format of ["A4", "Letter"] as const) {
        const pages = await printedPages(page, format);
        expect(pages).toBeGreaterThan(2);
        expect(pages).toBeLessThanOrEqual(12);
      }
      expect(await drawAll(page)).toBeGreaterThan(names.length);
      expect(await page.locator("figure.undrawn").count()).toBe(0);
      expect(complaints).toEqual([]);
    } finally {
      await browser.close();
    }
  });
});
