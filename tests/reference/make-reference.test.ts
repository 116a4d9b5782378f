import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, posix, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { crispPriors } from "slabwright/crisp";
import { coreLimit, STORAGE_LIVES } from "slabwright/safety";
import { serveNotebooks } from "slabwright-host";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { documents } from "../../kernel-lib/reference/src/documents";
import { doorHeadings } from "../../kernel-lib/reference/src/door-headings";
import { DOORS } from "../../kernel-lib/reference/src/doors";
import { type LibraryFacts, modelTables } from "../../kernel-lib/reference/src/model-tables";
import type { ReferenceOptions } from "../../kernel-lib/reference/src/reference-options";
import { checkSources, docstringSources } from "../../kernel-lib/reference/src/source-list";
import { describeInBrowser, launch, watchedPage } from "../browser/chromium";
import { projectWith } from "../host/server/project";

// loaded by path: typedoc is a package of that workspace alone, and its types of no other
const { makeReference } = (await import(resolve("kernel-lib/reference/src/make-reference.ts"))) as {
  makeReference: (options: ReferenceOptions) => Promise<void>;
};

// below the project, so that the declarations find the packages they speak of
mkdirSync("out", { recursive: true });
const place = mkdtempSync("out/reference-test-");
const pagesIn = (out: string): Map<string, string> =>
  new Map(
    readdirSync(out, { recursive: true, encoding: "utf8" })
      .filter((path) => path.endsWith(".html"))
      .map((path) => [path.replaceAll("\\", "/"), readFileSync(join(out, path), "utf8")]),
  );
afterAll(() => rmSync(place, { recursive: true, force: true }));

const TUTORIAL = "From_an_empty_kitchen_to_a_shared_page.html";

