/// <reference lib="dom" />
import { appendFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import type { Browser, Page } from "playwright-core";
import { buildPage, type NotebookServer, readNotebook, serveNotebooks } from "slabwright-host";
import { beforeAll, beforeEach, expect, it, vi } from "vitest";
import { youngKitchen } from "../host/kitchen/young-kitchen";
import { projectWith } from "../host/server/project";
import { describeInBrowser, launch, watchedPage } from "./chromium";

// a busy machine is slow, and a slow answer is no fault
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });
const eventually = <T>(read: () => Promise<T>) => expect.poll(read, { timeout: 40_000, interval: 100 });

describeInBrowser("cells that are out of date", () => {
  const kitchen = youngKitchen(3);
  const log = join(kitchen, "trials", "first-log.csv");
  const { notebooks } = projectWith();
  const file = join(notebooks, "01-stale.ipynb");
  const code = (id: string, source: string): object => ({
    cell_type: "code",
    id,
    metadata: {},
    execution_count: null,
    outputs: [],
    source,
  });
  const cells = [
    code("a", `import { readFileSync } from "node:fs";\nconst log = readFileSync(${JSON.stringify(log)}, "utf8");`),
    code("b", "const pan = 2;"),
    code("c", "console.log(log.length > pan, pan);"),
    code("d", "console.log('alone');"),
  ];
  let browser: Browser;
  let server: NotebookServer;
  let page: Page;
  let complaints: string[];

  beforeAll(async () => {
    await buildPage();
    browser = await launch();
    const place = {
      name: "Corner kitchen",
      folder: kitchen,
      report: join(kitchen, "report.html"),
      project: resolve("."),
    };
    server = await serveNotebooks({ folder: notebooks, kitchen: place });
    return async () => {
      await browser.close();
      await server.close();
    };
  });
  beforeEach(async () => {
    const notebook = { nbformat: 4, nbformat_minor: 5, metadata: {}, cells };
    writeFileSync(file, JSON.stringify(notebook));
    ({ page, complaints } = await watchedPage(browser, server.origin));
    await page.goto(server.address);
    await page.waitForURL(`${server.origin}/`);
    await page.goto(`${server.origin}/open/01-stale.ipynb`);
    await ready();
    return () => page.context().close();
  });

  const ready = async (): Promise<void> => {
    await page.waitForFunction(() => document.body.dataset.ready === "true");
    await page.locator('#kernel[data-state="idle"]').waitFor();
  };
  const command = (id: string): Promise<void> => page.locator(`[data-command="${id}"]`).click();
  const fromKeys = async (words: string): Promise<void> => {
    await page.getByRole("button", { name: "keys" }).click();
    await page.locator("dialog.keys button", { hasText: words }).click();
  };
  const cell = (at: number) => page.locator(".jp-Cell").nth(at);
  const said = (): Promise<string[]> => page.locator(".why-stale").allTextContents();
  const runAll = async (): Promise<void> => {
    await command("run-all");
    await eventually(() => cell(3).locator(".jp-InputPrompt").textContent()).toMatch(/^\[\d+\]:$/);
    await page.locator('#kernel[data-state="idle"]').waitFor();
  };
  const write = async (at: number, source: string): Promise<void> => {
    await cell(at).locator(".cm-content").click();
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.insertText(source);
  };

  it("are marked when a cell above was edited or a file was changed, also after a reload, and one click runs them", async () => {
    await runAll();
    expect(await said()).toEqual([]);
    await write(1, "const pan = 3;");
    await eventually(said).toEqual([
      "out of date: edited since it ran",
      "out of date: cell 2, which it uses, is out of date",
    ]);
    await page.keyboard.press("ControlOrMeta+S");
    await page
      .locator("#notice", { hasText: "Saved, but out of date: cell 2 (edited since it ran), and 1 more" })
      .waitFor();
    await page.locator("#notice button", { hasText: "close" }).click();
    await page.reload();
    await ready();
    await eventually(async () => (await said()).length).toBe(2);
    expect(await page.locator("#stale").textContent()).toContain("2 cells out of date");
    await page.locator("#stale button", { hasText: "run them" }).click();
    await eventually(said).toEqual([]);
    await eventually(() => cell(2).locator(".jp-OutputArea-output").textContent()).toBe("true 3\n");

    appendFileSync(log, "\n");
    await eventually(said).toEqual([
      "out of date: kitchen/trials/first-log.csv has changed since it ran",
      "out of date: cell 1, which it uses, is out of date",
    ]);
    await page.keyboard.press("ControlOrMeta+S");
    await eventually(() => page.locator("#saved").textContent()).toBe("saved");
    const { cells: stored } = await readNotebook(file);
    expect(stored[0].metadata.slabwright).toMatchObject({
      ran: { reads: { "kitchen/trials/first-log.csv": expect.any(String) } },
    });
    expect(Object.keys((stored[2].metadata.slabwright as { ran: { from: object } }).ran.from)).toEqual(["a", "b"]);
    expect(complaints).toEqual([]);
  });

  it("tells of a name that came from a cell below", async () => {
    await write(3, "const late = 1;");
    await page.keyboard.press("ControlOrMeta+Enter");
    await write(2, "late");
    await page.keyboard.press("ControlOrMeta+Enter");
    await eventually(said).toEqual(["out of date: it takes a name from cell 4, which stands below it"]);
    expect(complaints).toEqual([]);
  });

  it("shows a field for each constant of a cell tagged parameters, and refuses another kind of value", async () => {
    const tagged = {
      ...code("p", 'const stillAirC = -18; // °C\nconst label = "a";'),
      metadata: { tags: ["parameters"] },
    };
    const notebook = {
      nbformat: 4,
      nbformat_minor: 5,
      metadata: {},
      cells: [tagged, code("u", "console.log(stillAirC);")],
    };
    writeFileSync(file, JSON.stringify(notebook));
    await page.reload();
    await ready();
    await command("run-all");
    await eventually(() => cell(1).locator(".jp-OutputArea-output").textContent()).toBe("-18\n");
    const air = page.getByLabel("stillAirC");
    expect(
      await page.locator(".parameters input").evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value)),
    ).toEqual(["-18", "a"]);
    await air.fill("cold");
    await air.press("Enter");
    await page
      .locator("#notice", { hasText: 'stillAirC must be a number, as in cell 1 of this notebook (-18), got "cold"' })
      .waitFor();
    expect(await air.inputValue()).toBe("-18");
    await air.fill("-25");
    await air.press("Enter");
    await eventually(() => cell(0).locator(".cm-content").textContent()).toBe(
      'const stillAirC = -25; // °Cconst label = "a";',
    );
    await page.locator("#stale button", { hasText: "run them" }).click();
    await eventually(() => cell(1).locator(".jp-OutputArea-output").textContent()).toBe("-25\n");
    await eventually(said).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it("brings deleted cells back after a reload, where they stood", async () => {
    const sources = (): Promise<string[]> => page.locator(".jp-Cell .cm-content").allTextContents();
    const whole = await sources();
    await cell(2).locator(".jp-InputPrompt").click();
    await command("delete");
    await cell(1).locator(".jp-InputPrompt").click();
    await command("delete");
    await page.keyboard.press("ControlOrMeta+S");
    await eventually(() => page.locator("#saved").textContent()).toBe("saved");
    await page.reload();
    await ready();
    expect((await sources()).length).toBe(2);
    await fromKeys("bring back a deleted cell");
    await page.locator("dialog.states li button", { hasText: "const pan = 2;" }).click();
    await eventually(async () => (await sources()).length).toBe(3);
    await page.keyboard.press("ControlOrMeta+S");
    await eventually(() => page.locator("#saved").textContent()).toBe("saved");
    await page.reload();
    await ready();
    await cell(0).locator(".jp-InputPrompt").click();
    await page.keyboard.press("z");
    await eventually(sources).toEqual(whole);
    expect(complaints).toEqual([]);
  });
});
