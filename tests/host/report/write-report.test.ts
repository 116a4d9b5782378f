import { createHash } from "node:crypto";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
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

  it("allows its own script by its SHA-256, and plotly's where there is a figure, packed", async () => {
    const hashOf = (text: string): string => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
    const script = (page: string): string => /<script type="module">([\s\S]*?)<\/script>/.exec(page)?.[1] as string;
    const bare = await pageOf();
    expect(bare).toContain(`script-src ${hashOf(script(bare))};`);
    const page = await pageOf(figure({ data: [{ type: "scatter" }], layout: {} }));
    const packed = /<script type="text\/plain" id="plotly">([A-Za-z0-9+/=]*)<\/script>/.exec(page)?.[1] as string;
    const plotly = gunzipSync(new Uint8Array(Buffer.from(packed, "base64"))).toString("utf8");
    expect(plotly).toContain("plotly.js");
    expect(page).toContain(`script-src ${hashOf(script(page))} ${hashOf(plotly)};`);
  });

  it("stays under 4 MB with plotly in it, which stands there once", async () => {
    const one = figure({ data: [{ type: "scatter", x: [1], y: [2] }], layout: {} });
    const page = await pageOf(one, one, one);
    expect(page.split('id="plotly"')).toHaveLength(2);
    expect(page.length).toBeLessThan(2.5e6);
  });

  it("shortens numbers to seven digits, and leaves whole ones whole", async () => {
    const page = await pageOf(figure({ data: [{ x: [1 / 3, 1764172800123], y: ["0.33333333333", 2] }] }));
    expect(page).toContain('"x":[0.3333333,1764172800123],"y":["0.33333333333",2]');
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