describe("the reference of the library", () => {
  const source = "Somebody <b>(1900)</b>";
  const closeness = readdirSync("kernel-lib/reference/pages/models").map((path) => ({
    page: path.replace(".md", ""),
    what: "`lethality` | <b>",
    against: "x",
    source,
    measure: "K",
    found: 1,
    heldTo: 2,
  }));
  const contents = {
    closeness,
    docstrings: docstringSources("kernel-lib/library/dist"),
    checks: checkSources(closeness),
    tables: modelTables({ coreLimit, storageLives: STORAGE_LIVES, crispPriors } as unknown as LibraryFacts),
    tutorial: readFileSync("kernel-lib/reference/pages/tutorial.md", "utf8").replace(/^```csv.*/gm, "```txt"),
  };
  const out = join(place, "pages");
  let pages = new Map<string, string>();
  let names: Record<string, string> = {};
  beforeAll(async () => {
    mkdirSync(join(place, "work"));
    await makeReference({
      library: "kernel-lib/library",
      ...documents("kernel-lib/reference/pages", join(place, "work/pages"), contents),
      work: join(place, "work"),
      out,
    });
    pages = pagesIn(out);
    names = JSON.parse(readFileSync(join(out, "names.json"), "utf8"));
  }, 120_000);

  it("has a page for every name of every door, with its imports", () => {
    const missing = DOORS.flatMap(({ room }) => {
      const door = room === "" ? "slabwright" : `slabwright/${room}`;
      return doorHeadings(readFileSync(join("kernel-lib/library/src", room, "index.ts"), "utf8"))
        .flatMap((heading) => heading.names)
        .filter((name) => {
          const page = pages.get(names[name] ?? "");
          return page === undefined || !page.includes(`${name} } from &quot;${door}&quot;`);
        })
        .map((name) => `${door} ${name}`);
    });
    expect(missing).toEqual([]);
    expect(Object.keys(names).length).toBeGreaterThan(500);
  });

  it("leads nowhere that is not there", () => {
    const anchors = new Map(
      [...pages].map(([path, html]) => [path, new Set([...html.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id))]),
    );
    const broken: string[] = [];
    let followed = 0;
    for (const [path, html] of pages)
      for (const [, target] of html.matchAll(/ (?:href|src)="([^"]*)"/g)) {
        if (/^(https?:|data:)/.test(target)) continue;
        followed++;
        const [file, anchor] = target.split("#");
        const found = file === "" ? path : posix.normalize(posix.join(dirname(path), file.replace(/\?.*/, "")));
        const known = found.endsWith(".html") ? anchors.get(found) : new Set([anchor]);
        const there = found.startsWith("assets/") || known !== undefined;
        if (!there || (anchor && found.endsWith(".html") && !known!.has(decodeURIComponent(anchor))))
          broken.push(`${path}: ${target}`);
      }
    expect(broken).toEqual([]);
    expect(followed).toBeGreaterThan(10_000);
  });

  it("fills the pages with checks and sources, as text", () => {
    const page = pages.get("How_it_is_computed/Storage.html")!;
    expect(page).toMatch(/lethality.html"><code>lethality<\/code><\/a> \| &lt;b&gt;; with x<\/td>/);
    expect(page).toContain("1\u00a0K</td>");
    const sources = pages.get("Sources.html")!;
    expect(sources).toMatch(/Bigelow W.D. \(1921\)[^\n]*lethality/);
    expect(sources).toContain("Somebody &lt;b&gt;(1900)&lt;/b&gt;");
    expect([...pages.values()].filter((html) => html.includes("{{"))).toEqual([]);
  });

  describeInBrowser("in a browser, from its files", () => {
    it("finds a function, a unit, a word of a page and a source, offline and dark, at a phone's width; axe finds nothing grave", async () => {
      const browser = await launch();
      try {
        const context = await browser.newContext({
          offline: true,
          colorScheme: "dark",
          viewport: { width: 390, height: 800 },
        });
        const page = await context.newPage();
        const faults: string[] = [];
        page.on("pageerror", (error) => faults.push(error.message));
        await page.goto(pathToFileURL(join(out, "index.html")).href);
        const found = async (words: string): Promise<string> => {
          await page.keyboard.press("Control+k");
          await page.fill("#tsd-search-input", words);
          await page.waitForSelector("#tsd-search-results li");
          const results = await page.$$eval("#tsd-search-results li", (items) => items.map((item) => item.textContent));
          await page.keyboard.press("Escape");
          await page.reload();
          return results.join("\n");
        };
        expect(await found("coreTimeClosedForm")).toContain("slabwright/heat.coreTimeClosedForm");
        expect(await found("W/(m²·K)")).toContain("coefficientWm2K");
        expect(await found("[kg/m³]")).toContain("densityKgM3");
        expect(await found("tiles:")).toContain("empty kitchen");
        expect(await found("Bigelow")).toContain("lethality");
        await page.goto(pathToFileURL(join(out, names.coreTimeClosedForm)).href);
        // nothing is wider than the phone, and what is written can be read on its ground
        expect(await page.evaluate("document.documentElement.scrollWidth")).toBeLessThanOrEqual(390);
        expect(await page.evaluate("getComputedStyle(document.body).backgroundColor")).toMatch(
          /^rgb\(([0-6]?\d), ([0-6]?\d), ([0-6]?\d)\)$/,
        );
        // typedoc's own: a heading that folds holds a link to itself, and parameters stand two levels below the title
        const known = ["nested-interactive", "heading-order"];
        for (const path of [
          "index.html",
          "slabwright.html",
          names.coreTimeClosedForm,
          "How_it_is_computed/Storage.html",
          TUTORIAL,
        ]) {
          await page.goto(pathToFileURL(join(out, path)).href);
          await page.addScriptTag({ path: require.resolve("axe-core/axe.min.js") });
          const found = await page.evaluate<string[]>(
            "axe.run().then(({ violations }) => violations.filter(({ impact }) => impact !== 'minor').map(({ id }) => id))",
          );
          expect(
            found.filter((id) => !known.includes(id)),
            path,
          ).toEqual([]);
        }
        expect(faults).toEqual([]);
      } finally {
        await browser.close();
      }
    }, 60_000);
  });

  describeInBrowser("served", () => {
    it("runs its own scripts, finds names, and breaks no rule of its policy", async () => {
      const server = await serveNotebooks({ folder: projectWith().notebooks, reference: out });
      const browser = await launch();
      try {
        const { page, complaints } = await watchedPage(browser, server.origin);
        await page.goto(server.address);
        await page.waitForURL(`${server.origin}/`);
        await page.getByRole("link", { name: "reference" }).click();
        await page.locator("h1", { hasText: "slabwright reference" }).waitFor();
        await page.keyboard.press("Control+k");
        await page.fill("#tsd-search-input", "coreTimeClosedForm");
        await page.locator("#tsd-search-results a").first().click();
        await page.locator("h1", { hasText: "coreTimeClosedForm" }).waitFor();
        await page.locator("#tsd-theme").selectOption("dark", { force: true });
        await page.reload();
        expect(await page.evaluate("document.documentElement.dataset.theme")).toBe("dark");
        expect(complaints).toEqual([]);
      } finally {
        await browser.close();
        await server.close();
      }
    }, 60_000);
  });

  it("asks nobody else for anything", () => {
    const asking = [...pages].flatMap(([path, html]) =>
      [...html.matchAll(/<(?:script|link|img|iframe)[^>]*(?:src|href)="(?:https?:)?\/\/[^"]*"/g)].map(
        ([tag]) => `${path}: ${tag}`,
      ),
    );
    expect(asking).toEqual([]);
  });

  it("explains a name at the cook's door as its room does, and links names in a docstring", () => {
    expect(pages.get("slabwright.html")).toContain('href="slabwright/trials/variantOf.html"');
    const page = pages.get(names.coreTimeClosedForm)!;
    expect(page).toMatch(/<a href="coreTime.html"><code>coreTime<\/code><\/a>/);
    expect(page).toMatch(/>Range<[\s\S]*>Example<[\s\S]*9.8375[\s\S]*>Reference</);
  });
});

describe("hostile docstrings", () => {
  const hostile = `<img src=x onerror="alert(1)"> <script>alert(2)</script> [go](javascript:alert(3)) &lt;b&gt; {@link alert}`;
  let pages = new Map<string, string>();
  beforeAll(async () => {
    const library = join(place, "hostile");
    const write = (path: string, text: string): void => {
      mkdirSync(dirname(join(library, path)), { recursive: true });
      writeFileSync(join(library, path), text);
    };
    write("src/index.ts", `// <b>heading</b>\n\nexport { odd } from "./odd/odd";\n`);
    write("src/odd/index.ts", `// <i>other</i>\n\nexport { odd } from "./odd";\n`);
    write("dist/index.d.ts", `export { odd } from "./odd/odd";\n`);
    write("dist/odd/index.d.ts", `export { odd } from "./odd";\n`);
    write(
      "dist/odd/odd.d.ts",
      `/**\n * What ${hostile}.\n *\n * x = ${hostile}\n *\n * @param options ${hostile}\n * @returns ${hostile}\n *\n * Range: ${hostile}\n *\n * @example\n * odd("${hostile.replaceAll('"', "'")}"); // → \`\`\`\n *\n * Reference: ${hostile}\n */\nexport declare function odd(options: "<script>alert(4)</script>"): "<u>";\n`,
    );
    const work = join(place, "hostile-work");
    mkdirSync(work);
    await makeReference({
      library,
      documents: [],
      readme: "none",
      work,
      out: join(place, "hostile-pages"),
      doors: [
        { room: "", purpose: `${hostile}` },
        { room: "odd", purpose: "odd" },
      ],
    });
    pages = pagesIn(join(place, "hostile-pages"));
  }, 120_000);

  it("are shown as text", () => {
    const page = pages.get("slabwright/odd/odd.html")!;
    expect(page.split("alert(1)").length).toBeGreaterThan(7);
    for (const [path, html] of pages) {
      // what stands between quotes in a tag is a value, whatever it looks like
      const tags = html.replace(/="[^"]*"/g, "");
      expect(tags, path).not.toMatch(/<img|<script>alert|<b>|<i>|<u>/);
      expect(html, path).not.toContain(`href="javascript:`);
      // the only scripts are the page's own
      expect(html.match(/<script/g)?.length, path).toBe(
        html.match(/<script (?:defer|async)|<script>document\.documentElement/g)?.length,
      );
    }
  });
});
