/// <reference lib="dom" />
import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Locator, Page } from "playwright-core";
import { svgOf, tableHtml } from "slabwright/views";
import { type Cell, type Notebook, writeReport } from "slabwright-host";
import { afterAll, beforeAll, expect, it } from "vitest";
import { axeFindings, describeInBrowser, drawAll, launch, printedPages, watchedPage } from "./chromium";

const EVIL = `"'><img src=x onerror="window.ran=1"></title></style></script><script>window.ran=1</script>`;

/** What becomes so, on a busy machine too. */
const soon = <T>(look: () => Promise<T>) => expect.poll(look, { timeout: 10_000 });

let count = 0;
const cellOf = (cell_type: Cell["cell_type"], source: string, more: Partial<Cell> = {}): Cell => ({
  id: `c${count++}`,
  cell_type,
  metadata: {},
  source,
  ...more,
});
const shown = (data: Record<string, unknown>, tags: string[] = []): Cell =>
  cellOf("code", "show(it);", {
    metadata: { tags },
    outputs: [{ output_type: "display_data", metadata: {}, data }],
  });
const notebookOf = (...cells: Cell[]): { path: string; notebook: Notebook } => ({
  path: `${EVIL}.ipynb`,
  notebook: { nbformat: 4, nbformat_minor: 5, metadata: {}, cells },
});

const table = (columns: readonly string[], rows: readonly (readonly (string | number | null)[])[]): string =>
  tableHtml({
    kind: "table",
    title: "The settings",
    columns: columns.map((heading) => ({ heading })),
    rows: rows.map((row) => [...row]),
    notes: ["Probe the thickest piece."],
  });
const ANSWER = table(
  ["product", "card", "note"],
  [
    ["oat bars", "12.5 min (11.0 to 14.1)", "plain"],
    ["rye, thin", "9 min", `=HYPERLINK("x")`],
    [EVIL, null, "−3.5"],
    ["lentil bites", "(19 min)", "two\nlines"],
  ],
);
const WIDE = table(
  Array.from({ length: 9 }, (_, at) => `heading ${at}`),
  Array.from({ length: 30 }, (_, row) => Array.from({ length: 9 }, (_, at) => `row ${row} cell ${at} has some words`)),
);
function figureCell(title: string): Cell {
  const figure = {
    kind: "figure" as const,
    data: [
      {
        type: "scatter",
        mode: "markers",
        name: "trials",
        x: [6, 9, 12],
        y: [8.25, 11, 15],
        text: ["T-1", EVIL, "T-3"],
      },
      { type: "scatter", mode: "lines", name: EVIL, x: [6, 12], y: [8, 14.5] },
    ],
    layout: {
      title: { text: title },
      xaxis: { title: { text: "thickness (mm)" } },
      yaxis: { title: { text: "crisp time (min)" } },
    },
    summary: `${title}. 11 min at 9 mm.`,
  };
  const { data, layout, summary } = figure;
  return shown({
    "application/vnd.plotly.v1+json": { data, layout },
    "image/svg+xml": svgOf(figure),
    "text/plain": summary,
  });
}
const prose = Array.from(
  { length: 12 },
  (_, at) => `Paragraph ${at} says a little, and then a little more of it.`,
).join("\n\n");
const part = (number: number): { path: string; notebook: Notebook } =>
  notebookOf(
    cellOf("markdown", `# ${number}. Question ${number}?\n\nWhat it asks.\n\nWhat it says beside that.`),
    figureCell(`Figure ${number}`),
    cellOf("markdown", `## First half of ${number}\n\n${prose}`),
    shown({ "text/html": WIDE }),
    cellOf("markdown", `## Second half of ${number} ${number === 2 ? EVIL : ""}\n\n${prose}`),
    cellOf("markdown", "> **Safety first.** Probe the thickest piece."),
    figureCell(`Another figure of ${number} ${EVIL}`),
  );

