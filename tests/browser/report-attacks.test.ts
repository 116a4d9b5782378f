/// <reference lib="dom" />
// Every field that nbformat 4.5 has is filled with script in turn; none may run, with the page's policy and without it.
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { type Notebook, parseNotebook, writeReport } from "slabwright-host";
import { afterAll, beforeAll, expect, it } from "vitest";
import { describeInBrowser, drawAll, launch, watchedPage } from "./chromium";

const POLICY = /<meta http-equiv="Content-Security-Policy"[^>]*>/;

/** Script number `mark` in every dress that HTML, markdown, maths and figures know. */
function payload(mark: number): string {
  const code = `(window.ran=window.ran||[]).push(${mark})`;
  return [
    `<script>${code}</script>`,
    `"><script>${code}</script>`,
    `'><script>${code}</script>`,
    `--></script></style></title></textarea></noscript><script>${code}</script>`,
    `" onmouseover="${code}" onfocus="${code}" autofocus tabindex="1" x="`,
    `' onpointerenter='${code}' onanimationstart='${code}' style='animation:x 1s' x='`,
    `<img src=x onerror=${code}>`,
    `<svg onload=${code}><animate onbegin=${code} attributeName=x></svg>`,
    `<svg><script>${code}</script></svg>`,
    `<math><mtext><mglyph><style><img src=x onerror=${code}></style></mglyph></mtext></math>`,
    `<details open ontoggle=${code}>x</details>`,
    `<iframe srcdoc="<script>parent.${code}</script>"></iframe>`,
    `<object data="javascript:${code}"></object><embed src="javascript:${code}">`,
    `<body onload=${code}><base href="https://attacker.example/"><meta http-equiv="refresh" content="0;url=javascript:${code}">`,
    `<noscript><p title="</noscript><img src=x onerror=${code}>"></noscript>`,
    `<a href="javascript:${code}">x</a> <a href=" java&#10;script:${code}">x</a>`,
    `[x](javascript:${code}) [x](<javascript:${code}>) <javascript:${code}> ![x](x"onerror="${code})`,
    `![" onerror="${code}](attachment:a.png) ![x](attachment:%22onerror=%22${code})`,
    `$\\href{javascript:${code}}{x}$ $\\text{<img src=x onerror=${code}>}$ $\\style{" onmouseover="${code}}{x}$`,
    '```js"><script>',
    `${code}</script>`,
    "```",
  ].join("\n");
}

const picture = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";
const figure = {
  data: [{ type: "scatter", mode: "markers", x: [6, 9], y: [9, 12], name: "trials", text: ["a", "b"] }],
  layout: {
    title: { text: "Crisp time" },
    xaxis: { title: { text: "thickness (mm)" } },
    annotations: [{ text: "note", x: 6, y: 9 }],
    images: [{ source: `data:image/png;base64,${picture}`, x: 0, y: 1, sizex: 0.1, sizey: 0.1 }],
  },
};

/** A notebook in which every field of nbformat 4.5 stands. */
const whole = {
  cells: [
    {
      attachments: { "a.png": { "image/png": picture } },
      cell_type: "markdown",
      id: "words",
      metadata: { name: "words", tags: ["words"], jupyter: { source_hidden: false } },
      source: "# A title\n\n![picture](attachment:a.png)\n\n## A part\n",
    },
    { attachments: {}, cell_type: "raw", id: "raw", metadata: { format: "text/html" }, source: "raw text" },
    {
      cell_type: "code",
      execution_count: 1,
      id: "code",
      metadata: { collapsed: false, execution: { "iopub.execute_input": "now" }, scrolled: "auto", tags: ["terminal"] },
      outputs: [
        { name: "stdout", output_type: "stream", text: "printed\n" },
        { name: "stderr", output_type: "stream", text: ["said\n"] },
        { data: { "text/plain": "plain" }, execution_count: 1, metadata: {}, output_type: "execute_result" },
        ...[
          ["text/html", "<table><tr><td style='text-align:right'>9</td></tr></table>"],
          ["text/markdown", "a *word*"],
          ["text/latex", "$x$"],
          ["image/svg+xml", "<svg xmlns='http://www.w3.org/2000/svg'><rect width='9' height='9'/></svg>"],
          ["image/png", picture],
          ["image/jpeg", picture],
          ["image/gif", picture],
          ["application/javascript", "1"],
          ["application/json", { key: "value" }],
          ["application/vnd.plotly.v1+json", figure],
        ].map(([mime, value]) => ({
          data: { [mime as string]: value },
          metadata: { [mime as string]: { width: 9 } },
          output_type: "display_data",
        })),
        {
          data: { "application/vnd.plotly.v1+json": figure, "image/svg+xml": "<svg/>", "text/plain": "summary" },
          metadata: {},
          output_type: "display_data",
        },
        { ename: "Error", evalue: "words", output_type: "error", traceback: ["Error: words", "at line 1"] },
      ],
      source: ["let a = 1;\n", "a"],
    },
  ],
  metadata: {
    authors: [{ name: "nobody" }],
    kernelspec: { display_name: "TypeScript", name: "tslab" },
    language_info: { codemirror_mode: "js", file_extension: ".ts", mimetype: "text/typescript", name: "typescript" },
    orig_nbformat: 4,
    title: "A title",
  },
  nbformat: 4,
  nbformat_minor: 5,
};

