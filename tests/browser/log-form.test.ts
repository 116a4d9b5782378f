/// <reference lib="dom" />
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import type { Browser, Page } from "playwright-core";
import { buildPage, type NotebookServer, serveNotebooks } from "slabwright-host";
import { afterAll, afterEach, beforeAll, beforeEach, expect, it, vi } from "vitest";
import { trialPlan } from "../../kernel-lib/library/src/advice/run-sheet/trial-plan";
import { loadKitchen } from "../../kernel-lib/library/src/notebook/load-kitchen";
import { savePlan } from "../../kernel-lib/library/src/notebook/plans/save-plan";
import { youngKitchen } from "../host/kitchen/young-kitchen";
import { projectWith } from "../host/server/project";
import { axeFindings, describeInBrowser, launch, watchedPage } from "./chromium";

// a busy machine is slow, and a slow answer is no fault
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });
const eventually = <T>(read: () => Promise<T>) => expect.poll(read, { timeout: 40_000, interval: 100 });

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

describeInBrowser("the trial form on a telephone", () => {
  const folder = youngKitchen(3);
  const log = join(folder, "trials", "first-log.csv");
  const sound = readFileSync(log, "utf8");
  const { notebooks } = projectWith();
  const serve = (port = 0): Promise<NotebookServer> =>
    serveNotebooks({
      folder: notebooks,
      port,
      kitchen: { name: "Corner kitchen", folder, report: join(folder, "out", "report.html"), project: resolve(".") },
    });
  let browser: Browser;
  let server: NotebookServer;
  let page: Page;
  let complaints: string[];

  beforeAll(async () => {
    await buildPage();
    browser = await launch();
    server = await serve();
  });
  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });
  beforeEach(async () => {
    writeFileSync(log, sound);
    ({ page, complaints } = await watchedPage(browser, server.origin, PHONE));
    await page.goto(server.address);
    await page.waitForURL(`${server.origin}/`);
    await page.getByRole("link", { name: "log a trial" }).tap();
    await page.locator('#log[aria-busy="false"]').waitFor();
  });
  afterEach(() => page.context().close());

  const card = () => page.locator("article.trial").first();
  const box = (label: string | RegExp) => card().getByLabel(label);
  const press = (name: string) => card().getByRole("button", { name, exact: true }).tap();
  const begin = async (): Promise<string> => {
    await page.locator(".beginnings button").first().tap();
    await card().locator(".send").waitFor();
    return String(await card().locator("h2").textContent()).split(" · ")[0];
  };
  const fill = async (label: string | RegExp, text: string): Promise<void> => {
    await box(label).tap();
    await page.keyboard.type(text);
  };
  const checked = () => page.locator('article.trial[aria-busy="false"]').first().waitFor();
  const logged = (id: string) => loadKitchen(folder).trials.filter(({ trialId }) => trialId === id);
  /** Lets the page's clock go on, as a locked telephone would. */
  const later = (minutes: number) => page.clock.fastForward(Math.round(minutes * 60_000));

  it("gives axe nothing above minor, before and with a trial", async () => {
    expect(await axeFindings(page)).toEqual([]);
    await begin();
    await checked();
    expect(await axeFindings(page)).toEqual([]);
  });

  it("takes a usual trial from the first reading to the log, with the clock's times, in far less than a minute of tapping", async () => {
    await page.clock.install();
    const tapped = { taps: 0, ms: 0 };
    const timed = async (run: () => Promise<unknown>): Promise<void> => {
      const began = performance.now();
      await run();
      tapped.taps++;
      tapped.ms += performance.now() - began;
    };
    let id = "";
    await timed(async () => {
      id = await begin();
    });
    expect(id).toMatch(/^A-4$/);
    for (const [at, mm] of ["9.1", "8.8", "9.4", "9,2", "9"].entries())
      await timed(() => fill(`thickness ${at + 1}, mm`, mm));
    await timed(() => press("start"));
    await later(8);
    await timed(() => press("not yet"));
    await later(1.5);
    await timed(() => press("crisp"));
    await later(0.75);
    await timed(() => press("taken out"));
    await timed(() => fill("core 1, °C", "81"));
    await timed(() => fill(/^before/, "400"));
    await timed(() => fill(/^after/, "350"));
    await timed(() => fill(/^pieces/, "30"));
    await timed(() => fill("taster 1: initials", "AB"));
    await timed(() => fill(/taster 1: crisp/, "7"));
    await timed(() => fill(/taster 1: brown/, "3"));
    await later(0.05);
    await timed(async () => {
      await press("log it");
      await card().locator(".done").waitFor();
    });
    expect(await card().locator(".done").textContent()).toContain(`${id} of first-variant`);
    expect(await card().locator(".done").textContent()).toContain("trials/first-log.csv");
    expect(logged(id)).toMatchObject([
      {
        probesMm: [9.1, 8.8, 9.4, 9.2, 9],
        looksMin: [8, 9.5],
        notCrispMin: 8,
        crispMin: 9.5,
        timeMin: 10.25,
        coreC: 81,
        massBeforeG: 400,
        massAfterG: 350,
        pieces: 30,
        crispScores: [7],
        crispTasters: ["AB"],
      },
    ]);
    console.log(`a usual trial: ${tapped.taps} fields and presses, ${(tapped.ms / 1000).toFixed(1)} s`);
    // the readings themselves, weighing and tasting come on top: this is the page's own share
    expect(tapped.ms).toBeLessThan(40_000);
    expect(tapped.taps).toBeLessThanOrEqual(20);
    expect(complaints).toEqual([]);
  });

  it("begins planned trials from a plan of the kitchen, each once, and shows what is open of it", async () => {
    const kitchen = loadKitchen(folder);
    const [{ variantId }] = kitchen.variants;
    const trials = [9, 12].map((timeMin) => ({ variantId, timeMin, looksMin: [7], setpointC: 190, purpose: "early" }));
    savePlan(trialPlan({ kitchen, name: "monday", trials, today: "2026-05-04" }), { folder });
    try {
      await page.goto(`${server.origin}/log?plan=monday`);
      const planned = page.locator("section.plan li button");
      await planned.first().waitFor();
      const ids = await planned.allTextContents();
      expect(ids.length).toBe(2);
      await planned.first().tap();
      await card().locator(".send").waitFor();
      expect(await card().locator("h2").textContent()).toContain(ids[0]);
      expect(await card().locator(".planned").textContent()).toContain("out at 9 min");
      expect(await box(/^setpoint/).inputValue()).toBe("190");
      expect(await box(/^note/).inputValue()).toBe("early");
      await planned.first().tap();
      expect(await page.locator("article.trial").count()).toBe(1);
      await fill("thickness 1, mm", "9.1");
      await fill(/^time min/, "9");
      await press("log it");
      await card().locator(".done").waitFor();
      expect(logged(ids[0])).toMatchObject([{ setpointC: 190, timeMin: 9 }]);
      await page.reload();
      await eventually(() => planned.allTextContents()).toEqual([ids[1]]);
      await page.goto(`${server.origin}/log?plan=tuesday`);
      await eventually(() => page.locator("#notice").textContent()).toContain("no plan tuesday");
      expect(complaints).toEqual([]);
    } finally {
      rmSync(join(folder, "plans"), { recursive: true });
    }
  });

  it("says slips one a line, and begins a trial where they are of prices and packs alone", async () => {
    const pantry = join(folder, "pantry.csv");
    const lines = () => page.locator("#notice p").allTextContents();
    try {
      writeFileSync(pantry, "ingredient,pack_g,price,priced\nunobtainium,500,2,soon\n");
      await page.reload();
      await eventually(lines).toEqual([
        expect.stringMatching(/^pantry\.csv row 2, column priced/),
        expect.stringMatching(/^pantry\.csv row 2, column ingredient/),
      ]);
      await begin();
      await checked();
      expect(
        await card()
          .getByText(/pantry/)
          .count(),
      ).toBe(0);
      writeFileSync(log, sound.replaceAll("half-sheet", "half*sheet").replaceAll("2026-", "2O26-"));
      await page.reload();
      await eventually(async () => (await lines()).length).toBeGreaterThan(2);
      expect((await lines()).at(-1)).toBe("Trials can be typed, and logged once this is mended.");
      await page.evaluate(() => localStorage.clear());
      await page.reload();
      await eventually(async () => (await lines()).length).toBeGreaterThan(1);
      expect((await lines()).join()).not.toContain("Trials can be typed");
      expect((await lines()).join()).not.toMatch(/pantry/);
    } finally {
      rmSync(pantry);
    }
  });

  it("keeps what was typed and goes on timing over a reload and a closed tab", async () => {
    await begin();
    await fill("thickness 1, mm", "9.1");
    await press("start");
    await fill("taster 1: initials", "AB");
    await page.clock.install({ time: Date.now() + 8 * 60_000 });
    await page.reload();
    await card().locator(".send").waitFor();
    expect(await box("thickness 1, mm").inputValue()).toBe("9.1");
    expect(await box("taster 1: initials").inputValue()).toBe("AB");
    await eventually(() => card().locator(".clock").textContent()).toMatch(/^8:/);
    const other = await page.context().newPage();
    await page.close();
    page = other;
    await page.clock.install({ time: Date.now() + 9 * 60_000 });
    await page.goto(`${server.origin}/log`);
    await press("not yet");
    expect(await box(/^not crisp/).inputValue()).toMatch(/^9(\.25)?$/);
    await press("take the last press back");
    expect(await box(/^not crisp/).inputValue()).toBe("");
  });

  it("says problems and notices beside the fields that they are about, and what is assumed", async () => {
    await begin();
    const said = (heading: string) => card().locator(`[data-heading="${heading}"] .said`);
    await fill("thickness 1, mm", "nine");
    await eventually(() => said("thickness_mm").textContent()).toContain("expected numbers in mm");
    expect(await box("thickness 1, mm").getAttribute("aria-invalid")).toBe("true");
    await box("thickness 1, mm").fill("9");
    await fill("thickness 2, mm", "25");
    await eventually(() => said("thickness_mm").textContent()).toContain("differ by more than 6 in 10");
    expect(await box("thickness 1, mm").getAttribute("aria-invalid")).toBe(null);
    expect(await card().locator(".general").textContent()).toContain("Still to come: time");
    await fill(/^time min/, "10");
    await fill("core 1, °C", "60");
    await eventually(() => card().locator(".cold").textContent()).toContain("not safe, however crisp");
    expect(await card().locator(".caution").textContent()).toMatch(
      /Crisp is not safe\. .*Core at least .*Local food codes .* come first\. Check the thickest piece/,
    );
    expect(complaints).toEqual([]);
  });

  it("keeps a trial while the server is away, sends it when told to, and never twice", async () => {
    const id = await begin();
    await fill("thickness 1, mm", "9.1");
    await fill(/^time min/, "10");
    await checked();
    const { port } = server;
    await server.close();
    await press("log it");
    await eventually(() => page.locator(".waiting").textContent()).toBe("1 trial is not sent yet.");
    expect(await card().locator(".state").textContent()).toContain("The server does not answer");
    expect(logged(id)).toEqual([]);
    server = await serve(port);
    await press("send now");
    await eventually(() => card().locator(".state").textContent()).toContain("was started anew");
    await page.goto(server.address);
    await page.waitForURL(`${server.origin}/`);
    await page.goto(`${server.origin}/log`);
    await card().locator(".send").waitFor();
    expect(logged(id), "it is sent when the person says so").toEqual([]);
    // the answer is lost on the way
    await page.route("**/log/trial", async (route) => {
      await route.fetch();
      await route.abort();
    });
    await press("send now");
    await eventually(() => card().locator(".state").textContent()).toContain("Not sent yet");
    expect(logged(id)).toHaveLength(1);
    const once = readFileSync(log, "utf8");
    await page.unroute("**/log/trial");
    await press("send now");
    await eventually(() => card().locator(".done").textContent()).toContain("it was not logged a second time");
    expect(readFileSync(log, "utf8")).toBe(once);
    expect(logged(id)).toHaveLength(1);
    expect(await page.locator(".waiting").textContent()).toBe("");
  });

  it("tells another trial of the same name apart, and offers a free name", async () => {
    const id = await begin();
    await fill("thickness 1, mm", "9.1");
    await fill(/^time min/, "10");
    writeFileSync(log, `${sound}${sound.split("\n")[1].replace("A-1", id)}\n`);
    await press("log it");
    await eventually(() => card().locator(".general").textContent()).toContain("no other trial has");
    await press("it is another trial: look for a free name");
    await eventually(() => card().locator("h2").textContent()).toContain("A-5");
    await press("log it");
    await card().locator(".done").waitFor();
    expect([logged(id).length, logged("A-5").length]).toEqual([1, 1]);
  });

  it("takes a logged trial back, and has it as a draft again", async () => {
    const id = await begin();
    await fill("thickness 1, mm", "9.1");
    await fill(/^time min/, "10");
    await press("log it");
    await card().locator(".done").waitFor();
    await press("undo");
    await card().locator(".send").waitFor();
    expect(logged(id)).toEqual([]);
    expect(readFileSync(log, "utf8").trim()).not.toContain(id);
    expect(await box("thickness 1, mm").inputValue()).toBe("9.1");
    page.once("dialog", (dialog) => dialog.accept());
    await press("throw away");
    await eventually(() => page.locator("article.trial").count()).toBe(0);
  });

  it("shows hostile text as text", async () => {
    await begin();
    await fill("thickness 1, mm", "9.1");
    await fill(/^time min/, "10");
    await fill("note", '<img src=x onerror="document.title=1">');
    await box("thickness 2, mm").fill("<b>9</b>");
    await eventually(() => card().locator('[data-heading="thickness_mm"] .said').textContent()).toContain("<b>9</b>");
    await page.reload();
    await card().locator(".send").waitFor();
    expect(await card().locator("img, b").count()).toBe(0);
    expect(await page.title()).toBe("Log a trial · Corner kitchen");
    expect(complaints).toEqual([]);
  });

  it("fits 390 and 1200 px, in the light and in the dark, with labels, number pads and targets for a thumb", async () => {
    await begin();
    await press("start");
    for (const [width, colorScheme] of [
      [390, "light"],
      [390, "dark"],
      [1200, "light"],
    ] as const) {
      await page.setViewportSize({ width, height: 844 });
      await page.emulateMedia({ colorScheme });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
    }
    await page.setViewportSize({ width: 390, height: 844 });
    await card().locator("summary").tap();
    const bare = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLInputElement>("article input, article select, article textarea")]
        .filter((box) => !box.ariaLabel && !box.labels?.length)
        .map((box) => box.id),
    );
    expect(bare).toEqual([]);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>("article input, article select, article button, .beginnings button")]
        .filter((one) => one.offsetParent !== null)
        .map((one) => ({ name: one.ariaLabel ?? one.textContent, ...one.getBoundingClientRect().toJSON() }))
        .filter(({ width, height }) => width < 44 || height < 44)
        .map(({ name }) => name),
    );
    expect(small).toEqual([]);
    for (const label of ["thickness 1, mm", "core 1, °C", /^before/, /^pieces/, /^time min/])
      expect(await box(label).getAttribute("inputmode")).toBe("decimal");
  });
});
