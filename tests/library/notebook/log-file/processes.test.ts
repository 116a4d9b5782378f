import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { addLine } from "../../../../kernel-lib/library/src/notebook/log-file/add-line";
import { whileLocked } from "../../../../kernel-lib/library/src/notebook/log-file/file-lock";
import { lastDeed, readHistory } from "../../../../kernel-lib/library/src/notebook/log-file/log-history";

const BUILT = resolve("kernel-lib/library/dist/notebook/log-file");
/** `LOG_PROCESS_ROWS=5000` runs the test as large as it is promised; CI runs a smaller one. */
const ROWS = Number(process.env.LOG_PROCESS_ROWS ?? 150);
const KILLS = Number(process.env.LOG_KILLS ?? 12);

let folder: string;
let log: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "log-"));
  log = join(folder, "log.csv");
  writeFileSync(log, "trial,note\n");
});
afterEach(() => rmSync(folder, { recursive: true }));

/** Adds rows NAME-1, NAME-2, ... and prints each one's name once it is in the log, with how long it waited (ms). */
const ADDER = `
const { addLine } = require(${JSON.stringify(join(BUILT, "add-line.js"))});
const { whileLocked } = require(${JSON.stringify(join(BUILT, "file-lock.js"))});
const [log, name, count] = process.argv.slice(1);
for (let i = 1; i <= Number(count); i++) {
  const id = name + "-" + i, began = performance.now();
  let waited;
  whileLocked(log, () => { waited = performance.now() - began; addLine(log, { trialId: id, line: id + ',"a note, in ' + i + '"', by: null }); });
  require("node:fs").writeSync(1, id + " " + waited.toFixed(1) + "\\n");
}`;