describeInBrowser("the report's page", () => {
  let browser: Browser;
  let home: string;
  beforeAll(async () => {
    browser = await launch();
    const path = join(mkdtempSync(join(tmpdir(), "slabwright-test-")), "report.html");
    const answer = notebookOf(cellOf("markdown", "# 0. The settings?"), shown({ "text/html": ANSWER }, ["answer"]));
    await writeReport({
      notebooks: [answer, ...[1, 2, 3, 4].map(part)],
      path,
      title: `A kitchen ${EVIL}`,
      subtitle: EVIL,
    });
    home = pathToFileURL(path).href;
  }, 60_000);
  afterAll(() => browser?.close());

  const opened = async (options: Parameters<typeof watchedPage>[2] = {}) => {
    const watched = await watchedPage(browser, home, options);
    await watched.page.goto(home);
    return watched;
  };
  const current = (page: Page): Promise<(string | null)[]> =>
    page.locator("nav [aria-current]").evaluateAll((all) => all.map((one) => one.getAttribute("href")));
  const column = (page: Page, at: number): Promise<string[]> =>
    page
      .locator(`#answer tbody td:nth-child(${at})`)
      .evaluateAll((all) => all.map((one) => (one.textContent ?? "").replace(/\u00a0/g, " ")));

  it("marks in the contents the part that is read, and unfolds its sections", async () => {
    const { page, complaints } = await opened({ viewport: { width: 1280, height: 800 } });
    await soon(() => current(page)).toEqual(["#answer"]);
    await page.locator('nav a[href="#n4"]').click();
    await soon(() => current(page)).toEqual(["#n4"]);
    const sections = page.locator("nav li", { has: page.locator('> a[href="#n4"]') }).locator("li a");
    expect(await sections.first().isVisible()).toBe(true);
    const half = (await sections.nth(1).getAttribute("href")) as string;
    await sections.nth(1).click();
    await soon(() => current(page)).toEqual([half]);
    expect(await page.locator("nav").evaluate((nav) => nav.getBoundingClientRect().top)).toBe(0);
    await page.evaluate(() => scrollTo(0, 0));
    await soon(() => current(page)).toEqual(["#answer"]);
    expect(await sections.first().isVisible()).toBe(false);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("folds the contents into a bar on a phone, which says the part and folds again when one is chosen", async () => {
    const { page } = await opened({ viewport: { width: 390, height: 844 } });
    const bar = page.locator("nav > details > summary");
    const link = page.locator('nav a[href="#n3"]');
    expect(await link.isVisible()).toBe(false);
    await bar.focus();
    await page.keyboard.press("Enter");
    await link.click();
    await soon(() => bar.textContent()).toBe("Contents2. Question 2?");
    expect(await link.isVisible()).toBe(false);
    expect(await bar.evaluate((one) => one.getBoundingClientRect().top)).toBe(0);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await page.context().close();
  });

  it("is one long document without scripts: contents that lead, still pictures, words of figures", async () => {
    const { page } = await opened({ javaScriptEnabled: false });
    await page.locator('nav a[href="#n3"]').click();
    expect(page.url()).toMatch(/#n3$/);
    const figure = page.locator("figure.plot").first();
    expect(await figure.locator("img.still").isVisible()).toBe(true);
    expect(await figure.locator(".canvas").isVisible()).toBe(false);
    expect(await figure.locator("details p").textContent()).toContain("Across: thickness (mm), 6 to 12.");
    await page.context().close();
  });

  it("sorts by a heading with click and key, the other way the second time, as it came the third", async () => {
    const { page } = await opened();
    const asItCame = await column(page, 2);
    const heading = page.locator("#answer th").nth(1);
    const button = heading.getByRole("button", { name: "card" });
    await button.click();
    expect(await column(page, 2)).toEqual(["9 min", "12.5 min (11.0 to 14.1)", "(19 min)", "–"]);
    expect(await heading.getAttribute("aria-sort")).toBe("ascending");
    await page.keyboard.press("Enter");
    expect(await column(page, 2)).toEqual(["(19 min)", "12.5 min (11.0 to 14.1)", "9 min", "–"]);
    expect(await heading.getAttribute("aria-sort")).toBe("descending");
    await page.keyboard.press("Enter");
    expect(await column(page, 2)).toEqual(asItCame);
    expect(await heading.getAttribute("aria-sort")).toBeNull();
    await page.context().close();
  });

  const CSV = [
    "product,card,note",
    '"rye, thin",9 min,"\'=HYPERLINK(""x"")"',
    "oat bars,12.5 min (11.0 to 14.1),plain",
    "lentil bites,(19 min),two lines",
    `"${EVIL.replaceAll('"', '""')}",–,-3.5`,
    "",
  ].join("\r\n");
  const copied = async (page: Page): Promise<Locator> => {
    await page.locator("#answer th button").nth(1).click();
    const tools = page.locator("#answer p.tools");
    await tools.getByRole("button", { name: "copy as CSV" }).click();
    return tools.getByRole("status");
  };

  it("copies a table as CSV in the order in which it stands", async () => {
    const { page } = await watchedPage(browser, home);
    await page.addInitScript(() => {
      navigator.clipboard.writeText = async (text) => {
        document.documentElement.dataset.copied = text;
      };
    });
    await page.goto(home);
    const said = await copied(page);
    await soon(() => said.textContent()).toBe("copied");
    expect(await page.locator("html").getAttribute("data-copied")).toBe(CSV);
    await page.context().close();
  });

  it("saves a file where the clipboard is refused", async () => {
    const { page } = await watchedPage(browser, home);
    await page.addInitScript(() => {
      navigator.clipboard.writeText = () => Promise.reject(new Error("refused"));
      document.execCommand = () => false;
    });
    await page.goto(home);
    const [download, said] = await Promise.all([page.waitForEvent("download"), copied(page)]);
    expect(download.suggestedFilename()).toBe("The-settings.csv");
    await soon(() => said.textContent()).toBe("saved as The-settings.csv");
    expect(readFileSync(await download.path(), "utf8")).toBe(`\ufeff${CSV}`);
    await page.context().close();
  });

  it("draws a figure when it comes near, without moving the page, and unfolds its data", async () => {
    const { page, complaints } = await opened({ viewport: { width: 1280, height: 800 }, offline: true });
    const figures = page.locator("figure.plot");
    const last = figures.last();
    await soon(() => figures.first().locator(".main-svg").count()).toBeGreaterThan(0);
    expect(await last.locator(".main-svg").count()).toBe(0);
    const height = await page.evaluate(() => document.documentElement.scrollHeight);
    await drawAll(page);
    expect(await last.locator(".main-svg .point").count()).toBe(3);
    expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBe(height);

    expect(await last.locator("table").count()).toBe(0);
    await last.locator("summary").click();
    const cells = last.locator("tbody tr").nth(1).locator("td");
    await soon(() => cells.allTextContents()).toEqual(["trials", "9", "11", EVIL]);
    expect(await last.locator("th").allTextContents()).toEqual([
      "series",
      "thickness (mm)",
      "crisp time (min)",
      "note",
    ]);
    await last.locator("th button").nth(2).click();
    await last.locator("th button").nth(2).click();
    expect(await last.locator("tbody td:nth-child(3)").allTextContents()).toEqual(["15", "14.5", "11", "8.25", "8"]);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it.each([
    { format: "A4", width: 695 },
    { format: "Letter", width: 717 },
  ] as const)("prints a summary on $format, and the working too where it is chosen", async ({ format, width }) => {
    const { page } = await opened({ viewport: { width, height: 1000 } });
    // a page of answer, and two figures a page
    expect(await printedPages(page, format)).toBeLessThanOrEqual(4);
    await page.emulateMedia({ media: "print" });
    const seen = (selector: string): Promise<number> => page.locator(selector).filter({ visible: true }).count();
    expect(await seen("figure.plot")).toBe(4);
    expect(await seen(".still")).toBe(4);
    expect(await seen(".canvas")).toBe(0);
    expect(await seen("main blockquote")).toBe(4);
    expect(await seen("main table")).toBe(0);
    expect(await seen("nav, .tools, details, .skip")).toBe(0);
    expect(await seen(".summary-only")).toBe(1);
    await page.emulateMedia({ media: "screen" });
    await page.locator("nav > details").evaluate((all) => all.setAttribute("open", ""));
    await page.getByLabel("print the working too").check();
    expect(await printedPages(page, format)).toBeGreaterThanOrEqual(9);
    await page.emulateMedia({ media: "print" });
    expect([await seen("figure.plot"), await seen("main table"), await seen(".summary-only")]).toEqual([8, 4, 0]);
    const wide = await page
      .locator("td, th, img:visible")
      .evaluateAll((all) =>
        all.map((one) => one.getBoundingClientRect()).filter(({ left, right }) => left < 0 || right > innerWidth),
      );
    expect(wide).toEqual([]);
    expect(
      await page
        .locator("main thead")
        .first()
        .evaluate((one) => getComputedStyle(one).display),
    ).toBe("table-header-group");
    await page.context().close();
  });

  it("numbers printed pages, with the kitchen's name as text", async () => {
    const { page } = await opened();
    const rules = await page.evaluate(() =>
      [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules].map(({ cssText }) => cssText)).join("\n"),
    );
    expect(rules).toMatch(/@bottom-right \{[^}]*content: counter\(page\) " of " counter\(pages\)/);
    expect(rules).toContain(`A kitchen \\"'><img src=x`);
    await page.context().close();
  });

  it("shows script in names, titles, cells and headings as text, on the page and in print", async () => {
    const { page, complaints } = await opened();
    await drawAll(page);
    for (const summary of await page.locator("figure.plot summary").all()) await summary.click();
    await page.pdf({ format: "A4" });
    expect(await page.evaluate(() => "ran" in window)).toBe(false);
    expect(await page.title()).toBe(`A kitchen ${EVIL}`);
    expect(await page.locator("h1").textContent()).toBe(`A kitchen ${EVIL}`);
    expect(await page.locator("#n3 h3").last().textContent()).toContain("<script>window.ran=1</script>");
    expect(await column(page, 1)).toContain(EVIL);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("leads from the skip link to the notebooks, and shows where the keyboard is", async () => {
    const { page } = await opened();
    await page.keyboard.press("Tab");
    const skip = page.locator("a.skip");
    expect(await skip.evaluate((one) => one === document.activeElement)).toBe(true);
    await soon(() => skip.evaluate((one) => one.getBoundingClientRect().top)).toBeGreaterThanOrEqual(0);
    expect(await skip.evaluate((one) => getComputedStyle(one).outlineStyle)).toBe("solid");
    await page.keyboard.press("Enter");
    expect(page.url()).toMatch(/#main$/);
    await page.context().close();
  });

  it.each([
    { width: 1280, colorScheme: "light" },
    { width: 1280, colorScheme: "dark" },
    { width: 390, colorScheme: "dark" },
  ] as const)("gives axe nothing above minor at $width px in the $colorScheme", async ({ width, colorScheme }) => {
    const { page } = await opened({ viewport: { width, height: 844 }, colorScheme });
    await drawAll(page);
    for (const summary of await page.locator("main summary").all()) await summary.click();
    expect(await axeFindings(page)).toEqual([]);
    await page.context().close();
  });
});
