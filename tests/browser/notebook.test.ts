/// <reference lib="dom" />
import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { buildPage, type NotebookServer, readNotebook, serveNotebooks, textOf } from "slabwright-host";
import { afterAll, afterEach, beforeAll, beforeEach, expect, it, vi } from "vitest";
import { openBrowser } from "../../kernel-lib/host/src/command/open-browser";
import { projectWith } from "../host/server/project";
import { describeInBrowser, launch, watchedPage } from "./chromium";

// a busy machine is slow, and a slow answer is no fault
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });
const eventually = <T>(read: () => Promise<T>) => expect.poll(read, { timeout: 40_000, interval: 100 });

const CALM = {
  nbformat: 4,
  nbformat_minor: 5,
  metadata: {
    kernelspec: { display_name: "TypeScript", language: "typescript", name: "tslab" },
    language_info: { file_extension: ".ts", mimetype: "text/typescript", name: "typescript" },
  },
  cells: [
    { cell_type: "markdown", id: "a", metadata: {}, source: "# A calm notebook\n\nHow thick, at $t = aL$?\n" },
    {
      cell_type: "code",
      id: "b",
      metadata: {},
      execution_count: null,
      outputs: [],
      source: "const thicknessMm = 9.5;\nthicknessMm * 2",
    },
    {
      cell_type: "code",
      id: "c",
      metadata: {},
      execution_count: null,
      outputs: [],
      source:
        'import { display } from "tslab";\ndisplay.raw("application/vnd.plotly.v1+json", JSON.stringify({ data: [{ mode: "markers", x: [6, 9, 12], y: [9, 12, 17] }], layout: {} }));',
    },
    { cell_type: "code", id: "d", metadata: {}, execution_count: null, outputs: [], source: "" },
  ],
};

