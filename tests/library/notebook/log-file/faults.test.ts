import type * as Fs from "node:fs";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { addLine } from "../../../../kernel-lib/library/src/notebook/log-file/add-line";
import { writeWholeFile } from "../../../../kernel-lib/library/src/notebook/log-file/whole-file";

// calls that change the disk, counted; the one whose turn it is fails
const faults = vi.hoisted(() => ({ left: Number.POSITIVE_INFINITY, short: false, failed: "" }));

vi.mock("node:fs", async (importOriginal) => {
  const real = await importOriginal<typeof Fs>();
  const failing =
    (name: string, call: (...args: never[]) => unknown) =>
    (...args: never[]): unknown => {
      faults.left -= 1;
      if (faults.left === 0) {
        faults.failed = name;
        if (name === "writeSync" && faults.short) {
          faults.left = 1;
          faults.short = false;
          const [handle, bytes, at, length, position] = args as unknown as [number, Uint8Array, number, number, number];
          return real.writeSync(handle, bytes, at, Math.max(1, length >> 1), position);
        }
        throw Object.assign(new Error(`ENOSPC: no space left on device, ${name}`), { code: "ENOSPC" });
      }
      return call(...args);
    };
  const named = ["writeSync", "fsyncSync", "renameSync", "openSync", "fchmodSync", "mkdirSync"] as const;
  const mended = Object.fromEntries(named.map((name) => [name, failing(name, real[name] as never)]));
  return { ...real, ...mended, default: { ...real, ...mended } };
});

let folder: string;
let log: string;
const FIRST = "trial,note\r\nA,first\r\n";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "log-"));
  log = join(folder, "log.csv");
  writeFileSync(log, FIRST);
  faults.left = Number.POSITIVE_INFINITY;
  faults.short = false;
});
afterEach(() => rmSync(folder, { recursive: true }));

function failedAt(turn: number, short: boolean, work: () => unknown): boolean {
  faults.left = turn;
  faults.short = short;
  try {
    work();
    return false;
  } catch (error) {
    expect((error as Error).message).toMatch(/ENOSPC/);
    return true;
  } finally {
    faults.left = Number.POSITIVE_INFINITY;
  }
}

describe.each([false, true])(
  "an error at each write, fsync, open and rename in turn (first a short write: %s)",
  (short) => {
    it("adds a line whole or not at all, and says so rightly", () => {
      const failures = new Set<string>();
      for (let turn = 1; ; turn++) {
        writeFileSync(log, FIRST);
        rmSync(join(folder, ".history"), { recursive: true, force: true });
        const failed = failedAt(turn, short, () => addLine(log, { trialId: "B", line: 'B,"a\nnote"', by: null }));
        const text = readFileSync(log, "utf8");
        if (!failed) {
          expect(text).toBe(`${FIRST}B,"a\nnote"\r\n`);
          expect(turn).toBeGreaterThan(8);
          break;
        }
        failures.add(faults.failed);
        expect(text).toBe(FIRST);
        addLine(log, { trialId: "C", line: "C,next", by: null });
        expect(readFileSync(log, "utf8")).toBe(`${FIRST}C,next\r\n`);
      }
      expect([...failures].sort()).toEqual(["fsyncSync", "mkdirSync", "openSync", "writeSync"]);
    });

    it("replaces a file whole or not at all, and leaves no draft", () => {
      for (let turn = 1; ; turn++) {
        writeFileSync(log, FIRST);
        const failed = failedAt(turn, short, () => writeWholeFile(log, "new\n"));
        const text = readFileSync(log, "utf8");
        if (!failed) {
          expect(text).toBe("new\n");
          expect(turn).toBeGreaterThan(4);
          break;
        }
        // after the rename the new text is there, though its name may not be forced to the disk
        expect([FIRST, "new\n"]).toContain(text);
        expect(readdirSync(folder).filter((name) => name.endsWith(".part"))).toEqual([]);
      }
    });
  },
);
