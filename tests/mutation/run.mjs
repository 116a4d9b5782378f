/**
 * `npm run mutate -- FOLDER`: changes the library's FOLDER ("safety", "fit/outcomes") here and there and asks the tests
 * that name what was changed whether they notice. By hand, not in CI; see README.md beside this file.
 *
 *   --sample 80     80 of the changes that Stryker knows, and what lies inside them; all unless given
 *   --constants 30  instead, 30 of the folder's numbers, each made 11 % larger (Stryker leaves numbers alone)
 *   --seed 7        which ones
 *   --file NAME     only files whose name holds NAME
 *   --all-tests     ask every test of the room, for what is used everywhere and named nowhere
 *   --again         only the changes that the last run of the folder did not notice, while its files are as they were
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { changeConstants } from "./change-constants.mjs";
import { sampleOf } from "./sample-of.mjs";
import { sampledRanges } from "./sampled-ranges.mjs";

const root = fileURLToPath(new URL("../../", import.meta.url));
process.chdir(root);
const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: "string" },
    constants: { type: "string" },
    seed: { type: "string", default: "1" },
    file: { type: "string", default: "" },
    "all-tests": { type: "boolean", default: false },
    again: { type: "boolean", default: false },
  },
});
const [folder] = positionals;
const source = `kernel-lib/library/src/${folder}`;
const files = (folder && existsSync(source) ? readdirSync(source, { recursive: true }) : [])
  .map((file) => `${source}/${file}`)
  .filter((file) => file.endsWith(".ts") && !file.endsWith("/index.ts") && file.includes(values.file))
  .sort();
if (files.length === 0) {
  console.error(`mutate: ${folder} must be a folder of kernel-lib/library/src, such as safety or fit/outcomes`);
  process.exit(1);
}
const name = folder.replaceAll("/", "-");
mkdirSync("out/mutation", { recursive: true });

if (values.constants !== undefined) {
  const tests = testsNaming(files, folder);
  const missed = changeConstants({ files, tests, count: Number(values.constants), seed: Number(values.seed) });
  process.exit(missed === 0 ? 0 : 1);
}
const report = `out/mutation/${name}.json`;
const before = values.again ? unnoticedOf(report) : undefined;
const mutate = before
  ? [...before.values()]
  : values.sample === undefined
    ? files
    : await sampledRanges(files, (all) => sampleOf(all, Number(values.sample), Number(values.seed)));
const tests = testsNaming([...new Set(mutate.map((range) => range.replace(/\.ts:.*/, ".ts")))], folder);
rmSync(report, { force: true });
const { status, signal } = spawnSync("node_modules/.bin/stryker", ["run", "tests/mutation/stryker.config.mjs"], {
  stdio: "inherit",
  env: {
    ...process.env,
    MUTATION_FILES: mutate.join(","),
    MUTATION_TESTS: tests.join(","),
    MUTATION_REPORT: report,
  },
});
if (!existsSync(report)) {
  console.error(`mutate: Stryker ended without a report (${signal ?? `status ${status}`}); what it said stands above`);
  process.exit(status || 1);
}
const counts = {};
for (const { key, status } of changesIn(report))
  if (before === undefined || before.has(key)) counts[status] = (counts[status] ?? 0) + 1;
console.log(`${folder}: ${JSON.stringify(counts)}; the whole report is ${report}`);
process.exit(status ?? 1);

/** The changes that a report holds: what tells one from the others, where it is as `mutate` takes it, and what came of it. */
function changesIn(path) {
  return Object.entries(JSON.parse(readFileSync(path, "utf8")).files).flatMap(([file, { mutants }]) =>
    mutants.map(({ location: { start, end }, mutatorName, replacement, status }) => {
      const range = `${file}:${start.line}:${start.column - 1}-${end.line}:${end.column - 1}`;
      return { key: `${range} ${mutatorName} ${replacement}`, range, status };
    }),
  );
}

/** Places of the changes in the last report that no test noticed. */
function unnoticedOf(path) {
  const missed = existsSync(path)
    ? changesIn(path).filter(({ status }) => status === "Survived" || status === "NoCoverage")
    : [];
  if (missed.length === 0) {
    console.error(`mutate: ${path} must hold changes that nobody noticed, so that they can be made again`);
    process.exit(1);
  }
  return new Map(missed.map(({ key, range }) => [key, range]));
}

/** Test files of the folder's room, and of outside facts, that name something the changed files export. */
function testsNaming(changed, room) {
  const names = changed.flatMap((file) =>
    [...readFileSync(file, "utf8").matchAll(/export (?:async )?(?:function|const) (\w+)/g)].map(([, name]) => name),
  );
  const pattern = values["all-tests"] ? /./ : new RegExp(`\\b(?:${names.join("|")})\\b`);
  return (
    ["published", `library/${room.split("/")[0]}`]
      .flatMap((place) => readdirSync(`tests/${place}`, { recursive: true }).map((file) => `tests/${place}/${file}`))
      .filter((file) => file.endsWith(".test.ts"))
      // the host is not copied along
      .filter((file) => {
        const text = readFileSync(file, "utf8");
        return pattern.test(text) && !text.includes("slabwright-host");
      })
      .sort()
  );
}
