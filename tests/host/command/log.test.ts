import { execFile } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const bin = resolve("kernel-lib/host/bin/slabwright.js");
let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "kitchen-"));
  cpSync("data", folder, { recursive: true });
});
afterAll(() => rmSync(folder, { recursive: true }));

function log(...words: string[]): Promise<{ code: number; out: string; err: string }> {
  return new Promise((done) => {
    execFile(process.execPath, [bin, "log", ...words, "--kitchen", folder], (error, out, err) =>
      done({ code: error ? 1 : 0, out, err }),
    ).stdin?.end();
  });
}

const text = (): string => readFileSync(join(folder, "trials", "beet-lentil.csv"), "utf8");

describe("slabwright log", () => {
  it("checks, logs, corrects, tells the history and takes back", async () => {
    const before = text();
    const words = ["variant=beet-lentil", "thickness_mm=9.1; 8.8", "time_min=12", "core_c=80"];
    expect(await log("check", ...words)).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^Would be logged: BL-33 of beet-lentil/m),
    });
    expect(text()).toBe(before);
    expect((await log(...words, "--by", "AB")).out).toMatch(
      /BL-33 of beet-lentil, .* in trials\/beet-lentil\.csv\. Not given, so: /,
    );
    expect(text()).not.toBe(before);
    expect((await log("correct", "BL-33", "core_c=81", "--why", "misread")).out).toContain(
      "BL-33 in trials/beet-lentil.csv is corrected (misread)",
    );
    expect((await log("history", "BL-33")).out).toMatch(
      / add by AB\n {2}after {3}BL-33.*\n.* correct: misread\n {2}before {2}BL-33.*,80,.*\n {2}after {3}BL-33.*,81,/,
    );
    await log("undo", "beet-lentil.csv");
    await log("undo", "beet-lentil.csv");
    expect(text()).toBe(before);
    expect((await log("merge", resolve("data/trials/beet-lentil.csv"), "--log", "beet-lentil.csv")).out).toContain(
      "0 added, 0 changed, 32 alike.",
    );
  });

  it.each([
    [["variant=oats", "time_min=12"], "variant must be one of"],
    [["thickness"], "a cell must be told as heading=value, got thickness"],
    [["correct", "BL-01", "core_c=81"], "must say why the log is corrected"],
    [["undo"], "slabwright log undo must be told what"],
    [
      ["merge", "x.csv", "BL-01=mine", "--log", "beet-lentil.csv"],
      "a choice must be TRIAL=ours, TRIAL=theirs or TRIAL=both, got BL-01=mine",
    ],
    [[], "a trial must be told in words such as variant=oat-bars time_min=13, or asked for in a terminal"],
  ])("says in a sentence what is wrong with %j", async (words, sentence) => {
    const { code, err } = await log(...words);
    expect(code).toBe(1);
    expect(err).toContain(sentence);
    expect(err.trim().split("\n")).toHaveLength(1);
  });
});
