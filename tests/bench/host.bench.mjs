/**
 * The host: a run of one notebook and of a set against Debian's `jupyter nbconvert --execute` on the same notebooks and kernel, the
 * same set checked against what it gave, how soon
 * the notebook page is ready with its kernel, a completion there and back, what the page weighs, and how many lines a cell may
 * print in a loop.
 */
import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";

const { buildPage, execute, register, runNotebook, serveNotebooks, startKernel } = createRequire(import.meta.url)(
  "slabwright-host",
);

const root = fileURLToPath(new URL("../..", import.meta.url));
const notebook = join(root, "notebooks", "01-thickness-and-crisp-time.ipynb");
const nbconvert = "/usr/bin/jupyter-nbconvert";
const chromium = ["/usr/bin/chromium", "/usr/bin/chromium-browser"].find((path) => existsSync(path));
const ROUNDS = 3;
const SET_ROUNDS = 3;

/** One array of rows, as the bench prints them. */
export async function rows() {
  await buildPage();
  return [...(await runRows()), ...(await setRows()), await floodRow(), bundleRow(), ...(await pageRows())];
}

/** A notebook that was never compiled, beside nbconvert, which compiles each time; and the same notebook once more. */
async function runRows() {
  const data = mkdtempSync(join(tmpdir(), "slabwright-bench-"));
  await register(data);
  const [first, again, theirs] = [[], [], []];
  for (let round = 0; round < ROUNDS; round++) {
    // beside notebooks/, so that packages resolve alike; a folder that no cell was compiled in yet
    const folder = join(root, "out", `bench-${process.pid}-${round}`);
    mkdirSync(folder, { recursive: true });
    const path = join(folder, "measured.ipynb");
    cpSync(notebook, path);
    try {
      const run = () => timed(() => runNotebook({ path, copyTo: join(folder, "copy.ipynb") }));
      first.push(await run());
      again.push(await run());
      if (!existsSync(nbconvert)) continue;
      const words = ["--to", "notebook", "--execute", "--output", "theirs.ipynb", path];
      const env = { ...process.env, JUPYTER_DATA_DIR: data };
      theirs.push(
        await timed(() => {
          const { status, stderr } = spawnSync(nbconvert, words, { env });
          if (status !== 0) throw new Error(`nbconvert failed: ${stderr}`);
        }),
      );
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }
  return [
    row("host.run.ms", median(first), "ms", {
      peer: theirs.length ? "nbconvert --execute" : null,
      peerValue: theirs.length ? median(theirs) : null,
      note: theirs.length
        ? `notebook 01, start of the kernel included, nothing compiled before, median of ${ROUNDS} in turns`
        : "Debian's jupyter-nbconvert is not here",
    }),
    row("host.runAgain.ms", median(again), "ms", { note: "the same, with what its cells compile to in the store" }),
  ];
}

/** Eight notebooks by one command, never compiled before, once more, and checked; nbconvert takes them by one command too. */
async function setRows() {
  const data = mkdtempSync(join(tmpdir(), "slabwright-bench-"));
  await register(data);
  const [first, again, checked, theirs] = [[], [], [], []];
  for (let round = 0; round < SET_ROUNDS; round++) {
    const folder = join(root, "out", `bench-set-${process.pid}-${round}`);
    mkdirSync(folder, { recursive: true });
    const names = readdirSync(join(root, "notebooks")).filter((name) => /^0[0-7].*\.ipynb$/.test(name));
    for (const name of names) cpSync(join(root, "notebooks", name), join(folder, name));
    const paths = names.map((name) => join(folder, name));
    const bin = join(root, "kernel-lib", "host", "bin", "slabwright.js");
    const ours = (...words) => timed(() => finished(process.execPath, [bin, ...words]));
    try {
      first.push(await ours("run", ...paths, "--out", folder));
      again.push(await ours("run", ...paths, "--out", folder));
      checked.push(await ours("check", ...names.map((name) => join(folder, "notebooks", name))));
      if (!existsSync(nbconvert)) continue;
      const words = ["--to", "notebook", "--execute", "--output-dir", join(folder, "theirs"), ...paths];
      theirs.push(await timed(() => finished(nbconvert, words, { ...process.env, JUPYTER_DATA_DIR: data })));
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }
  rmSync(data, { recursive: true });
  const peer = theirs.length > 0 ? { peer: "nbconvert --execute", peerValue: median(theirs) } : {};
  return [
    row("host.runSet.ms", median(first), "ms", {
      ...peer,
      note: `eight notebooks by one command, nothing compiled before, median of ${SET_ROUNDS}`,
    }),
    row("host.runSetAgain.ms", median(again), "ms", {
      ...peer,
      note: "the same, with what cells compile to in the store",
    }),
    row("share.check.ms", median(checked), "ms", {
      ...peer,
      note: "the same eight run again and compared with what they gave; nbconvert runs and does not compare",
    }),
  ];
}

/** Runs a program to its end. */
function finished(program, words, env = process.env) {
  const { status, stdout, stderr } = spawnSync(program, words, { env, cwd: root, encoding: "utf8" });
  if (status !== 0) throw new Error(`${program} ${words[0]} ended with ${status}: ${stderr}${stdout}`);
}

async function floodRow() {
  const kernel = await startKernel({ folder: join(root, "notebooks") });
  let most = 0;
  let took = null;
  try {
    for (const lines of [500, 5_000, 50_000]) {
      let printed = "";
      const onNews = ({ content }) => {
        printed += content.text ?? "";
      };
      const code = `for (let i = 0; i < ${lines}; i++) console.log(i);`;
      let status;
      const ms = await timed(async () => {
        ({ status } = await execute(kernel, { code, limitMs: 30_000, onNews }));
      });
      if (status !== "ok" || printed !== Array.from({ length: lines }, (_, line) => `${line}\n`).join("")) break;
      most = lines;
      took = ms;
    }
  } finally {
    await kernel.stop();
  }
  return row("host.flood.lines", most, "lines", {
    note: `the most of 500, 5,000 and 50,000 lines from a loop that came whole and in order${took === null ? "" : `, in ${took.toFixed(0)} ms`}`,
  });
}

function bundleRow() {
  const folder = join(root, "kernel-lib", "host", "dist", "page");
  const files = readdirSync(folder).filter((name) => /^notebook\.(js|css)$/.test(name));
  const bytes = files.reduce((sum, name) => sum + gzipSync(readFileSync(join(folder, name))).length, 0);
  return row("host.bundle.gzipKb", bytes / 1000, "kB", {
    note: `${files.join(" and ")}; plotly comes with the first figure`,
  });
}

async function pageRows() {
  if (!chromium) {
    const none = { note: "no Chromium was found" };
    return [row("host.pageReady.ms", null, "ms", none), row("host.complete.ms", null, "ms", none)];
  }
  const playwright = await import("playwright-core");
  const browser = await playwright.chromium.launch({ executablePath: chromium, args: ["--no-sandbox"] });
  const [readies, completions] = [[], []];
  try {
    for (let round = 0; round < ROUNDS; round++) {
      const server = await serveNotebooks({ folder: join(root, "notebooks") });
      const page = await browser.newPage();
      await page.goto(server.address);
      await page.waitForURL(`${server.origin}/`);
      readies.push(
        await timed(async () => {
          await page.goto(`${server.origin}/open/01-thickness-and-crisp-time.ipynb`);
          await page.waitForFunction(() => document.body.dataset.ready === "true");
          await page.locator('#kernel[data-state="idle"]').waitFor();
        }),
      );
      await page.locator(".jp-CodeCell .cm-content").first().click();
      for (let turn = 0; turn < 6; turn++) {
        await page.keyboard.press("ControlOrMeta+End");
        await page.keyboard.insertText("\nMath.");
        const took = await timed(async () => {
          await page.keyboard.press("Tab");
          await page.locator(".jp-Completer-item", { hasText: "hypot" }).waitFor();
        });
        if (turn > 0) completions.push(took); // the first loads the compiler's library files
        await page.keyboard.press("Escape");
        await page.keyboard.press("Enter");
        for (let left = 0; left < 6; left++) await page.keyboard.press("Backspace");
      }
      await page.close();
      await server.close();
    }
  } finally {
    await browser.close();
  }
  return [
    row("host.pageReady.ms", median(readies), "ms", {
      note: `from the address to a page with its kernel ready, a new server each time, median of ${ROUNDS}`,
    }),
    row("host.complete.ms", median(completions), "ms", {
      note: `from Tab to the list on the page, median of ${completions.length}`,
    }),
  ];
}

function row(name, value, unit, { peer = null, peerValue = null, note }) {
  return { name, value, unit, peer, peerValue, ratio: peerValue === null ? null : value / peerValue, note };
}

async function timed(work) {
  const began = performance.now();
  await work();
  return performance.now() - began;
}

function median(values) {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)];
}
