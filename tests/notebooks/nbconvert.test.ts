// Outside check: Debian's nbconvert 6.5.3 with nbclient 0.7.2 runs the notebooks through the kernelspec that
// `slabwright notebook --register` writes, and what it stores is compared with what our runner stores.
import { execFileSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { compareOutputs, readNotebook, register, runNotebook } from "slabwright-host";
import { afterAll, describe, expect, it, vi } from "vitest";

vi.setConfig({ testTimeout: 180_000 });

const root = resolve(__dirname, "../..");
const jupyter = "/usr/bin/jupyter-nbconvert";
const present = existsSync(jupyter);
if (!present) console.warn("skipped: comparison with nbconvert: Debian's jupyter-nbconvert is not here");

describe.skipIf(!present)("nbconvert --execute", () => {
  // beside notebooks/, so that packages resolve as they do there
  const folder = join(root, "out", `nbconvert-${process.pid}`);
  mkdirSync(folder, { recursive: true });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it.each(["01-thickness-and-crisp-time.ipynb", "02-yield-and-macros.ipynb"])(
    "stores for %s what our runner stores",
    async (name) => {
      const path = join(folder, name);
      cpSync(join(root, "notebooks", name), path);
      const data = mkdtempSync(join(tmpdir(), "slabwright-test-"));
      await register(data);
      const words = ["--to", "notebook", "--execute", "--output", `theirs-${name}`, path];
      execFileSync(jupyter, words, { env: { ...process.env, JUPYTER_DATA_DIR: data }, stdio: "pipe" });
      const theirs = await readNotebook(join(folder, `theirs-${name}`));
      const { notebook: ours, failure } = await runNotebook({ path });
      expect(failure).toBeNull();
      expect(ours.cells.flatMap((cell) => cell.outputs ?? []).length).toBeGreaterThan(5);
      expect(compareOutputs(theirs, ours)).toEqual([]);
    },
  );

  it("takes a notebook that our page and runner wrote", async () => {
    const path = join(folder, "written.ipynb");
    await runNotebook({ path: join(root, "tests/host/notebooks/every-output.ipynb"), copyTo: path });
    execFileSync(jupyter, ["--to", "html", "--output", "written.html", path], { stdio: "pipe" });
    expect(existsSync(join(folder, "written.html"))).toBe(true);
  });
});
