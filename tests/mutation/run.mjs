/**
 * `npm run mutate -- FOLDER`: changes the library's FOLDER ("safety", "fit/outcomes") here and there and asks its tests
 * whether they notice. By hand, not in CI; see README.md beside this file.
 *
 *   --sample 80     80 of the changes that Stryker knows, and what lies inside them; all unless given
 *   --constants 30  instead, 30 of the folder's numbers, each made 11 % larger (Stryker leaves numbers alone)
 *   --seed 7        which ones
 *   --file NAME     only files whose name holds NAME
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { changeConstants } from "./change-constants.mjs";
import { sampleOf } from "./sample-of.mjs";
import { sampledRanges } from "./sampled-ranges.mjs";

/** Tests outside a folder's own that hold it to outside facts, by its first name. */
const ALSO = {
  crisp: ["crisp-directions", "crisp-short-forms", "crisp-outside-facts", "reheat-losses"],
  fit: ["fit-reference", "r-reference", "nist-strd"],
  food: ["household-density", "sr28", "thermal-properties"],
  heat: ["conduction", "freezing-formulas", "slab-reference", "surface-coefficients"],
  macros: ["macros", "label-rounding"],
  pan: ["pan-volume"],
  safety: ["lethality", "safety-limits"],
  statistics: ["r-reference", "uncertainty"],
  yield: ["yield"],
};

const root = fileURLToPath(new URL("../../", import.meta.url));
process.chdir(root);
const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: "string" },
    constants: { type: "string" },
    seed: { type: "string", default: "1" },
    file: { type: "string", default: "" },
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
const tests = [
  `tests/library/${folder}/**/*.test.ts`,
  ...(ALSO[folder.split("/")[0]] ?? []).map((name) => `tests/published/${name}.test.ts`),
];
const name = folder.replaceAll("/", "-");
mkdirSync("out/mutation", { recursive: true });

if (values.constants !== undefined) {
  const missed = changeConstants({ files, tests, count: Number(values.constants), seed: Number(values.seed) });
  process.exit(missed === 0 ? 0 : 1);
}
const mutate =
  values.sample === undefined
    ? files
    : await sampledRanges(files, (all) => sampleOf(all, Number(values.sample), Number(values.seed)));
const report = `out/mutation/${name}.json`;
const { status } = spawnSync("node_modules/.bin/stryker", ["run", "tests/mutation/stryker.config.mjs"], {
  stdio: "inherit",
  env: {
    ...process.env,
    MUTATION_FILES: mutate.join(","),
    MUTATION_TESTS: tests.join(","),
    MUTATION_REPORT: report,
  },
});
const counts = {};
for (const { mutants } of Object.values(JSON.parse(readFileSync(report, "utf8")).files))
  for (const mutant of mutants) counts[mutant.status] = (counts[mutant.status] ?? 0) + 1;
console.log(`${folder}: ${JSON.stringify(counts)}; the whole report is ${report}`);
process.exit(status ?? 1);
