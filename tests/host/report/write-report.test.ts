import { createHash } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Cell, type Notebook, type Output, writeReport } from "slabwright-host";
import { afterAll, describe, expect, it } from "vitest";

const folder = mkdtempSync(join(tmpdir(), "slabwright-test-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function pageOf(...outputs: unknown[]): Promise<string> {
  const cell: Cell = { id: "a", cell_type: "code", metadata: {}, source: "1", outputs: outputs as Output[] };
  const notebook: Notebook = { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [cell] };
  const path = join(folder, "report.html");
  await writeReport({ notebooks: [{ path: "a.ipynb", notebook }], path });
  return readFileSync(path, "utf8");
}
const shown = (data: unknown): unknown => ({ output_type: "display_data", metadata: {}, data });
const figure = (value: unknown): unknown => shown({ "application/vnd.plotly.v1+json": value, "text/plain": "words" });

describe("writeReport", () => {
  it("names a stream stdout or stderr, whatever the file calls it", async () => {
    for (const [name, class_] of [
      ['stderr"><script>1</script>', "stdout"],
      ["stderr", "stderr"],
      ["constructor", "stdout"],
    ])
      expect(await pageOf({ output_type: "stream", name, text: "said" })).toContain(
        `<pre class="out ${class_}">said</pre>`,
      );
  });

  it("allows its own two scripts by their SHA-256, and none without a figure", async () => {
    expect(await pageOf()).toContain("script-src 'none';");
    const page = await pageOf(figure({ data: [{ type: "scatter" }], layout: {} }));
    const scripts = [...page.matchAll(/<script>([\s\S]*?)<\/script>/g)].map(([, text]) => text);
    const hashes = scripts.map((text) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`);
    expect(hashes).toHaveLength(2);
    expect(page).toContain(`script-src ${hashes.join(" ")};`);
  });

  it("lets plotly evaluate text only where a figure's kind needs it", async () => {
    expect(await pageOf(figure({ data: [{ type: "scatter" }] }))).not.toContain("'unsafe-eval'");
    expect(await pageOf(figure({ data: [{ type: "scatter" }, { type: "scattergl" }] }))).toContain("' 'unsafe-eval';");
  });

  it.each([null, "text", 5, [], {}, { data: "text" }, { data: null }])(
    "shows the words where the figure is %j",
    async (value) => expect(await pageOf(figure(value))).toContain('<pre class="out">words</pre>'),
  );

  it("passes over what is no text in a bundle", async () => {
    const page = await pageOf(shown({ "text/html": { a: 1 }, "image/png": 5, "text/plain": "words" }));
    expect(page).toContain('<pre class="out">words</pre>');
    expect(await pageOf(shown({ "text/plain": null }))).toContain("an output of type text/plain");
    expect(await pageOf(shown(JSON.parse('{"__proto__":{"text/html":"x"},"text/plain":"words"}')))).toContain("words");
  });
});
