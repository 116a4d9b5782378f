/// <reference lib="dom" />
import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { describe } from "vitest";

const found = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find((path) =>
  existsSync(path),
);

/** A group of tests that need a browser: required where CI is set, skipped with a printed reason elsewhere. */
export function describeInBrowser(name: string, body: () => void): void {
  if (found || process.env.CI) {
    describe(name, body);
    return;
  }
  console.warn(`skipped: ${name}: no Chromium was found (on Debian: apt-get install chromium)`);
  describe.skip(name, body);
}

/** Starts the browser; without its sandbox, as containers and root cannot have one. */
export function launch(): Promise<Browser> {
  if (!found) throw new Error("a Chromium must be installed where CI is set (on Debian: apt-get install chromium)");
  return chromium.launch({ executablePath: found, args: ["--no-sandbox"] });
}

/** A page that notes what must not happen: console errors, page errors, requests to anywhere but `home`. */
export async function watchedPage(
  browser: Browser,
  home: string,
  options: BrowserContextOptions = {},
): Promise<{ page: Page; complaints: string[] }> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  context.setDefaultTimeout(40_000);
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(`console: ${message.text()}`);
  });
  page.on("pageerror", (error) => complaints.push(`page: ${error}`));
  page.on("request", (request) => {
    if (!/^(data|blob):/.test(request.url()) && !request.url().startsWith(home))
      complaints.push(`request: ${request.url()}`);
  });
  return { page, complaints };
}

/** Scrolls to each figure of a report in turn, until all are drawn; returns how many there are. */
export async function drawAll(page: Page): Promise<number> {
  const canvases = await page.locator("figure.plot .canvas").all();
  for (const canvas of canvases)
    await canvas.evaluate((one) => {
      one.scrollIntoView();
      return new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
    });
  await page.waitForFunction((due) => document.body.dataset.figures === String(due), canvases.length);
  return canvases.length;
}

/** How many pages of paper a page prints on. */
export async function printedPages(page: Page, format: "A4" | "Letter"): Promise<number> {
  const pdf = (await page.pdf({ format, preferCSSPageSize: true })).toString("latin1");
  return (pdf.match(/\/Type \/Page\b/g) ?? []).length;
}

const axe = createRequire(import.meta.url).resolve("axe-core/axe.min.js");

/** What axe-core (Deque Systems, rules for WCAG 2) finds on a page above "minor": a rule and the first element that breaks it. */
export async function axeFindings(page: Page): Promise<string[]> {
  await page.evaluate(readFileSync(axe, "utf8"));
  return page.evaluate(async () => {
    interface Violation {
      readonly id: string;
      readonly impact: string;
      readonly nodes: readonly { readonly html: string }[];
    }
    const { run } = (window as unknown as { axe: { run(): Promise<{ violations: Violation[]; passes: unknown[] }> } })
      .axe;
    const { violations, passes } = await run();
    if (passes.length === 0) return ["axe looked at nothing"];
    return violations.filter(({ impact }) => impact !== "minor").map(({ id, nodes }) => `${id}: ${nodes[0].html}`);
  });
}
