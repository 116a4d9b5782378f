import {
  appendFileSync,
  cpSync,
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
import { afterAll, expect, it } from "vitest";
import { type Outcome, runCommand } from "./run-command";

const root = resolve(__dirname, "../../..");
const project = mkdtempSync(join(tmpdir(), "slabwright-test-"));
afterAll(() => rmSync(project, { recursive: true, force: true }));
mkdirSync(join(project, "notebooks"));
writeFileSync(join(project, "package.json"), "{}");
symlinkSync(join(root, "node_modules"), join(project, "node_modules"));
cpSync(join(root, "data"), join(project, "data"), { recursive: true });
const source = `import { loadKitchen, show } from "slabwright";
const kitchen = loadKitchen();
show(kitchen.variants.map(({ name }) => name).join(", "));
show(kitchen.trials.map(({ timeMin }) => timeMin).join(" "));`;
const cells = [{ cell_type: "code", id: "c", metadata: {}, source, outputs: [], execution_count: null }];
const text = JSON.stringify({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells });
writeFileSync(join(project, "notebooks", "01-all.ipynb"), text);

const slabwright = (...words: string[]): Promise<Outcome> => runCommand(project, words, { TZ: "Asia/Tokyo" });

it("share writes a bundle of one product that runs again the same, and check names the file that was changed", async () => {
  const shared = await slabwright("share", "--set", "variant=turkey-sage", "--by", "the kitchen", "--zip");
  expect([shared.code, shared.err]).toEqual([0, ""]);
  expect(shared.out).toContain("4 other products with formulas and trials");
  const place = join(project, "out", "share");
  const [name, zip] = readdirSync(place).sort();
  expect(zip).toBe(`${name}.zip`);
  const crate = readFileSync(join(place, name, "ro-crate-metadata.json"), "utf8");
  for (const said of ['"name": "tslab"', '"name": "the kitchen"', `"version": "${process.versions.node}"`])
    expect(crate).toContain(said);
  const all = [crate, readFileSync(join(place, name, "page.html"), "utf8")].join("\n");
  expect(all).not.toContain(project);
  expect(all).toContain("turkey and sage sticks");
  expect(all).not.toContain("beet and lentil");

  const same = await slabwright("check", join(place, zip));
  expect([same.code, same.out]).toEqual([0, expect.stringContaining("01-all.ipynb: same outputs")]);
  expect(same.out).not.toMatch(/though:|was changed/);

  appendFileSync(
    join(place, name, "kitchen", "trials", "turkey-sage.csv"),
    readFileSync(join(place, name, "kitchen", "trials", "turkey-sage.csv"), "utf8")
      .split("\n")[1]
      .replace("TS-01", "TS-99"),
  );
  const changed = await slabwright("check", join(place, name));
  expect(changed.code).toBe(1);
  expect(changed.out).toContain("kitchen/trials/turkey-sage.csv was changed since it was shared");
  expect(changed.out).toContain("01-all.ipynb: cell 1: ");
  expect(changed.out).toContain("  why: kitchen/trials/turkey-sage.csv has changed (SHA-256 ");

  const again = await slabwright("share", "--set", "variant=turkey-sage");
  expect([again.code, again.err]).toEqual([1, expect.stringContaining("a bundle of this name must not exist yet")]);
}, 120_000);

it("start --each writes a report for every product, and goes on where it stopped", async () => {
  const failing = `import { loadKitchen } from "slabwright";
const id = process.env.SLABWRIGHT_VARIANT;
console.log(id, loadKitchen().variants.length);
if (id === "turkey-sage" && !process.env.MENDED) throw new Error("too hot");`;
  const text = JSON.stringify({
    nbformat: 4,
    nbformat_minor: 5,
    metadata: {},
    cells: [{ ...cells[0], source: failing }],
  });
  writeFileSync(join(project, "notebooks", "01-all.ipynb"), text);
  const ids = ["beet-lentil", "turkey-sage"];
  const variants = readFileSync(join(project, "data", "variants.csv"), "utf8").split("\n");
  const kept = variants.filter((line) => /^(#|variant,)/.test(line) || ids.some((id) => line.startsWith(id)));
  writeFileSync(join(project, "data", "variants.csv"), `${kept.join("\n")}\n`);
  rmSync(join(project, "data", "packs.csv"));
  for (const file of readdirSync(join(project, "data", "trials")))
    if (!ids.includes(file.replace(".csv", ""))) rmSync(join(project, "data", "trials", file));
  const first = await slabwright("start", "--each");
  expect([first.code, first.err]).toEqual([1, expect.stringContaining("Error: too hot")]);
  expect(first.out).toContain("turkey-sage: FAILED in 01-all.ipynb\n1 of 2 reports. Run it again for the others");
  process.env.MENDED = "1";
  const second = await slabwright("start", "--each");
  delete process.env.MENDED;
  expect([second.code, second.err]).toEqual([0, ""]);
  expect(second.out).toContain("beet-lentil: as before, ");
  expect(second.out).toContain("2 of 2 reports.");
  expect(readFileSync(join(project, "out", "each", "turkey-sage", "report.html"), "utf8")).toContain("turkey-sage 2");
}, 120_000);

it("compare says what two kitchens and two notebooks have otherwise, and makes one of two notebooks", async () => {
  cpSync(join(root, "data"), join(project, "then"), { recursive: true });
  cpSync(join(root, "data"), join(project, "now"), { recursive: true });
  const variants = join(project, "now", "variants.csv");
  writeFileSync(variants, readFileSync(variants, "utf8").replace("half-sheet,1150", "half-sheet,1200"));
  const same = await slabwright("compare", "then", "then");
  expect([same.code, same.out]).toEqual([0, "Nothing differs.\n"]);
  const { code, out } = await slabwright("compare", "then", "now");
  expect(code).toBe(1);
  expect(out).toMatch(/variant +beet-lentil +batchG +1150 +1200/);
  expect(out).toContain("What the settings say otherwise");
  expect(readFileSync(join(project, "out", "compare.html"), "utf8")).toContain(">beet-lentil</td>");

  const write = (name: string, ...sources: string[]): void => {
    const cells = sources.map((source, at) => ({ cell_type: "markdown", id: `c${at}`, metadata: {}, source }));
    writeFileSync(join(project, name), JSON.stringify({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells }));
  };
  write("one.ipynb", "# A", "first");
  write("two.ipynb", "# A", "second <script>", "third");
  const books = await slabwright("compare", "one.ipynb", "two.ipynb", "--merge", "both.ipynb");
  expect(books.out).toContain('cell 2 reads otherwise: "first", then "second <script>"');
  expect(books.out).toContain('cell 3 of the second is not in the first: "third"');
  expect(readFileSync(join(project, "out", "compare.html"), "utf8")).toContain("second &lt;script&gt;");
  const both = readFileSync(join(project, "both.ipynb"), "utf8");
  for (const text of ["first", "second <script>", "third"]) expect(both).toContain(text);
  expect((await slabwright("compare", "one.ipynb", "two.ipynb", "--merge", "both.ipynb")).err).toContain("EEXIST");
  expect((await slabwright("compare", "one.ipynb")).err).toContain(
    "two notebooks, bundles or kitchens must be named, got 1",
  );
}, 120_000);