describeInBrowser("the notebook page", () => {
  const { folder, notebooks } = projectWith("every-output");
  const file = join(notebooks, "01-calm.ipynb");
  let browser: Browser;
  let server: NotebookServer;
  let page: Page;
  let complaints: string[];

  beforeAll(async () => {
    await buildPage();
    browser = await launch();
    server = await serveNotebooks({ folder: notebooks });
  });
  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });
  beforeEach(async () => {
    writeFileSync(file, JSON.stringify(CALM));
    ({ page, complaints } = await watchedPage(browser, server.origin));
    await page.goto(server.address);
    await page.waitForURL(`${server.origin}/`);
  });
  afterEach(() => page.context().close());

  const ready = (on: Page): Promise<unknown> => on.waitForFunction(() => document.body.dataset.ready === "true");
  const idle = (on: Page): Promise<unknown> => on.locator('#kernel[data-state="idle"]').waitFor();
  const command = (id: string, on: Page = page): Promise<void> => on.locator(`[data-command="${id}"]`).click();
  const cell = (at: number, on: Page = page) => on.locator(".jp-Cell").nth(at);
  const open = async (on: Page = page): Promise<void> => {
    await on.locator("a.notebook", { hasText: "A calm notebook" }).click();
    await ready(on);
    await idle(on);
  };
  /** Sets the source of the last cell and leaves the cursor at its end. */
  const write = async (source: string, on: Page = page): Promise<void> => {
    await cell(3, on).locator(".cm-content").click();
    await on.keyboard.press("ControlOrMeta+A");
    await on.keyboard.press("Delete");
    await on.keyboard.insertText(source);
  };
  const run = async (source: string): Promise<void> => {
    await write(source);
    await page.keyboard.press("ControlOrMeta+Enter");
  };
  const output = (at: number, on: Page = page) => cell(at, on).locator(".jp-OutputArea-output");

  it("opens from the start page, runs all, draws the figure, says nothing to the console and fetches nothing else", async () => {
    const line = page.locator("li", { hasText: "A calm notebook" });
    expect(await line.locator(".number").textContent()).toBe("01");
    expect(await line.locator(".lead").textContent()).toContain("How thick");
    await open();
    expect(await page.locator("#saved").textContent(), "opening changes nothing").toBe("saved");
    expect(await page.locator("math").count()).toBe(1);
    await command("run-all");
    await eventually(() => output(1).textContent()).toBe("19\n");
    await cell(2).locator(".js-plotly-plot .point").first().waitFor();
    expect(await cell(2).locator(".js-plotly-plot .point").count()).toBe(3);
    expect(await cell(1).locator(".jp-InputPrompt").textContent()).toBe("[1]:");
    expect(complaints).toEqual([]);
  });

  it("edits, saves in nbformat's form, and shows the same after a reload", async () => {
    await open();
    await run("6 * 7");
    await eventually(() => output(3).textContent()).toBe("42\n");
    expect(await page.locator("#saved").textContent()).toBe("not saved");
    await page.keyboard.press("ControlOrMeta+S");
    await eventually(() => page.locator("#saved").textContent()).toBe("saved");
    const stored = await readNotebook(file);
    expect(textOf(stored.cells[3].source)).toBe("6 * 7");
    expect(stored.cells[3].outputs).toEqual([{ name: "stdout", output_type: "stream", text: ["42\n"] }]);
    expect(stored.metadata).toEqual(CALM.metadata);
    await page.reload();
    await ready(page);
    expect(await output(3).textContent()).toBe("42\n");
    await page.getByRole("button", { name: "keys" }).click();
    await page.locator("dialog.keys button", { hasText: "go back to an earlier state" }).click();
    await page.locator("dialog.states li button").first().click();
    await eventually(() => cell(3).locator(".cm-content").textContent()).toBe("");
    expect(textOf((await readNotebook(file)).cells[3].source)).toBe("");
    expect(complaints).toEqual([]);
  });

  it("completes on Tab and explains on Shift Tab", async () => {
    await open();
    await write("Math.hypo");
    await page.keyboard.press("Tab");
    await page.locator(".jp-Completer-item", { hasText: "hypot" }).waitFor();
    await page.keyboard.press("Enter");
    await eventually(() => cell(3).locator(".cm-content").textContent()).toBe("Math.hypot");
    await write("[1].f");
    await page.keyboard.press("Tab");
    await page.locator(".jp-Completer-item", { hasText: "filter" }).waitFor();
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    expect(await cell(3).locator(".cm-content").textContent()).toMatch(/^\[1\]\.f\w+$/);
    expect(await page.locator(".jp-Completer:visible").count()).toBe(0);
    // an import that is begun and no more: the name, and on the next Tab its door
    await write("");
    await page.keyboard.type("import { loadK");
    await page.keyboard.press("Tab");
    await page.locator(".jp-Completer-item", { hasText: "loadKitchen" }).waitFor();
    await page.keyboard.press("Enter");
    await eventually(() => cell(3).locator(".cm-content").textContent()).toBe("import { loadKitchen}");
    await page.keyboard.press("Tab");
    await page.locator(".jp-Completer-item", { hasText: "from" }).waitFor();
    await page.keyboard.press("Enter");
    await eventually(() => cell(3).locator(".cm-content").textContent()).toBe(
      'import { loadKitchen } from "slabwright";',
    );
    await write("Math.hypot");
    await page.keyboard.press("Shift+Tab");
    await page.locator(".jp-Tooltip", { hasText: "square root of the sum of squares" }).waitFor();
    await page.keyboard.press("Escape");
    expect(await page.locator(".jp-Tooltip").count()).toBe(0);
    await write("reheatCard({ ");
    await page.keyboard.press("Shift+Tab");
    await page.locator(".jp-Tooltip", { hasText: "The reheat card of a variant" }).waitFor();
    await page.keyboard.press("Escape");
    expect(complaints).toEqual([]);
  });

  it("follows the keys of Jupyter notebooks", async () => {
    await open();
    await cell(1).locator(".jp-InputPrompt").click();
    const kinds = (): Promise<string[]> =>
      page
        .locator(".jp-Cell")
        .evaluateAll((all) => all.map((one) => (one.classList.contains("jp-CodeCell") ? "code" : "markdown")));
    await page.keyboard.press("b");
    expect(await kinds()).toEqual(["markdown", "code", "code", "code", "code"]);
    await page.keyboard.press("m");
    await page.keyboard.press("a");
    await page.keyboard.press("d");
    await page.keyboard.press("d");
    expect(await kinds()).toEqual(["markdown", "code", "markdown", "code", "code"]);
    await page.keyboard.press("z");
    await page.keyboard.press("z");
    await page.keyboard.press("k");
    await page.keyboard.press("Enter");
    expect(await page.locator(".jp-Notebook").getAttribute("class")).toContain("jp-mod-editMode");
    await page.keyboard.press("Escape");
    expect(await page.locator(".jp-Notebook").getAttribute("class")).toContain("jp-mod-commandMode");
    await page.getByRole("button", { name: "keys" }).click();
    await page.locator("dialog.keys", { hasText: "delete the cell" }).waitFor();
    await page.locator("dialog.keys > button").click();
    expect(complaints).toEqual([]);
  });

  it("stops an endless loop, and the kernel goes on", async () => {
    await open();
    await run("while (true) {}");
    await page.locator('#kernel[data-state="busy"]').waitFor();
    await page.waitForTimeout(300);
    await command("stop");
    await output(3).locator("text=interrupted").first().waitFor();
    await idle(page);
    await run("1 + 1");
    await eventually(() => output(3).textContent()).toBe("2\n");
  });

  it("shows an error once: the sentence alone, the line and the calls folded behind it", async () => {
    await open();
    await run("throw new RangeError('too thick');");
    const error = cell(3).locator('[data-mime-type="application/vnd.jupyter.error"]');
    await error.waitFor();
    expect(await error.locator("p").textContent()).toBe("too thick");
    expect(await output(3).count()).toBe(1);
    expect(await error.locator("pre").isVisible()).toBe(false);
    await error.locator("summary").focus();
    await page.keyboard.press("Enter");
    expect(await error.locator("pre").textContent()).toContain("RangeError: too thick");
    await run('const thicknessMm: number = "9.5";');
    await eventually(() => error.locator("p").textContent()).toBe("thicknessMm must be a number, got text");
    expect(complaints).toEqual([]);
  });

  it("stops to run all at a cell that fails, goes there and says so", async () => {
    const long = structuredClone(CALM) as { cells: { id: string; source: string }[] };
    const copies = (count: number) =>
      Array.from({ length: count }, (_, at) => ({
        ...CALM.cells[1],
        id: `${count}-${at}`,
        source: `console.log("ran ${at}")`,
      }));
    long.cells.splice(
      1,
      3,
      ...copies(20),
      { ...long.cells[1], source: "throw new Error('the oven is cold');" },
      ...copies(21),
    );
    writeFileSync(file, JSON.stringify(long));
    await open();
    await command("run-all");
    await page.locator("#notice", { hasText: "Run all stopped at cell 22 of 43: the oven is cold" }).waitFor();
    const failure = cell(21).locator(".failure p");
    const inView = () =>
      failure.evaluate((node) => {
        const { top, bottom } = node.getBoundingClientRect();
        return top > 0 && bottom < window.innerHeight;
      });
    await eventually(inView).toBe(true);
    expect(await output(20).textContent()).toContain("ran 19");
    expect(await output(22).count(), "what stands behind it was not run").toBe(0);
    await page
      .locator(".jp-Notebook .jp-WindowedPanel-outer, .jp-WindowedPanel-outer")
      .first()
      .evaluate((node) => node.scrollTo(0, 0));
    await eventually(inView).toBe(false);
    await page.locator("#notice button", { hasText: "go to the cell" }).click();
    await eventually(inView).toBe(true);
    expect(complaints).toEqual([]);
  });

  it("restarts the kernel when asked", async () => {
    await open();
    await run("const kept = 1;\nkept");
    await eventually(() => output(3).textContent()).toBe("1\n");
    await command("restart");
    await page.locator(".jp-Dialog button", { hasText: "Restart" }).click();
    await eventually(() => page.locator("#kernel").getAttribute("data-state")).toBe("idle");
    await run("kept");
    await output(3).locator("text=Cannot find name 'kept'").first().waitFor();
  });

  it("recovers when the kernel crashes, and says what happened", async () => {
    await open();
    await run("process.exit(1);");
    await page.locator(".jp-Dialog", { hasText: "died" }).waitFor();
    await page.locator(".jp-Dialog button").click();
    await output(3).locator("text=the kernel ended while this cell ran").first().waitFor();
    await eventually(() => page.locator("#kernel").getAttribute("data-state")).toBe("idle");
    await run("2 + 2");
    await eventually(() => output(3).textContent()).toBe("4\n");
  });

  it("lets two tabs share one kernel", async () => {
    await open();
    const second = await page.context().newPage();
    await second.goto(`${server.origin}/open/01-calm.ipynb`);
    await ready(second);
    await run("const shared = 5;\nshared");
    await eventually(() => output(3).textContent()).toBe("5\n");
    await write("shared + 1", second);
    await second.keyboard.press("ControlOrMeta+Enter");
    await eventually(() => output(3, second).textContent()).toBe("6\n");
    expect(complaints).toEqual([]);
  });

  it("tells when the file was changed on disk, and does not save over it unasked", async () => {
    await open();
    const changed = structuredClone(CALM);
    changed.cells[3].source = "// by another program";
    writeFileSync(file, JSON.stringify(changed));
    await write("// by this page");
    await page.locator("#notice", { hasText: "changed on disk" }).waitFor();
    await page.keyboard.press("ControlOrMeta+S");
    await page.locator(".jp-Dialog", { hasText: "changed on disk" }).waitFor();
    expect(readFileSync(file, "utf8")).toContain("by another program");
    await page.locator(".jp-Dialog button", { hasText: "Revert" }).click();
    await eventually(() => cell(3).locator(".cm-content").textContent()).toBe("// by another program");
  });

  it("of two tabs that save in one instant one saves, and the other is asked what to do", async () => {
    await open();
    const second = await page.context().newPage();
    await second.goto(`${server.origin}/open/01-calm.ipynb`);
    await ready(second);
    await write("// by the first tab");
    await write("// by the second tab", second);
    // both have looked at the disk and found it as they knew it before either save goes through
    const held: (() => void)[] = [];
    await page.context().route(/\/api\/contents\/01-calm\.ipynb/, async (route) => {
      if (route.request().method() === "PUT" && held.length < 2) {
        await new Promise<void>((done) => {
          if (held.push(done) === 2) for (const go of held) go();
        });
      }
      await route.continue();
    });
    await page.keyboard.press("ControlOrMeta+S");
    await second.keyboard.press("ControlOrMeta+S");
    const tabs = [page, second];
    const asked = (on: Page) => on.locator(".jp-Dialog", { hasText: "changed on disk" });
    await eventually(async () => (await Promise.all(tabs.map((on) => asked(on).count()))).sort()).toEqual([0, 1]);
    const late = (await asked(page).count()) === 1 ? page : second;
    const early = late === page ? second : page;
    expect(await early.locator("#saved").textContent()).toBe("saved");
    expect(await late.locator("#saved").textContent()).toBe("not saved");
    const [won, lost] = late === page ? ["second", "first"] : ["first", "second"];
    expect(readFileSync(file, "utf8")).toContain(`by the ${won} tab`);
    await late.locator(".jp-Dialog button", { hasText: "Overwrite" }).click();
    await eventually(() => late.locator("#saved").textContent()).toBe("saved");
    expect(readFileSync(file, "utf8")).toContain(`by the ${lost} tab`);
    // what the early tab does next is not lost under the late one's save either
    await write("// once more", early);
    await early.keyboard.press("ControlOrMeta+S");
    await asked(early).waitFor();
    await early.locator(".jp-Dialog button", { hasText: "Revert" }).click();
    await eventually(() => cell(3, early).locator(".cm-content").textContent()).toBe(`// by the ${lost} tab`);
    expect(await early.locator("#saved").textContent()).toBe("saved");
  });

  it("saves again and again without being asked, and brings back what was removed meanwhile", async () => {
    await open();
    for (const words of ["// one", "// two", "// three"]) {
      await write(words);
      await page.keyboard.press("ControlOrMeta+S");
      await eventually(() => page.locator("#saved").textContent()).toBe("saved");
      expect(readFileSync(file, "utf8")).toContain(words);
    }
    rmSync(file);
    await write("// four");
    await page.keyboard.press("ControlOrMeta+S");
    await eventually(async () => existsSync(file) && readFileSync(file, "utf8")).toContain("// four");
    await write("// five");
    await page.keyboard.press("ControlOrMeta+S");
    await eventually(async () => readFileSync(file, "utf8")).toContain("// five");
    expect(await page.locator(".jp-Dialog").count()).toBe(0);
  });

  it.skipIf(process.platform === "win32")("opens and saves a notebook whose name has % and ?", async () => {
    const name = "50% rye, how thick?.ipynb";
    const named = structuredClone(CALM);
    named.cells[0].source = "# Half of it rye";
    writeFileSync(join(notebooks, name), JSON.stringify(named));
    await page.reload();
    await page.locator("a.notebook", { hasText: "Half of it rye" }).click();
    await ready(page);
    await idle(page);
    expect(await page.locator("#place strong").textContent()).toBe(name);
    await write("// kept");
    await page.keyboard.press("ControlOrMeta+S");
    await eventually(() => page.locator("#saved").textContent()).toBe("saved");
    expect(readFileSync(join(notebooks, name), "utf8")).toContain("// kept");
    expect(complaints).toEqual([]);
    rmSync(join(notebooks, name));
  });

  it("opens from the file that the browser is given at the start", async () => {
    const { page: fresh } = await watchedPage(browser, server.origin);
    const programs = process.env.PATH;
    process.env.PATH = ""; // nothing is to be started
    const remove = await openBrowser(server.address, folder);
    process.env.PATH = programs;
    await fresh.goto(`file://${join(folder, "open-notebooks.html")}`);
    await fresh.waitForURL(`${server.origin}/`);
    await fresh.locator("a.notebook", { hasText: "A calm notebook" }).waitFor();
    await remove();
    await fresh.context().close();
  });

  it("asks before it is left with unsaved changes", async () => {
    await open();
    await write("// unsaved");
    const asked = page.waitForEvent("dialog");
    void page.goto(server.origin).catch(() => {});
    const dialog = await asked;
    expect(dialog.type()).toBe("beforeunload");
    await dialog.accept();
  });

  it("runs no script of a notebook's stored outputs or prose", async () => {
    const evil = structuredClone(CALM) as { cells: { source: string; outputs?: object[] }[] };
    const attack =
      "<b>shown</b><script>window.broken=1</script><img src=x onerror='window.broken=2'><a href='javascript:window.broken=3'>x</a>";
    evil.cells[0].source = `# A calm notebook\n\n${attack}\n\n[y](javascript:window.broken=4) $\\href{javascript:window.broken=5}{z}$`;
    evil.cells[1].outputs = [
      { output_type: "display_data", metadata: {}, data: { "text/html": attack } },
      {
        output_type: "display_data",
        metadata: {},
        data: { "application/javascript": "window.broken = 6", "text/javascript": "window.broken = 7" },
      },
      {
        output_type: "display_data",
        metadata: {},
        data: {
          "image/svg+xml":
            "<svg xmlns='http://www.w3.org/2000/svg' onload='window.broken=8'><script>window.broken=9</script></svg>",
        },
      },
      {
        output_type: "display_data",
        metadata: {},
        data: {
          "application/vnd.plotly.v1+json": {
            data: [{ x: [1], y: [1], name: attack }],
            layout: { title: { text: attack } },
          },
        },
      },
      { output_type: "display_data", metadata: {}, data: { "text/markdown": attack } },
    ];
    writeFileSync(file, JSON.stringify(evil));
    await open();
    await cell(1).locator("b", { hasText: "shown" }).first().waitFor();
    for (const link of await page.locator(".jp-Notebook a", { hasText: /^[xyz]$/ }).all()) {
      expect((await link.getAttribute("href")) ?? "").not.toMatch(/^javascript/i);
    }
    await page.waitForTimeout(1000);
    expect(await page.evaluate(() => "broken" in window)).toBe(false);
    expect(await page.locator(".jp-Notebook script").count()).toBe(0);
  });

  it("fits 390 px, in the light and in the dark", async () => {
    for (const colorScheme of ["light", "dark"] as const) {
      const { page: phone, complaints: said } = await watchedPage(browser, server.origin, {
        viewport: { width: 390, height: 844 },
        colorScheme,
      });
      await phone.goto(server.address);
      await phone.waitForURL(`${server.origin}/`);
      expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
      await open(phone);
      await command("run-all", phone);
      await cell(2, phone).locator(".js-plotly-plot").waitFor();
      expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
      const width = await cell(2, phone)
        .locator(".main-svg")
        .first()
        .evaluate((svg) => svg.getBoundingClientRect().width);
      expect(width).toBeGreaterThan(250);
      expect(width).toBeLessThanOrEqual(390);
      const ground = await phone.evaluate(() => getComputedStyle(document.body).backgroundColor);
      const light = Number(/\d+/.exec(ground)?.[0]) > 128;
      expect(light).toBe(colorScheme === "light");
      expect(said).toEqual([]);
      await phone.context().close();
    }
  });

  it("makes, renames and removes notebooks on the start page, and stops kernels", async () => {
    await page.getByRole("button", { name: "new notebook" }).click();
    await ready(page);
    await page.goto(server.origin);
    page.once("dialog", (dialog) => dialog.accept("02-mine"));
    await page.locator('li[data-path="untitled.ipynb"] summary', { hasText: "more" }).click();
    await page.locator('li[data-path="untitled.ipynb"] button[data-act="rename"]').click();
    await page.locator('li[data-path="02-mine.ipynb"]').waitFor();
    page.once("dialog", (dialog) => dialog.accept());
    expect(await page.locator('button[data-act="remove"]').first().isVisible(), "nothing is removed by a slip").toBe(
      false,
    );
    await page.locator('li[data-path="02-mine.ipynb"] summary', { hasText: "more" }).click();
    await page.locator('li[data-path="02-mine.ipynb"] button[data-act="remove"]').click();
    await page.locator('li[data-path="02-mine.ipynb"]').waitFor({ state: "detached" });
    for (let left = await page.locator(".kernels li").count(); left > 0; left--) {
      await page.locator(".kernels button").first().click();
      await eventually(() => page.locator(".kernels li").count()).toBe(left - 1);
    }
    await page.locator("text=No kernel runs").waitFor();
    expect(complaints).toEqual([]);
  });
});
