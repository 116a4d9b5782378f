import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { youngKitchen } from "../kitchen/young-kitchen";
import { type Outcome, runCommand } from "./run-command";

const stored = resolve(__dirname, "../notebooks");
const project = mkdtempSync(join(tmpdir(), "slabwright-test-"));
mkdirSync(join(project, "notebooks"));
writeFileSync(join(project, "package.json"), "{}");
symlinkSync(resolve(__dirname, "../../../node_modules"), join(project, "node_modules"));
afterAll(() => rmSync(project, { recursive: true, force: true }));

const slabwright = (...words: string[]): Promise<Outcome> => runCommand(project, words);

function put(...names: string[]): void {
  rmSync(join(project, "notebooks"), { recursive: true });
  mkdirSync(join(project, "notebooks"));
  for (const [index, name] of names.entries()) {
    cpSync(join(stored, `${name}.ipynb`), join(project, "notebooks", `0${index + 1}-${name}.ipynb`));
  }
}

/** A kitchen called `mine`, as the demo's. */
function putKitchen(): string {
  const mine = join(project, "mine");
  cpSync(resolve(__dirname, "../../../data"), mine, { recursive: true });
  writeFileSync(join(mine, "kitchen.json"), JSON.stringify({ name: "mine", units: "us" }));
  return mine;
}

