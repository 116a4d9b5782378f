import { execFile } from "node:child_process";
import { appendFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";

const root = resolve(__dirname, "../../..");
const bin = join(root, "kernel-lib/host/bin/slabwright.js");
let folder: string;
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), "slabwright-test-")), "my kitchen");
});
afterEach(() => rmSync(join(folder, ".."), { recursive: true }));

interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}
const run = (...words: string[]): Promise<Outcome> =>
  new Promise((done) => {
    execFile(process.execPath, words, { cwd: root }, (error, out, err) => {
      done({ code: typeof error?.code === "number" ? error.code : error ? -1 : 0, out, err });
    });
  });
const slabwright = (...words: string[]): Promise<Outcome> => run(bin, ...words);
/** Loads the kitchen as a cell does, from the built library. */
const loaded = async (): Promise<{ name: string; units: string; trials: number; thicknessMm: number }> => {
  const program = `
    const { name, units, trials } = require("slabwright").loadKitchen(process.argv[1]);
    console.log(JSON.stringify({ name, units, trials: trials.length, thicknessMm: trials[0]?.thicknessMm ?? 0 }));`;
  return JSON.parse((await run("-e", program, "--", folder)).out);
};
const ROW = {
  us: "T-1,2026-05-01,first-variant,half-sheet,air-fryer,43,3/8;0.4;0.37,390,0.5,0,6,5.1,,8;10;12,10,12,12.5,205,,,4.6,6;7,3;4,,,\n",
  metric:
    "T-1,2026-05-01,first-variant,half-sheet,air-fryer,1230,9.6;9.9;9.4,200,0.5,-18,6,145,,8;10;12,10,12,12.5,96,,,131,6;7,3;4,,,\n",
};

describe.each(["us", "metric"] as const)("a new kitchen in %s units", (units) => {
  it("is written, checked, given a trial, checked and loaded", async () => {
    const written = await slabwright("new-kitchen", folder, "--units", units);
    expect([written.code, written.err]).toEqual([0, ""]);
    expect(written.out).toContain("README.md there says what to do next");
    expect(written.out).toMatch(/npm run check-kitchen -- ".*my kitchen"\n$/);
    const clean = await slabwright("check-kitchen", folder);
    expect(clean).toEqual({
      code: 0,
      err: "",
      out: `No problems in ${folder}: 1 pan, 1 appliance, 229 ingredients, 1 formula, 1 variant, 0 trials, ${units} units.\n`,
    });
    expect(await loaded()).toMatchObject({ name: "my kitchen", units, trials: 0 });
    appendFileSync(join(folder, "trials", "first-log.csv"), ROW[units]);
    expect((await slabwright("check-kitchen", folder)).out).toContain("1 trial,");
    const { trials, thicknessMm } = await loaded();
    expect([trials, Math.round(thicknessMm)]).toEqual([1, 10]);
  });
});

describe("slabwright new-kitchen", () => {
  it("writes metric headings unless told otherwise, and overwrites nothing", async () => {
    expect((await slabwright("new-kitchen", folder)).code).toBe(0);
    expect(readFileSync(join(folder, "pans.csv"), "utf8")).toContain("depth_mm");
    const again = await slabwright("new-kitchen", folder, "--units", "us");
    expect([again.code, again.err]).toEqual([1, expect.stringMatching(/must be new or empty, and holds README\.md, /)]);
    expect(readFileSync(join(folder, "pans.csv"), "utf8")).toContain("depth_mm");
  });
});

describe("slabwright check-kitchen", () => {
  it("prints every problem and notice, a line each, runs nothing, and ends with 1", async () => {
    await slabwright("new-kitchen", folder);
    writeFileSync(join(folder, "trials", "week.ods"), "trial\n");
    writeFileSync(
      join(folder, "pans.csv"),
      readFileSync(join(folder, "pans.csv"), "utf8").replace("half-sheet,", "half*sheet,"),
    );
    const formula = join(folder, "formulas", "first-formula.csv");
    writeFileSync(formula, readFileSync(formula, "utf8").replace("peas-frozen", "pea\u202e"));
    const { code, out, err } = await slabwright("check-kitchen", folder);
    expect([code, err]).toEqual([1, ""]);
    expect(out.split("\n")).toEqual([
      expect.stringMatching(/^Notice: trials\/week\.ods is not read: /),
      "",
      'pans.csv row 2, column pan: expected an id of letters, digits, points and dashes, such as half-sheet, got "half*sheet"',
      expect.stringMatching(
        /^formulas\/first-formula\.csv row \d+, column ingredient: expected an ingredient of ingredients\.csv or labels\.csv, got /,
      ),
      "",
      `2 problems in ${folder}: 1 pan, 1 appliance, 229 ingredients, 1 formula, 1 variant, 0 trials, metric units.`,
      "",
    ]);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there
    expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
    expect(existsSync(join(folder, "out"))).toBe(false);
  });

  it("reads the demo's kitchen when none is named", async () => {
    const { code, out } = await slabwright("check-kitchen");
    expect([code, out]).toEqual([0, expect.stringMatching(/\nNo problems in .*data: 6 pans, /)]);
  });
});
