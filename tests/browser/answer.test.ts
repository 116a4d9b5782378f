/// <reference lib="dom" />
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";
import { type Notebook, runNotebook, writeReport } from "slabwright-host";
import { afterAll, beforeAll, expect, it } from "vitest";
import { tableHtml } from "../../kernel-lib/library/src/views/table/table-html";
import { describeInBrowser, launch, watchedPage } from "./chromium";

const HEADINGS = Array.from({ length: 19 }, (_, at) => `heading ${at}`);
const WIDE = tableHtml({
  kind: "table",
  title: "wide",
  columns: HEADINGS.map((heading) => ({ heading })),
  rows: [0, 1].map((row) => HEADINGS.map((_, at) => (at === 18 ? null : `row ${row} cell ${at} says so much`))),
  notes: [],
});
const html = (value: string): Notebook => ({
  nbformat: 4,
  nbformat_minor: 5,
  metadata: {},
  cells: [
    {
      id: "a",
      cell_type: "code",
      metadata: {},
      source: "1",
      outputs: [{ output_type: "display_data", metadata: {}, data: { "text/html": value } }],
    },
  ],
});

/** Texts of a page's cells that are not wholly within its width. */
function outOfSight(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll("td")].flatMap((cell) => {
      const { left, right, height } = cell.getBoundingClientRect();
      const dash = cell.textContent === "\u2013";
      return dash || (left >= 0 && right <= window.innerWidth && height > 0) ? [] : (cell.textContent as string);
    }),
  );
}

describeInBrowser("the answer in a browser", () => {
  let browser: Browser;
  let home: string;
  beforeAll(async () => {
    browser = await launch();
    const path = join(mkdtempSync(join(tmpdir(), "slabwright-test-")), "report.html");
    const run = await runNotebook({ path: resolve(__dirname, "../../notebooks/00-the-settings.ipynb") });
    const wide = { path: "wide.ipynb", notebook: html(WIDE) };
    await writeReport({ notebooks: [wide, run], path, title: "A kitchen", subtitle: "a day" });
    home = pathToFileURL(path).href;
  }, 120_000);
  afterAll(() => browser?.close());

  it.each([
    { width: 1200, height: 800, colorScheme: "light" },
    { width: 1200, height: 800, colorScheme: "dark" },
    { width: 390, height: 844, colorScheme: "light" },
    { width: 390, height: 844, colorScheme: "dark" },
  ] as const)("opens with the setting inside the first screen at $width px in the $colorScheme", async (look) => {
    const { width, height, colorScheme } = look;
    const { page, complaints } = await watchedPage(browser, home, { viewport: { width, height }, colorScheme });
    await page.goto(home);
    expect(await page.locator("table").first().locator("caption").textContent()).toBe("The setting for each product");
    const row = page.locator("#answer tbody tr").first();
    const box = (await row.boundingBox())!;
    expect(box.y + box.height).toBeLessThan(height);
    expect(await row.locator('[data-label="card"]').textContent()).toMatch(/^[\d.]+\smin$/);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
    expect(await outOfSight(page)).toEqual([]);
    const ground = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    const brightness = Math.max(...(ground.match(/\d+/g) ?? []).map(Number));
    expect(brightness > 128).toBe(colorScheme === "light");
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it.each([
    { paper: "A4", width: 695, height: 1013 },
    { paper: "Letter", width: 717, height: 946 },
  ])("prints the answer on one page of $paper, and no table loses a column", async ({ width, height }) => {
    const { page } = await watchedPage(browser, home, { viewport: { width, height } });
    await page.goto(home);
    await page.locator("nav > details").evaluate((all) => all.setAttribute("open", ""));
    await page.getByLabel("print the working too").check();
    await page.emulateMedia({ media: "print" });
    const box = (await page.locator("#answer table").boundingBox())!;
    expect(box.y + box.height).toBeLessThan(height);
    expect(await outOfSight(page)).toEqual([]);
    await page.context().close();
  });

  it("shows each heading beside its cell where columns do not fit, and leaves out what says nothing", async () => {
    const { page } = await watchedPage(browser, home, { viewport: { width: 1200, height: 800 } });
    await page.goto(home);
    const cells = page.locator("table", { hasText: "wide" }).locator("tbody tr").first().locator("td");
    const labels = await cells.evaluateAll((all) => all.map((cell) => getComputedStyle(cell, "::before").content));
    expect(labels.slice(1, 18)).toEqual(HEADINGS.slice(1, 18).map((heading) => `"${heading} "`));
    expect(await cells.nth(18).isVisible()).toBe(false);
    await page.context().close();
  });

  it("does not show the answer twice", async () => {
    const { page } = await watchedPage(browser, home);
    await page.goto(home);
    expect(await page.locator("caption", { hasText: "The setting for each product" }).count()).toBe(1);
    await page.context().close();
  });
});