function adder(name: string, count: number): { child: ChildProcess; done: Promise<string[]> } {
  const child = spawn(process.execPath, ["-e", ADDER, "--", log, name, String(count)], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  let out = "";
  child.stdout?.on("data", (data) => {
    out += data;
  });
  const done = new Promise<string[]>((ok) => {
    child.on("close", () => ok(out.split("\n").slice(0, -1)));
  });
  return { child, done };
}

const rows = (): string[] => readFileSync(log, "utf8").split("\n").slice(1, -1);

describe("several processes on one log", () => {
  it("two add their rows at once: all are there, none torn, and nobody waits over a second", async () => {
    const said = (await Promise.all([adder("A", ROWS).done, adder("B", ROWS).done])).flat();
    expect(said).toHaveLength(2 * ROWS);
    expect(rows()).toHaveLength(2 * ROWS);
    for (const row of rows()) expect(row).toMatch(/^([AB])-(\d+),"a note, in \2"$/);
    expect(new Set(rows()).size).toBe(2 * ROWS);
    expect(Math.max(...said.map((line) => Number(line.split(" ")[1])))).toBeLessThan(1000);
    expect(readHistory(log)).toMatchObject({ damaged: 0, deeds: { length: 2 * ROWS } });
    expect(readdirSync(folder).sort()).toEqual([".history", "log.csv"]);
  });

  it("killed at any moment: every row that was said to be there is, and the next process goes on", async () => {
    const kept: string[] = [];
    for (let kill = 0; kill < KILLS; kill++) {
      const { child, done } = adder(`K${kill}`, 10_000);
      const pid = child.pid as number;
      await new Promise((ok) => child.stdout?.once("data", ok));
      await new Promise((ok) => setTimeout(ok, 20 * Math.random()));
      process.kill(pid, "SIGKILL");
      kept.push(...(await done).map((line) => line.split(" ")[0]));
    }
    whileLocked(log, () => addLine(log, { trialId: "END", line: "END,", by: null }));
    const ids = rows().map((row) => row.split(",")[0]);
    expect(new Set(ids).size).toBe(ids.length);
    expect(kept.length).toBeGreaterThanOrEqual(KILLS);
    for (const id of [...kept, "END"]) expect(ids).toContain(id);
    // beside what was said, at most the one row that each killed process was busy with
    expect(ids.length).toBeLessThanOrEqual(kept.length + KILLS + 1);
    for (const row of rows()) expect(row).toMatch(/^(K\d+-(\d+),"a note, in \2"|END,)$/);
  });

  it.skipIf(process.platform === "win32")(
    "a disk that is full half-way through a row: nothing is lost, and it is said",
    () => {
      writeFileSync(log, `trial,note\n${"X,filler\n".repeat(452)}`); // 4079 bytes: 17 are left of the 4 KiB that the shell allows
      const before = readFileSync(log, "latin1");
      const line = `F-1,"${"long ".repeat(20)}"`;
      const code = `
const { addLine } = require(${JSON.stringify(join(BUILT, "add-line.js"))});
try { addLine(process.argv[1], { trialId: "F-1", line: process.argv[2], by: null }); console.log("done"); } catch (error) { console.log(error.code); }`;
      const out = execFileSync(
        "bash",
        ["-c", 'ulimit -f 4; exec "$0" -e "$1" -- "$2" "$3"', process.execPath, code, log, line],
        { encoding: "utf8" },
      );
      expect(out.trim()).toBe("EFBIG");
      expect(readFileSync(log, "latin1")).toBe(before);
      expect(addLine(log, { trialId: "F-2", line: "F-2,", by: null })).toMatchObject({
        what: "unfinished",
        trialId: "F-1",
      });
      expect(readFileSync(log, "utf8").endsWith("X,filler\nF-2,\n")).toBe(true);
    },
  );

  it("what a process left half written is cut off and named; what a person typed there is not touched", () => {
    addLine(log, { trialId: "A", line: "A,one", by: "ab" });
    const { size, after } = lastDeed(log) as { size: number; after: string };
    const whole = readFileSync(log, "latin1");
    writeFileSync(log, whole.slice(0, size + 3), "latin1");
    expect(after).toBe("A,one\n");
    expect(addLine(log, { trialId: "B", line: "B,two", by: null })).toMatchObject({
      trialId: "A",
      by: "ab",
      after: "A,one\n",
    });
    expect(rows()).toEqual(["B,two"]);
    writeFileSync(log, "trial,note\nC,by hand\nB,two, and");
    expect(addLine(log, { trialId: "D", line: "D,four", by: null })).toBeNull();
    expect(rows()).toEqual(["C,by hand", "B,two, and", "D,four"]);
  });

  it("keeps permissions, links, line ends and bytes of other encodings", () => {
    const real = join(folder, "real.csv");
    const old = "trial,note\r\nA,cr\u00e8me\r\n";
    writeFileSync(real, old, "latin1");
    chmodSync(real, 0o600);
    const link = join(folder, "linked.csv");
    symlinkSync(real, link);
    addLine(link, { trialId: "B", line: "B,next", by: null });
    expect(readFileSync(real, "latin1")).toBe(`${old}B,next\r\n`);
    expect(statSync(real).mode & 0o777).toBe(0o600);
    expect(readdirSync(folder)).toContain("linked.csv");
  });
});

describe("whileLocked", () => {
  it("takes over the lock of a process that has ended, and waits for one that has not", () => {
    const lock = join(folder, ".log.csv.lock");
    const ended = execFileSync(process.execPath, ["-e", "console.log(process.pid, require('os').hostname())"], {
      encoding: "utf8",
    });
    writeFileSync(lock, ended.trim());
    expect(whileLocked(log, () => existsSync(lock))).toBe(true);
    expect(existsSync(lock)).toBe(false);
  });

  it("gives the lock back when the work throws, and what it throws", () => {
    expect(() => whileLocked(log, () => fail())).toThrow("no such thing");
    expect(readdirSync(folder)).toEqual(["log.csv"]);
  });

  it("says what the system says where no lock can be made", () => {
    mkdirSync(join(folder, "gone"));
    rmSync(join(folder, "gone"), { recursive: true });
    expect(() => whileLocked(join(folder, "gone", "log.csv"), () => 1)).toThrow(/ENOENT/);
  });
});

function fail(): never {
  throw new Error("no such thing");
}
