import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeEach, describe, expect, it } from "vitest";
import { type Outcome, runCommand } from "./run-command";

const project = mkdtempSync(join(tmpdir(), "slabwright-test-"));
symlinkSync(resolve(__dirname, "../../../node_modules"), join(project, "node_modules"));
writeFileSync(join(project, "package.json"), "{}");
afterAll(() => rmSync(project, { recursive: true, force: true }));

/** A notebook that says which kitchen its kernel was given, and fails in the kitchen called `bad`. */
const SOURCE = `
const kitchen = process.env.SLABWRIGHT_KITCHEN ?? "of the project";
console.log("kitchen:", kitchen.split("/").at(-1));
if (kitchen.endsWith("bad")) throw new Error("nothing fits");
`;
function put(...names: string[]): void {
  rmSync(join(project, "notebooks"), { recursive: true, force: true });
  mkdirSync(join(project, "notebooks"));
  for (const name of names) {
    const cells = [
      { cell_type: "markdown", id: "m", metadata: {}, source: `# ${name}. Notebook ${name}?` },
      { cell_type: "code", id: "c", metadata: {}, source: SOURCE, outputs: [], execution_count: null },
    ];
    const text = JSON.stringify({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells });
    writeFileSync(join(project, "notebooks", `${name}.ipynb`), text);
  }
}
const slabwright = (...words: string[]): Promise<Outcome> => runCommand(project, words);
const reportIn = (...folder: string[]): string => readFileSync(join(project, ...folder, "report.html"), "utf8");

beforeEach(() => {
  for (const folder of ["data", "mine", "bad", "out", "shared"])
    rmSync(join(project, folder), { recursive: true, force: true });
  for (const [folder, name] of Object.entries({ data: "The first", mine: "My kitchen", bad: "Bad kitchen" })) {
    cpSync(resolve(__dirname, "../../../data"), join(project, folder), { recursive: true });
    writeFileSync(join(project, folder, "kitchen.json"), JSON.stringify({ name }));
  }
});

describe("the out folder of a kitchen", () => {
  it("is its own: neither start nor report of one kitchen touches the other's", async () => {
    put("1");
    expect((await slabwright("start")).code).toBe(0);
    const first = reportIn("out");
    expect(first).toContain("<h1>The first</h1>");
    expect((await slabwright("start", "--kitchen", "mine")).code).toBe(0);
    expect(reportIn("mine", "out")).toContain("<h1>My kitchen</h1>");
    expect(reportIn("mine", "out")).toContain("kitchen: mine");
    expect(reportIn("out")).toBe(first);

    const failed = await slabwright("start", "--kitchen", "bad");
    expect([failed.code, failed.err]).toEqual([1, expect.stringContaining("nothing fits")]);
    const again = await slabwright("report");
    expect(again).toMatchObject({ code: 0, out: `The report: ${join(project, "out", "report.html")}\n` });
    expect(reportIn("out")).toBe(first);
    expect((await slabwright("report", "--kitchen", "mine")).code).toBe(0);
    expect(reportIn("mine", "out")).not.toContain("The first");
  }, 180_000);

  it("has a report of its last run alone, also after a run that broke off", async () => {
    put("1", "2");
    expect((await slabwright("start", "--kitchen", "mine")).code).toBe(0);
    put("2", "3");
    expect((await slabwright("start", "--kitchen", "mine")).code).toBe(0);
    const { out } = await slabwright("report", "--kitchen", "mine");
    expect(out).toContain("Left out, as they are not of this kitchen's last run: 1.ipynb\n");
    expect(reportIn("mine", "out")).toContain("Notebook 3?");
    expect(reportIn("mine", "out")).not.toContain("Notebook 1?");
  }, 180_000);

  it("keeps kitchens apart that were sent to one folder", async () => {
    put("1");
    const shared = ["--out", join(project, "shared")];
    expect((await slabwright("start", ...shared)).code).toBe(0);
    put("2");
    expect((await slabwright("start", "--kitchen", "mine", ...shared)).code).toBe(0);
    expect((await slabwright("report", ...shared)).out).toContain(
      "Left out, as they are not of this kitchen's last run: 2.ipynb\n",
    );
    expect(reportIn("shared")).toContain("<h1>The first</h1>");
    expect(reportIn("shared")).not.toContain("Notebook 2?");
    const none = await slabwright("report", "--kitchen", "bad", ...shared);
    expect([none.code, none.err]).toEqual([1, expect.stringContaining("executed notebooks of Bad kitchen must be in")]);
  }, 180_000);

  it("takes a notebook that was run by itself into the last run, and leaves in-place runs unmarked", async () => {
    put("1", "2");
    expect((await slabwright("start", "--kitchen", "mine")).code).toBe(0);
    put("1", "2", "3");
    const path = join(project, "notebooks", "3.ipynb");
    expect((await slabwright("run", path, "--kitchen", "mine")).code).toBe(0);
    expect((await slabwright("report", "--kitchen", "mine")).out).not.toContain("Left out");
    for (const name of ["1", "2", "3"]) expect(reportIn("mine", "out")).toContain(`Notebook ${name}?`);
    expect((await slabwright("run", "--in-place", path)).code).toBe(0);
    const { slabwright: marks } = JSON.parse(readFileSync(path, "utf8")).metadata;
    expect(Object.keys(marks), "what it rests on, and of no run").toEqual(["basis"]);
    expect(existsSync(join(project, "out"))).toBe(false);
  }, 180_000);

  it("carries in each copy the kitchen and the run, and no place of this machine", async () => {
    put("1");
    expect((await slabwright("start", "--kitchen", "mine")).code).toBe(0);
    const copy = JSON.parse(readFileSync(join(project, "mine", "out", "notebooks", "1.ipynb"), "utf8"));
    const { basis, ...stamp } = copy.metadata.slabwright;
    expect(JSON.stringify(basis)).not.toContain(project);
    expect(stamp).toEqual({
      kitchen: "My kitchen",
      folder: "..",
      run: expect.stringMatching(/^\d{4}-\d\d-\d\dT[\d:.]+Z$/),
    });
  });
});