type Path = readonly (string | number)[];

/** The path of every value and of every key that JSON holds: a key's path ends in `"(key)"`. */
function places(value: unknown, path: Path = []): Path[] {
  if (value === null || typeof value !== "object") return [path];
  const inner = Object.entries(value).flatMap(([key, one]) =>
    places(one, [...path, Array.isArray(value) ? +key : key]),
  );
  const keys = Array.isArray(value) ? [] : Object.keys(value).map((key) => [...path, key, "(key)"]);
  return [...inner, ...keys];
}

/** The whole notebook with `script` behind the text at a place, in place of a number, or behind a key. */
function attacked(path: Path, script: string): unknown {
  const notebook = structuredClone(whole) as unknown as Record<string, unknown>;
  const atKey = path.at(-1) === "(key)";
  const way = atKey ? path.slice(0, -2) : path.slice(0, -1);
  const key = path[path.length - (atKey ? 2 : 1)];
  const holder = way.reduce<Record<string, unknown>>((one, step) => one[step] as Record<string, unknown>, notebook);
  const old = holder[key];
  if (atKey) {
    delete holder[key];
    holder[`${key}${script}`] = old;
  } else holder[key] = typeof old === "string" ? `${old}${script}` : script;
  const cells = notebook.cells as unknown[] | undefined;
  if (Array.isArray(cells) && path[0] === "cells" && typeof path[1] === "number") notebook.cells = [cells[path[1]]];
  else if (Array.isArray(cells)) notebook.cells = cells.slice(0, 1);
  const outputs = (notebook.cells as { outputs?: unknown[] }[] | undefined)?.[0]?.outputs;
  if (path[2] === "outputs" && typeof path[3] === "number" && Array.isArray(outputs))
    (notebook.cells as { outputs: unknown[] }[])[0].outputs = [outputs[path[3]]];
  return notebook;
}

