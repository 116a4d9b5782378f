import { execFile } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { type Closeness, closenessIn } from "./check-table.js";
import { documents } from "./documents.js";
import { makeReference } from "./make-reference.js";
import { modelTables } from "./model-tables.js";
import { runTutorial } from "./run-tutorial.js";
import { checkSources, docstringSources } from "./source-list.js";

const project = fileURLToPath(new URL("../../../", import.meta.url));
const library = join(project, "kernel-lib/library");
const pages = join(project, "kernel-lib/reference/pages");
const out = join(project, "out/reference");
const work = join(project, "kernel-lib/reference/dist/work");
rmSync(work, { recursive: true, force: true });
mkdirSync(work, { recursive: true });

console.log("Running the checks and the tutorial …");
const [closeness, tutorial] = await Promise.all([
  runChecks(),
  runTutorial(readFileSync(join(pages, "tutorial.md"), "utf8"), { project, folder: join(work, "tutorial") }),
]);
console.log("Writing the pages …");
const contents = {
  closeness,
  tutorial,
  docstrings: docstringSources(join(library, "dist")),
  checks: checkSources(closeness),
  tables: libraryTables(),
};
await makeReference({ library, ...documents(pages, join(work, "pages"), contents), work, out });
console.log(`The reference: ${join(out, "index.html")}`);

/** Tables of what the built library holds. */
function libraryTables(): ReturnType<typeof modelTables> {
  const load = createRequire(join(library, "package.json"));
  const { coreLimit, STORAGE_LIVES } = load("./dist/safety/index.js");
  const { crispPriors } = load("./dist/crisp/index.js");
  return modelTables({ coreLimit, storageLives: STORAGE_LIVES, crispPriors });
}

/** What the published checks leave behind; the one of notebooks' form compares nothing with a number. */
async function runChecks(): Promise<readonly Closeness[]> {
  const results = join(work, "checks.json");
  const words = ["tests/published", "--exclude", "**/nbformat.test.ts", "--reporter=json", `--outputFile=${results}`];
  const vitest = join(project, "node_modules/vitest/vitest.mjs");
  // that a check failed is read from its results
  await promisify(execFile)(process.execPath, [vitest, "run", ...words], { cwd: project }).catch(() => undefined);
  return closenessIn(JSON.parse(readFileSync(results, "utf8")));
}
