import { spawn } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { writeWhole } from "slabwright-host";
import { describe, expect, it } from "vitest";

const host = require.resolve("../../../kernel-lib/host");

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

  // 200 processes that save without end, each killed at another moment: the file must be one save or the other, never
  // a part of one. Sizes differ, so that a torn file cannot pass.
  it("is killed 200 times while it saves, and the file is always whole", async () => {
    const folder = mkdtempSync(join(tmpdir(), "slabwright-test-"));
    const path = join(folder, "notebook.ipynb");
    const script = `
      const { writeWhole } = require(${JSON.stringify(host)});
      (async () => {
        console.log("ready");
        for (let n = 1; ; n++) {
          const size = 1000 + (n % 7) * 60000;
          await writeWhole(${JSON.stringify(path)}, JSON.stringify({ n, size, text: "x".repeat(size) }));
        }
      })();`;
    await writeWhole(path, JSON.stringify({ n: 0, size: 0, text: "" }));
    const seen = new Set<number>();
    const once = async (round: number): Promise<void> => {
      const child = spawn(process.execPath, ["-e", script], { stdio: ["ignore", "pipe", "inherit"] });
      await new Promise((done) => child.stdout.once("data", done));
      await new Promise((done) => setTimeout(done, 1 + ((round * 7) % 23)));
      child.kill("SIGKILL");
      await new Promise((done) => child.once("exit", done));
      const { n, size, text } = JSON.parse(readFileSync(path, "utf8"));
      expect(text.length).toBe(size);
      seen.add(n);
    };
    for (let round = 0; round < 200; round++) await once(round);
    expect(seen.size, "kills at many different saves").toBeGreaterThan(5);
  }, 240_000);
});