describe("slabwright", () => {
  it("start runs every notebook, prints the tagged cells and the report's path", async () => {
    put("every-output", "may-fail");
    const { code, out, err } = await slabwright("start");
    expect(err).toBe("");
    expect(code).toBe(0);
    expect(out).toMatch(/^Running 2 notebooks, 2 at a time …\n\[\d\/2\] /);
    expect(out.slice(0, out.indexOf("\n\n")).split("\n")).toHaveLength(3);
    expect(out).toMatch(/\[2\/2\] 02-may-fail\.ipynb {2}done in \d+\.\d s/);
    expect(out).toContain("\ndecision: keep at 9.5 mm\n");
    expect(out.trimEnd().endsWith(join(project, "out", "report.html"))).toBe(true);
    expect(existsSync(join(project, "out", "notebooks", "01-every-output.ipynb"))).toBe(true);
    expect(readFileSync(join(project, "out", "report.html"), "utf8")).toContain("Every kind of output");
  });

  it("start runs the kitchen's own notebooks too, where packages are found, and mixes no two of one name", async () => {
    put("may-fail");
    const kitchen = youngKitchen(0);
    mkdirSync(join(kitchen, "notebooks"));
    cpSync(join(stored, "may-fail.ipynb"), join(kitchen, "notebooks", "01-may-fail.ipynb"));
    const loads = {
      cell_type: "code",
      id: "a",
      metadata: { tags: ["terminal"] },
      execution_count: null,
      outputs: [],
      source: 'import { loadKitchen } from "slabwright";\nconsole.log(loadKitchen().variants.length);',
    };
    writeFileSync(
      join(kitchen, "notebooks", "mine.ipynb"),
      JSON.stringify({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [loads] }),
    );
    const { code, out, err } = await slabwright("start", "--kitchen", kitchen);
    expect([code, err]).toEqual([0, ""]);
    expect(out).toContain("[3/3] mine.ipynb  done");
    expect(out).toContain("\n\n1\n");
    expect(readdirSync(join(kitchen, "out", "notebooks")).sort()).toEqual([
      "01-may-fail.ipynb",
      "kitchen-01-may-fail.ipynb",
      "mine.ipynb",
    ]);
  }, 60_000);

  it("start says all that is wrong with a kitchen first, and runs nothing then", async () => {
    put("every-output");
    const mine = putKitchen();
    for (const name of ["pans.csv", "appliances.csv"]) {
      const file = join(mine, name);
      writeFileSync(file, readFileSync(file, "utf8").replace(/_mm|_cm2/g, ""));
    }
    const { code, out, err } = await slabwright("start", "--kitchen", mine);
    expect([code, out]).toEqual([1, ""]);
    for (const name of ["pans.csv", "appliances.csv"]) expect(err).toContain(name);
    expect(err).toMatch(/\d+ problems in .*mine: [\s\S]*Nothing was run: correct these first\.\n$/);
    rmSync(mine, { recursive: true });
  });

  it("start of a kitchen without a trial ends well, and says first what is missing", async () => {
    put();
    const name = "00-the-settings.ipynb";
    cpSync(resolve(__dirname, "../../../notebooks", name), join(project, "notebooks", name));
    const mine = putKitchen();
    for (const part of ["trials", "traces"]) rmSync(join(mine, part), { recursive: true });
    const { code, out, err } = await slabwright("start", "--kitchen", mine);
    expect([code, err]).toEqual([0, ""]);
    const [progress, said] = out.split(/\n\n(?=mine: )/);
    expect(progress).toMatch(/^Running 1 notebook …\n\[1\/1\] 00-the-settings.ipynb {2}done in [\d.]+ s$/);
    expect(said).toContain("NOT TRIED: no trial");
    for (const line of said.slice(0, said.indexOf("The report: ")).split("\n"))
      expect(line.length).toBeLessThanOrEqual(80);
    expect(readFileSync(join(mine, "out", "report.html"), "utf8")).toContain("<h1>mine</h1>");
    rmSync(mine, { recursive: true });
  }, 60_000);

  it("start stops at a failing cell and says which, its source and what the kernel said", async () => {
    put("fails", "every-output", "every-output", "every-output");
    const { code, out, err } = await slabwright("start");
    expect(code).toBe(1);
    expect(err).toContain("01-fails.ipynb: cell 3 failed.");
    expect(err).toContain('throw new RangeError("slabThickness: batchG must be > 0 g, got -12");');
    expect(err).toContain("    RangeError: slabThickness: batchG must be > 0 g, got -12");
    expect(out).toContain("[1/4] 01-fails.ipynb  FAILED");
    expect(out).not.toContain("[4/4]");
    const copy = readFileSync(join(project, "out", "notebooks", "01-fails.ipynb"), "utf8");
    expect(copy).toContain('"ename": "RangeError"');
    expect(readFileSync(join(project, "out", "report.html"), "utf8")).toContain("A notebook that fails");
  });

  it("check passes on outputs that run --in-place stored, and names the cell that changed", async () => {
    put("every-output");
    const path = join(project, "notebooks", "01-every-output.ipynb");
    const none = await slabwright("check", path);
    expect([none.code, none.out]).toEqual([1, expect.stringContaining("no outputs are stored")]);
    expect((await slabwright("run", "--in-place", path)).code).toBe(0);
    const same = await slabwright("check");
    expect([same.code, same.out]).toEqual([0, expect.stringContaining("same outputs")]);
    writeFileSync(path, readFileSync(path, "utf8").replace('"42\\n"', '"43\\n"'));
    const changed = await slabwright("check");
    expect([changed.code, changed.out]).toEqual([
      1,
      expect.stringContaining("cell 7: output 1: stored 43, now 42 (-2.3 %) at text"),
    ]);
    expect(changed.out).toContain("  why: the stored output of cell 7 was changed after the run");
  }, 60_000);

  it("check holds the copies of the last run against a new one, and says what has changed since", async () => {
    rmSync(join(project, "out"), { recursive: true, force: true });
    rmSync(join(project, "notebooks"), { recursive: true });
    mkdirSync(join(project, "notebooks"));
    const cell = (id: string, source: string, tags: string[] = []): object => ({
      ...{ cell_type: "code", id, metadata: { tags }, source, outputs: [], execution_count: null },
    });
    const reads =
      'import { readFileSync } from "node:fs";\nconsole.log(readFileSync("extra.txt", "utf8").length * factor);';
    const cells = [cell("p", "const factor = 2;", ["parameters"]), cell("c", reads)];
    const text = JSON.stringify({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells });
    writeFileSync(join(project, "notebooks", "01-reads.ipynb"), text);
    writeFileSync(join(project, "notebooks", "extra.txt"), "four");
    expect((await slabwright("check")).err).toContain('run "slabwright start" first');
    expect((await slabwright("start", "--set", "factor=3")).code).toBe(0);
    const same = await slabwright("check");
    expect([same.code, same.out]).toEqual([0, expect.stringContaining("01-reads.ipynb: same outputs")]);
    expect(same.out).not.toContain("though:");
    writeFileSync(join(project, "notebooks", "extra.txt"), "fives");
    const { code, out } = await slabwright("check", "--update");
    expect([code, out]).toEqual([0, expect.stringContaining("cell 2: output 1: stored 12, now 15 (+25 %) at text")]);
    expect(out).toContain("  why: project/notebooks/extra.txt has changed (SHA-256 ");
    const other = await slabwright("check", "--set", "factor=4");
    expect([other.code, other.out]).toEqual([1, expect.stringContaining("why: the parameter factor was 3, is 4")]);
  }, 60_000);

  it("report writes the page again without running", async () => {
    const path = join(stored, "every-output.ipynb");
    const { code, out } = await slabwright("report", path, "--out", join(project, "elsewhere"));
    expect([code, out]).toEqual([0, `The report: ${join(project, "elsewhere", "report.html")}\n`]);
  });

  it("writes no control characters from names, messages and outputs to the terminal", async () => {
    const evil = "\u001b]0;owned\u0007\u001b[2J\u009b1A\u202e\r";
    const cell = (source: string, tags: string[] = []): object => ({
      cell_type: "code",
      id: `c${source.length}`,
      metadata: { tags },
      source,
      outputs: [],
      execution_count: null,
    });
    const said = JSON.stringify(`decision ${evil}\n\ttwo`);
    const cells = [cell(`console.log(${said});`, ["terminal"]), cell(`throw new Error(${said});`)];
    put();
    const name = `01-${evil}\nDone.ipynb`;
    const path = join(project, "notebooks", name);
    writeFileSync(path, JSON.stringify({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells }));
    const out = join(project, `out${evil}`);
    const outcomes = [
      await slabwright("start", "--out", out),
      await slabwright("run", path, "--out", out),
      await slabwright("check", path),
      await slabwright("report", "--out", out),
      await slabwright("start", "--kitchen", `absent${evil}`),
      await slabwright("run", `absent${evil}.ipynb`),
      await slabwright(`verb${evil}`),
      await slabwright("start", `--option${evil}`),
    ];
    expect(outcomes.map(({ code }) => code)).toEqual([1, 1, 1, 0, 1, 1, 2, 2]);
    for (const { out, err } of outcomes) {
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there
      expect(`${out}${err}`).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e]/);
      expect(`${out}${err}`).not.toMatch(/^Done/m);
    }
    expect(outcomes[0].out).toContain("decision \\x1b]0;owned\\x07\\x9b1A\\u202e\n\ttwo");
    expect(outcomes[0].err).toContain("01-\\x1b]0;owned\\x07\\x1b[2J\\x9b1A\\u202e\\x0d\\nDone.ipynb: cell 2 failed.");
  }, 120_000);

  it.each(["constructor", "toString", "__proto__", "hasOwnProperty"])(
    "refuses the verb %s like any other",
    async (verb) => {
      const { code, err } = await slabwright(verb);
      expect([code, err]).toEqual([
        2,
        `slabwright: the verb must be one of start, report, notebook, run, check, share, compare, new-kitchen, check-kitchen, log, got ${verb}\n`,
      ]);
    },
  );

  it.each([
    [
      ["bake"],
      2,
      "the verb must be one of start, report, notebook, run, check, share, compare, new-kitchen, check-kitchen, log, got bake",
    ],
    [["start", "--shout"], 2, "--shout"],
    [["check", "--tolerance", "much"], 1, "--tolerance must be a number >= 0, got much"],
    [["start", "--kitchen", "absent-kitchen"], 1, "--kitchen must be a folder that exists"],
    [["run"], 1, "a notebook must be named"],
    [["new-kitchen"], 1, "one folder must be named, got none"],
    [["new-kitchen", "a", "b"], 1, "one folder must be named, got a, b"],
    [["new-kitchen", "a", "--units", "imperial"], 1, "--units must be us or metric, got imperial"],
    [["check-kitchen", "absent-kitchen"], 1, "the kitchen must be a folder that exists, got"],
    [["check-kitchen", "a", "b"], 1, "one kitchen must be named, got a, b"],
    [["run", "absent.ipynb"], 1, "absent.ipynb"],
  ])("refuses %j", async (words, code, message) => {
    const outcome = await slabwright(...words);
    expect(outcome.code).toBe(code);
    expect(outcome.err).toContain(message);
  });
});
