/// <reference lib="dom" />
import { appendFileSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import type { Browser, Page } from "playwright-core";
import { buildPage, type NotebookServer, serveNotebooks } from "slabwright-host";
import { afterAll, afterEach, beforeAll, beforeEach, expect, it, vi } from "vitest";
import { youngKitchen } from "../host/kitchen/young-kitchen";
import { projectWith } from "../host/server/project";
import { axeFindings, describeInBrowser, launch, watchedPage } from "./chromium";

// a busy machine is slow, and a slow answer is no fault
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });
const eventually = <T>(read: () => Promise<T>) => expect.poll(read, { timeout: 40_000, interval: 100 });

describeInBrowser("the kitchen's page", () => {
  const folder = youngKitchen(3);
  const log = join(folder, "trials", "first-log.csv");
  const sound = readFileSync(log, "utf8");
  const report = join(folder, "out", "report.html");
  const { notebooks } = projectWith("fails");
  let browser: Browser;
  let server: NotebookServer;
  let page: Page;
  let complaints: string[];

  beforeAll(async () => {
    await buildPage();
    browser = await launch();
    server = await serveNotebooks({
      folder: notebooks,
      environment: { SLABWRIGHT_KITCHEN: folder },
      kitchen: { name: "Corner kitchen", folder, report, project: resolve(".") },
    });
  });
  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });
  beforeEach(async () => {
    writeFileSync(log, sound);
    ({ page, complaints } = await watchedPage(browser, server.origin));
    await page.goto(server.address);
    await page.waitForURL(`${server.origin}/`);
  });
  afterEach(() => page.context().close());

  const told = (on: Page = page) => on.locator('#kitchen[aria-busy="false"]').waitFor();
  const newNotebook = async (): Promise<void> => {
    await page.getByRole("button", { name: "new notebook" }).click();
    await page.waitForFunction(() => document.body.dataset.ready === "true");
    await page.locator('#kernel[data-state="idle"]').waitFor();
  };
  const cell = (at: number) => page.locator(".jp-Cell").nth(at);

  it("says which kitchen is open, what it makes, how much is logged and how far each product is", async () => {
    expect(await page.title()).toBe("Corner kitchen");
    expect(await page.locator(".place").textContent()).toContain(folder);
    expect(await page.locator("a.notebook").count(), "notebooks are there before the library has answered").toBe(1);
    await told();
    const product = page.locator(".product");
    expect(await product.count()).toBe(1);
    expect(await product.textContent()).toContain("3 trials");
    expect(await product.locator(".state").textContent()).toMatch(/^not (ready|tried): \w+/);
    expect(await product.locator("dt", { hasText: "appliance and setting" }).count()).toBe(1);
    expect(await page.locator(".notes").textContent(), "the caution stands with the settings").toContain(
      "Core at least",
    );
    const next = product.locator("details.next");
    await next.locator("summary").click();
    expect(await next.locator("li").count(), "what to do next, step by step").toBeGreaterThan(2);
    expect(await next.textContent()).toContain("Local food codes");
    // a trial is logged while the page is open
    appendFileSync(log, sound.split("\n")[1].replace("A-1", "A-8"));
    await page.evaluate(() => window.dispatchEvent(new Event("focus")));
    await eventually(() => product.textContent()).toContain("4 trials");
    expect(complaints).toEqual([]);
  });

  it("gives axe nothing above minor", async () => {
    await told();
    for (const summary of await page.locator("summary").all()) await summary.click();
    expect(await axeFindings(page)).toEqual([]);
  });

  it("shows the slips of a kitchen that cannot be loaded, and opens its notebooks all the same", async () => {
    writeFileSync(log, sound.replace("first-variant", "frist-variant"));
    await page.reload();
    await told();
    expect(await page.locator(".slips li").allTextContents()).toEqual([expect.stringContaining("frist-variant")]);
    expect(await page.locator(".product").count()).toBe(0);
    await page.locator("a.notebook").first().click();
    await page.waitForFunction(() => document.body.dataset.ready === "true");
    expect(complaints).toEqual([]);
  });

  it("opens the kitchen's report, with its scripts and without a way to this server", async () => {
    expect(await page.locator(".place").textContent()).toContain("no report yet");
    mkdirSync(join(folder, "out"), { recursive: true });
    writeFileSync(
      report,
      '<!doctype html><p id="told"></p><script>fetch("/api/kernels").then((a) => a.status, () => "refused").then((s) => { document.getElementById("told").textContent = s + " " + origin; });</script>',
    );
    await page.reload();
    await page.locator(".place a").click();
    await eventually(() => page.locator("#told").textContent()).toBe("refused null");
  });

  it("begins a new notebook with the kitchen loaded", async () => {
    await newNotebook();
    await cell(0).locator(".cm-content").click();
    await page.keyboard.press("Shift+Enter");
    await page.keyboard.press("Enter");
    await page.keyboard.insertText("console.log(kitchen.variants.length)");
    await page.keyboard.press("ControlOrMeta+Enter");
    await eventually(() => cell(1).locator(".jp-OutputArea-output").textContent()).toBe("1\n");
    expect(complaints).toEqual([]);
  });

  it("puts an example into a cell, filled in with this kitchen's ids, by keys alone", async () => {
    await newNotebook();
    await page.keyboard.press("Escape");
    await page.keyboard.press("e");
    await page.locator("dialog.examples li").first().waitFor();
    await page.keyboard.type("reheat card");
    await eventually(() => page.locator("dialog.examples li").first().textContent()).toContain("reheatCard");
    await page.keyboard.press("Enter");
    await eventually(() => cell(1).locator(".cm-content").textContent()).toContain('variantId: "first-variant"');
    await page.keyboard.press("ControlOrMeta+Enter");
    await cell(1).locator(".jp-OutputArea-output", { hasText: "Core at least" }).waitFor();
    expect(complaints).toEqual([]);
  });

  it("offers the example of the function that Shift Tab tells of", async () => {
    await newNotebook();
    await cell(1).locator(".cm-content").click();
    await page.keyboard.insertText("reheatCard({ ");
    await page.keyboard.press("Shift+Tab");
    const tooltip = page.locator(".jp-Tooltip");
    await eventually(() => tooltip.textContent()).toContain('variantId: "first-variant"');
    expect(await tooltip.textContent(), "the docstring's own example is another kitchen's").not.toContain("turkey");
    await page.locator(".jp-Tooltip button", { hasText: "insert its example" }).click();
    await eventually(() => cell(2).locator(".cm-content").textContent()).toContain(
      'reheatCard({ kitchen, variantId: "first-variant" })',
    );
    expect(await page.locator(".jp-Tooltip").count()).toBe(0);
    expect(complaints).toEqual([]);
  });

  it("opens the reference at the page of what a cell speaks of, by a key, the bar and the explanation", async () => {
    const reference = join(dirname(notebooks), "out", "reference");
    mkdirSync(reference, { recursive: true });
    writeFileSync(join(reference, "index.html"), "<p>all names</p>");
    writeFileSync(join(reference, "names.json"), '{ "reheatCard": "card.html" }');
    writeFileSync(join(reference, "card.html"), "<p>the page of the card</p>");
    const opened = async (open: () => Promise<unknown>): Promise<string> => {
      const [tab] = await Promise.all([page.context().waitForEvent("page"), open()]);
      const text = await tab.locator("p").textContent();
      await tab.close();
      return text ?? "";
    };
    expect(
      await opened(() => page.getByRole("link", { name: "reference" }).click({ modifiers: ["ControlOrMeta"] })),
    ).toBe("all names");
    await newNotebook();
    await cell(1).locator(".cm-content").click();
    await page.keyboard.insertText("reheatCard({ ");
    expect(await opened(() => page.keyboard.press("F1"))).toBe("the page of the card");
    expect(await opened(() => page.locator('#acts [data-command="reference"]').click())).toBe("the page of the card");
    await page.keyboard.press("Shift+Tab");
    expect(await opened(() => page.locator(".jp-Tooltip a", { hasText: "its page" }).click())).toBe(
      "the page of the card",
    );
    expect(complaints).toEqual([]);
  });

  it("fits 390 px, in the light and in the dark", async () => {
    for (const colorScheme of ["light", "dark"] as const) {
      const { page: phone, complaints: said } = await watchedPage(browser, server.origin, {
        viewport: { width: 390, height: 844 },
        colorScheme,
      });
      await phone.goto(server.address);
      await phone.waitForURL(`${server.origin}/`);
      await told(phone);
      expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
      await phone.locator("a.notebook").first().click();
      await phone.waitForFunction(() => document.body.dataset.ready === "true");
      await phone.locator('[data-command="example"]').click();
      const box = await phone.locator("dialog.examples").boundingBox();
      expect(box?.width).toBeLessThanOrEqual(390);
      expect(said).toEqual([]);
      await phone.context().close();
    }
  });
});