describeInBrowser("the report against script in every field of nbformat", () => {
  const paths = places(whole);
  const refused: string[] = [];
  let browser: Browser;
  let guarded: string;
  let bare: string;
  beforeAll(async () => {
    browser = await launch();
    const folder = mkdtempSync(join(tmpdir(), "slabwright-test-"));
    const notebooks: { path: string; notebook: Notebook }[] = [];
    for (const [mark, path] of paths.entries()) {
      const text = JSON.stringify(attacked(path, payload(mark)));
      try {
        notebooks.push({ path: `${path.join("-")}${payload(mark)}.ipynb`, notebook: parseNotebook(text, "attacked") });
      } catch (error) {
        refused.push(path.join("."));
        expect((error as Error).message).toMatch(/^parseNotebook: attacked/);
      }
    }
    const file = join(folder, "report.html");
    await writeReport({ notebooks, path: file, title: `Title${payload(9001)}`, subtitle: `Line${payload(9002)}` });
    guarded = file;
    bare = join(folder, "bare.html");
    writeFileSync(bare, readFileSync(file, "utf8").replace(POLICY, ""));
  }, 60_000);
  afterAll(() => browser?.close());

  async function ranOn(file: string): Promise<{ ran: number[]; complaints: string[]; strange: string[] }> {
    const home = pathToFileURL(file).href;
    const { page, complaints } = await watchedPage(browser, home, { offline: true });
    await page.goto(home);
    await drawAll(page);
    await page.evaluate(() => {
      for (const one of document.querySelectorAll("details")) one.open = true;
      for (const one of document.querySelectorAll("main *, header *, nav *")) {
        for (const kind of ["mouseover", "pointerenter", "focus", "animationstart"])
          one.dispatchEvent(new Event(kind, { bubbles: true }));
      }
    });
    const strange = await page.evaluate(() => {
      const found: string[] = [];
      for (const one of document.querySelectorAll("*")) {
        for (const { name } of one.attributes) if (name.startsWith("on")) found.push(`${one.tagName} ${name}`);
        const href = one.getAttribute("href") ?? one.getAttribute("xlink:href") ?? "";
        if (/^\s*(javascript|data|vbscript):/i.test(href) && one.tagName.toLowerCase() === "a") found.push(href);
        if (/^(iframe|object|embed|base)$/i.test(one.tagName)) found.push(one.tagName);
        if (one.tagName === "SCRIPT" && !one.hasAttribute("data-for") && one.parentElement !== document.body)
          found.push("script");
      }
      return found;
    });
    const ran = await page.evaluate(() => (window as { ran?: number[] }).ran ?? []);
    await page.context().close();
    return { ran, complaints, strange };
  }

  it("tries every field, and refuses only what would be no notebook", () => {
    expect(paths.length).toBeGreaterThan(150);
    const fields = new Set(paths.flat().map(String));
    for (const field of ["id", "cell_type", "source", "metadata", "attachments", "execution_count", "output_type"])
      expect(fields).toContain(field);
    for (const field of [
      "name",
      "text",
      "data",
      "ename",
      "evalue",
      "traceback",
      "kernelspec",
      "language_info",
      "title",
    ])
      expect(fields).toContain(field);
    for (const path of refused)
      expect(path).toMatch(
        /nbformat(_minor)?$|cell_type|output_type|execution_count$|\(key\)$/, // numbers and words that nbformat lists; a field's own name
      );
  });

  it("runs none of it, and has nothing to complain of", async () => {
    const { ran, complaints, strange } = await ranOn(guarded);
    expect(ran.map((mark) => paths[mark]?.join(".") ?? mark)).toEqual([]);
    expect(strange).toEqual([]);
    // plotly draws a figure whose places are script as far as it can, and says that they are no numbers
    const notNumbers = /attribute \w+: (Trailing garbage|Expected (number|length)), "[^"]*NaN|ERR_INVALID_URL/;
    expect(complaints.filter((complaint) => !notNumbers.test(complaint))).toEqual([]);
  }, 120_000);

  it("runs none of it without the page's policy either: the escaping holds alone", async () => {
    const { ran, strange } = await ranOn(bare);
    expect(ran.map((mark) => paths[mark]?.join(".") ?? mark)).toEqual([]);
    expect(strange).toEqual([]);
  }, 120_000);

  it("has a policy that stops script which stood on the page raw, and without it that script would run", async () => {
    const folder = mkdtempSync(join(tmpdir(), "slabwright-test-"));
    const outcomes: Record<string, number[]> = {};
    for (const [name, file] of Object.entries({ guarded, bare })) {
      const path = join(folder, `${name}.html`);
      const raw = payload(7).replace(/<base[^>]*><meta[^>]*>/, "");
      writeFileSync(
        path,
        readFileSync(file, "utf8").replace(/<main id="main">[\s\S]*<\/main>/, () => `<main id="main">${raw}</main>`),
      );
      const home = pathToFileURL(path).href;
      const { page } = await watchedPage(browser, home, { offline: true });
      await page.goto(home);
      await page.waitForTimeout(300);
      outcomes[name] = await page.evaluate(() => (window as { ran?: number[] }).ran ?? []);
      await page.context().close();
    }
    expect(outcomes.guarded).toEqual([]);
    expect(outcomes.bare.length).toBeGreaterThanOrEqual(5);
  });

  it("names each script of the page by its SHA-256 and allows no other", () => {
    const policy = POLICY.exec(readFileSync(guarded, "utf8"))?.[0] ?? "";
    const scripts = /script-src ([^;"]*)/.exec(policy)?.[1].split(" ") ?? [];
    expect(scripts).toHaveLength(2);
    for (const source of scripts) expect(source).toMatch(/^'sha256-[A-Za-z0-9+/]{43}='$/);
    expect(policy).toMatch(/default-src 'none'.*base-uri 'none'.*form-action 'none'/);
  });

  it("keeps its styles: the sheet, the alignment of cells, the figures", async () => {
    const home = pathToFileURL(guarded).href;
    const { page } = await watchedPage(browser, home, { offline: true });
    await page.goto(home);
    await page.waitForFunction(() => document.body.dataset.figures !== "0");
    const style = (selector: string, name: string): Promise<string> =>
      page
        .locator(selector)
        .first()
        .evaluate((one, name) => getComputedStyle(one).getPropertyValue(name), name);
    expect(await style("body", "margin-top")).toBe("0px");
    expect(await style("main", "max-width")).toBe("1088px");
    expect(await style("pre.stderr", "border-left-width")).toBe("3px");
    expect(await style("td", "text-align")).toBe("right");
    expect(await style(".canvas", "height")).toBe("440px");
    expect(await style(".js-plotly-plot .plotly .main-svg", "position")).toBe("absolute");
    await page.context().close();
  });
});
