/// <reference lib="dom" />
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser } from "playwright-core";
import { runNotebook, writeReport } from "slabwright-host";
import { afterAll, beforeAll, expect, it } from "vitest";
import { describeInBrowser, drawAll, launch, watchedPage } from "./chromium";

const notebooks = resolve(__dirname, "../host/notebooks");

describeInBrowser("the report in a browser", () => {
  let browser: Browser;
  let home: string;
  beforeAll(async () => {
    browser = await launch();
    const path = join(mkdtempSync(join(tmpdir(), "slabwright-test-")), "report.html");
    const runs = [];
    for (const name of ["every-output", "fails"])
      runs.push(await runNotebook({ path: join(notebooks, `${name}.ipynb`) }));
    await writeReport({ notebooks: runs, path, subtitle: "<script>window.broken = 1</script>" });
    home = pathToFileURL(path).href;
  }, 60_000);
  afterAll(() => browser?.close());

  it("draws every figure offline, without an error, and runs no script of the notebooks", async () => {
    const { page, complaints } = await watchedPage(browser, home, { offline: true });
    await page.goto(home);
    await page.waitForFunction(() => document.body.dataset.figures === "1");
    expect(await page.locator(".js-plotly-plot .point").count()).toBe(3);
    expect(await page.evaluate(() => "broken" in window)).toBe(false);
    expect(await page.locator("td").first().textContent()).toBe("half sheet");
    expect(await page.locator("math").count()).toBe(1);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("draws every figure of the demo notebooks", async () => {
    const path = join(mkdtempSync(join(tmpdir(), "slabwright-test-")), "report.html");
    const names = ["01-thickness-and-crisp-time", "02-yield-and-macros", "03-another-pan"];
    const runs = [];
    for (const name of names)
      runs.push(await runNotebook({ path: resolve(__dirname, "../../notebooks", `${name}.ipynb`) }));
    await writeReport({ notebooks: runs, path });
    const { page, complaints } = await watchedPage(browser, pathToFileURL(path).href, { offline: true });
    await page.goto(pathToFileURL(path).href);
    const due = await drawAll(page);
    expect(due).toBeGreaterThanOrEqual(names.length);
    expect(await page.locator(".js-plotly-plot .main-svg").count()).toBeGreaterThanOrEqual(due);
    for (const figure of await page.locator("figure.plot").all()) {
      expect(((await figure.locator("figcaption").textContent()) ?? "").length).toBeGreaterThan(20);
    }
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 120_000);

  it("says a failed cell's sentence alone, keeps code and calls folded, and leads from the contents to a notebook", async () => {
    const { page } = await watchedPage(browser, home);
    await page.goto(home);
    const open = await page
      .locator("main details")
      .evaluateAll((all) => all.map((one) => (one as HTMLDetailsElement).open));
    expect(open.filter(Boolean)).toEqual([]);
    const failed = page.locator(".error");
    expect(await failed.locator("p").textContent()).toBe("slabThickness: batchG must be > 0 g, got -12");
    expect(await failed.locator("pre").textContent()).toContain("RangeError");
    await page.locator("nav a", { hasText: "A notebook that fails" }).click();
    await expect
      .poll(() => page.locator("#n2").evaluate((section) => section.getBoundingClientRect().top))
      .toBeLessThan(500);
    await page.context().close();
  });

  it.each(["light", "dark"] as const)("fits a phone's 390 px in the %s", async (colorScheme) => {
    const { page, complaints } = await watchedPage(browser, home, {
      viewport: { width: 390, height: 844 },
      colorScheme,
    });
    await page.goto(home);
    await page.waitForFunction(() => document.body.dataset.figures === "1");
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    const width = await page
      .locator(".js-plotly-plot .main-svg")
      .first()
      .evaluate((svg) => svg.getBoundingClientRect().width);
    expect(width).toBeGreaterThan(300);
    expect(width).toBeLessThanOrEqual(390);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  it("prints with its figures on paper", async () => {
    const { page } = await watchedPage(browser, home);
    await page.goto(home);
    await page.waitForFunction(() => document.body.dataset.figures === "1");
    const pdf = (await page.pdf({ format: "A4" })).toString("latin1");
    expect((pdf.match(/\/Type \/Page\b/g) ?? []).length).toBeGreaterThanOrEqual(2);
    await page.context().close();
  });

  it("draws a figure dark on a dark page, and for paper white and no higher than a page", async () => {
    const path = join(mkdtempSync(join(tmpdir(), "slabwright-test-")), "high.html");
    const layout = { height: 1800, paper_bgcolor: "#fff" };
    const figure = { "application/vnd.plotly.v1+json": { data: [{ x: [1, 2], y: [1, 2] }], layout } };
    const cell = {
      id: "a",
      cell_type: "code" as const,
      metadata: {},
      source: "1",
      outputs: [{ output_type: "display_data" as const, metadata: {}, data: figure }],
    };
    await writeReport({
      notebooks: [{ path: "a.ipynb", notebook: { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [cell] } }],
      path,
    });
    const { page } = await watchedPage(browser, pathToFileURL(path).href, { colorScheme: "dark" });
    await page.goto(pathToFileURL(path).href);
    await page.waitForFunction(() => document.body.dataset.figures === "1");
    const look = () =>
      page.evaluate(() => {
        const canvas = document.querySelector(".canvas") as HTMLElement;
        const ground = canvas.querySelector(".main-svg") as SVGElement;
        return { ground: ground.style.background, heightPx: canvas.getBoundingClientRect().height };
      });
    expect(await look()).toEqual({ ground: "rgb(36, 37, 38)", heightPx: 1800 });
    await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
    const printed = await look();
    expect(printed.ground).toBe("rgb(255, 255, 255)");
    expect(printed.heightPx).toBeLessThanOrEqual(901);
    await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
    expect(await look()).toEqual({ ground: "rgb(36, 37, 38)", heightPx: 1800 });
    await page.context().close();
  });
});
