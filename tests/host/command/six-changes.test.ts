import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, expect, it } from "vitest";
import { type Outcome, runCommand } from "./run-command";

/*
 * A bundle is shared on one machine and checked on another with another path, locale, time zone, home and number of processors: it
 * is the same there. Then one thing at a time is changed on the second, and the check names it, and the cell that differs.
 */

const root = resolve(__dirname, "../../..");
const places: string[] = [];
afterAll(() => {
  for (const place of places) rmSync(place, { recursive: true, force: true });
});

const cell = (id: string, source: string, tags: readonly string[] = []): object => ({
  cell_type: "code",
  id,
  metadata: { tags },
  source,
  outputs: [],
  execution_count: null,
});
const cells = [
  cell("1", "const thicknessMm = 12;\nconst seed = 7;", ["parameters"]),
  cell(
    "2",
    `import { loadKitchen, predictSlabTime, show, variantCrispTime } from "slabwright";
const { fit } = variantCrispTime({ kitchen: loadKitchen(), variantId: "turkey-sage" });
show(predictSlabTime(fit, thicknessMm).timeMin.toFixed(9));`,
  ),
  cell(
    "3",
    `import { seededRandom } from "slabwright/statistics";
const random = seededRandom(seed);
show([1, 2, 3].map(() => random.normal().toFixed(9)).join(" "));`,
  ),
  cell("4", `show(\`run by \${process.version}\`);`),
  cell("5", `show(\`with zod \${require("zod/package.json").version}\`);`),
  cell("6", "show([...new Set('zäaZÄ1')].sort().join(''));"),
];

/** A project in a folder of its own: notebooks and data, and packages that lie elsewhere but for one. */
function machine(name: string): string {
  const place = realpathSync(mkdtempSync(join(tmpdir(), "slabwright-test-")));
  places.push(place);
  const project = join(place, name);
  mkdirSync(join(project, "notebooks"), { recursive: true });
  mkdirSync(join(project, "node_modules"));
  for (const entry of readdirSync(join(root, "node_modules")))
    if (entry !== "zod") symlinkSync(join(root, "node_modules", entry), join(project, "node_modules", entry));
  cpSync(join(root, "node_modules", "zod"), join(project, "node_modules", "zod"), { recursive: true });
  cpSync(join(root, "data"), join(project, "data"), { recursive: true });
  cpSync(join(root, "package-lock.json"), join(project, "package-lock.json"));
  writeFileSync(join(project, "package.json"), "{}");
  writeFileSync(
    join(project, "notebooks", "01-time.ipynb"),
    JSON.stringify({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells }),
  );
  return project;
}

it("a bundle is the same on another machine, and each of six changes is named with its cell", async () => {
  const mine = machine("project");
  const theirs = machine("Küche der Probe, 2");
  const shared = await runCommand(mine, ["share", "--set", "variant=turkey-sage"], {
    LC_ALL: "en_US.UTF-8",
    TZ: "America/New_York",
  });
  expect([shared.code, shared.err]).toEqual([0, ""]);
  const [name] = readdirSync(join(mine, "out", "share"));
  const bundle = join(theirs, "bundle");
  cpSync(join(mine, "out", "share", name), bundle, { recursive: true });

  const there = { LC_ALL: "de_DE.UTF-8", LANG: "de_DE.UTF-8", TZ: "Asia/Kathmandu", HOME: theirs };
  const check = (words: readonly string[] = [], more: Readonly<Record<string, string>> = {}): Promise<Outcome> =>
    runCommand(theirs, ["check", bundle, ...words], { ...there, ...more });
  const same = await check();
  expect(same.out).toMatch(/: same outputs\n1 notebook run again/);
  expect([same.code, same.err]).toEqual([0, ""]);
  expect(same.out).not.toMatch(/though:|why:|was changed/);

  /** What a check says while a file reads otherwise: the cells that differ, and why. */
  const changed = async (path: string, change: (text: string) => string): Promise<readonly [string, string]> => {
    const before = readFileSync(path, "utf8");
    expect(change(before)).not.toBe(before);
    writeFileSync(path, change(before));
    const outcome = await check();
    writeFileSync(path, before);
    return saidBy(outcome);
  };
  const inBundle = (...names: readonly string[]): string => join(bundle, ...names);

  const aByte = await changed(inBundle("kitchen", "trials", "turkey-sage.csv"), (text) =>
    text.replace(",8,9,211,", ",7,9,211,"),
  );
  expect(aByte).toEqual(["2", expect.stringMatching(/^kitchen\/trials\/turkey-sage.csv has changed \(SHA-256 .{8}…/)]);

  expect(saidBy(await check(["--set", "thicknessMm=13"]))).toEqual(["2", "the parameter thicknessMm was 12, is 13"]);
  expect(saidBy(await check(["--set", "seed=8"]))).toEqual(["3", "the seed was 7, is 8"]);

  const otherNode = join(theirs, "other-node.js");
  writeFileSync(
    otherNode,
    `const versions = { ...process.versions, node: "20.99.0" };
Object.defineProperties(process, { version: { value: "v20.99.0" }, versions: { value: versions } });`,
  );
  const byOther = await check([], { NODE_OPTIONS: `--require "${otherNode}"` });
  expect(saidBy(byOther)).toEqual(["4", `Node was ${process.versions.node}, is 20.99.0`]);

  const zod = join(theirs, "node_modules", "zod", "package.json");
  const { version } = JSON.parse(readFileSync(zod, "utf8")) as { version: string };
  const dependency = await changed(zod, (text) => text.replace(`"version": "${version}"`, '"version": "9.9.9"'));
  expect(dependency).toEqual(["5", `zod was ${version}, is 9.9.9`]);

  const stored = await changed(inBundle("notebooks", "01-time.ipynb"), (text) => {
    const [number, whole, tenths] = /(?<=")(1\d\.)(\d)\d{8}/.exec(text) as RegExpExecArray;
    return text.replaceAll(number, `${whole}${(Number(tenths) + 1) % 10}${number.slice(-8)}`);
  });
  expect(stored).toEqual(["2", "the stored output of cell 2 was changed after the run"]);
}, 240_000);

/** The cells that a check finds otherwise, and why. */
function saidBy({ code, out, err }: Outcome): readonly [string, string] {
  expect([code, err, out]).toEqual([1, "", expect.anything()]);
  const lines = out.split("\n");
  const said = (form: RegExp): string => lines.flatMap((line) => form.exec(line)?.[1] ?? []).join("; ");
  return [said(/ipynb: cell (\d+):/), said(/^ {2}why: (.*)$/)];
}
