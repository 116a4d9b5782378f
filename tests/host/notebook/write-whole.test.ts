import { spawn } from "node:child_process";
import { chmodSync, mkdtempSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { writeWhole } from "slabwright-host";
import { describe, expect, it } from "vitest";

const writer = require.resolve("../../../kernel-lib/host/dist/notebook/write-whole.js");

describe("writeWhole", () => {
  it("makes the folders it needs and leaves nothing beside the file", async () => {
    const folder = mkdtempSync(join(tmpdir(), "slabwright-test-"));
    await writeWhole(join(folder, "a", "b.txt"), "one");
    await writeWhole(join(folder, "a", "b.txt"), "two");
    expect(readFileSync(join(folder, "a", "b.txt"), "utf8")).toBe("two");
    expect(readdirSync(join(folder, "a"))).toEqual(["b.txt"]);
  });

  it("says why it could not, and leaves the old file as it was", async () => {
    const folder = mkdtempSync(join(tmpdir(), "slabwright-test-"));
    await expect(writeWhole(join(folder), "x")).rejects.toThrow();
    expect(statSync(folder).isDirectory()).toBe(true);
  });

  it("keeps the permissions of the file it replaces", async () => {
    const path = join(mkdtempSync(join(tmpdir(), "slabwright-test-")), "private.ipynb");
    writeFileSync(path, "one");
    for (const mode of [0o600, 0o664]) {
      chmodSync(path, mode);
      await writeWhole(path, "two");
      expect(statSync(path).mode & 0o777).toBe(process.platform === "win32" ? expect.any(Number) : mode);
    }
  });

  it("writes a file whose name is as long as names can be", async () => {
    const folder = mkdtempSync(join(tmpdir(), "slabwright-test-"));
    const name = `${"n".repeat(249)}.ipynb`;
    await writeWhole(join(folder, name), "long");
    expect(readdirSync(folder)).toEqual([name]);
  });

  it("replaces nothing when it is told so, also when many write at once", async () => {
    const folder = mkdtempSync(join(tmpdir(), "slabwright-test-"));
    const path = join(folder, "new.ipynb");
    const attempts = await Promise.allSettled(
      Array.from({ length: 20 }, (_, at) => writeWhole(path, `writer ${at}`, { replace: false })),
    );
    const done = attempts.flatMap(({ status }, at) => (status === "fulfilled" ? [at] : []));
    expect(done).toHaveLength(1);
    expect(readFileSync(path, "utf8")).toBe(`writer ${done[0]}`);
    expect(attempts.filter((one) => one.status === "rejected" && one.reason.code === "EEXIST")).toHaveLength(19);
    expect(readdirSync(folder)).toEqual(["new.ipynb"]);
  });

  it("sweeps up what a killed save has left, and leaves what a running one is writing", async () => {
    const folder = mkdtempSync(join(tmpdir(), "slabwright-test-"));
    const script = `
      const { writeWhole } = require(${JSON.stringify(writer)});
      (async () => {
        for (;;) await writeWhole(${JSON.stringify(join(folder, "a.ipynb"))}, "x".repeat(20_000_000));
      })();`;
    const drafts = (): string[] => readdirSync(folder).filter((name) => name.endsWith(".part"));
    const child = spawn(process.execPath, ["-e", script], { stdio: "inherit" });
    const ended = new Promise((done) => child.once("exit", done));
    let draft: string | undefined;
    while (!draft) {
      await expect.poll(() => drafts().length, { timeout: 20_000, interval: 1 }).toBe(1);
      child.kill("SIGSTOP"); // as if it took long
      await new Promise((done) => setTimeout(done, 50));
      [draft] = drafts();
      if (!draft) child.kill("SIGCONT"); // it was just done
    }
    await writeWhole(join(folder, "b.ipynb"), "one");
    expect(drafts(), "a running save").toEqual([draft]);
    child.kill("SIGKILL");
    await ended;
    writeFileSync(join(folder, "mine.part"), "");
    await writeWhole(join(folder, "b.ipynb"), "two");
    expect(drafts()).toEqual(["mine.part"]);
  }, 60_000);

  // 200 processes that save without end, each killed at another moment: the file must be one save or the other, never
  // a part of one. Sizes differ, so that a torn file cannot pass; each says when it has come to its first to its tenth
  // save, so that also a busy machine kills at different ones.
  it("is killed 200 times while it saves, and the file is always whole", async () => {
    const folder = mkdtempSync(join(tmpdir(), "slabwright-test-"));
    const path = join(folder, "notebook.ipynb");
    const script = `
      const { writeWhole } = require(${JSON.stringify(writer)});
      (async () => {
        for (let n = 1; ; n++) {
          if (n === 1 + Number(process.argv[1])) console.log("ready");
          const size = 1000 + (n % 7) * 60000;
          await writeWhole(${JSON.stringify(path)}, JSON.stringify({ n, size, text: "x".repeat(size) }));
        }
      })();`;
    await writeWhole(path, JSON.stringify({ n: 0, size: 0, text: "" }));
    const seen = new Set<number>();
    const once = async (round: number): Promise<void> => {
      const child = spawn(process.execPath, ["-e", script, String(round % 10)], {
        stdio: ["ignore", "pipe", "inherit"],
      });
      await new Promise((done) => child.stdout.once("data", done));
      await new Promise((done) => setTimeout(done, 1 + ((round * 7) % 23)));
      child.kill("SIGKILL");
      await new Promise((done) => child.once("exit", done));
      const { n, size, text } = JSON.parse(readFileSync(path, "utf8"));
      expect(text.length).toBe(size);
      seen.add(n);
    };
    for (let round = 0; round < 200; round++) await once(round);
    await writeWhole(join(folder, "after.ipynb"), "");
    expect(readdirSync(folder).sort()).toEqual(["after.ipynb", "notebook.ipynb"]);
    expect(seen.size, "kills at many different saves").toBeGreaterThan(5);
  }, 240_000);
});
