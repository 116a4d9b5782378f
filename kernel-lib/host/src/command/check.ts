import { basename, dirname, join, resolve } from "node:path";
import { compareOutputs } from "../notebook/compare-outputs";
import { type Notebook, readNotebook, writeNotebook } from "../notebook/notebook";
import { isBundle, openBundle } from "../share/bundle";
import { changedCauses } from "../share/changed-causes";
import { provenanceIn } from "../share/provenance";
import { askedParameters } from "./asked-parameters";
import type { CommandOptions } from "./command-options";
import { executedCopies, type RunStamp, stampOf } from "./executed-copies";
import { kitchenOf } from "./kitchen";
import { oneLine } from "./printable";
import { notebookPaths, projectFolder } from "./project";
import { failureReport, runAll } from "./run-all";

/** What is to be run again, and where. */
interface Stored {
  readonly paths: readonly string[];
  readonly kitchen: string;
  readonly environment: Readonly<Record<string, string>>;
  readonly folderOf?: (path: string) => string;
  /** files of a bundle that are not those that were shared */
  readonly changed: readonly string[];
  /** takes away what was unpacked */
  readonly close: () => void;
}

/**
 * Runs notebooks again and compares with the outputs stored in them: those that are named, those of a bundle, those in
 * `notebooks/` that hold outputs, or else the executed copies of the kitchen's last run. Where one differs it says which cell,
 * what, by how much, and what has changed since that could be the cause. With `--update` the new outputs are stored.
 *
 * @returns 1 when any differs, failed or stored nothing
 */
export async function checkCommand(options: CommandOptions): Promise<number> {
  const began = Date.now();
  const project = projectFolder(process.cwd());
  const { paths, kitchen, environment, folderOf, changed, close } = await storedOf(options, project);
  try {
    for (const file of changed) options.say(`${oneLine(file)} was changed since it was shared`);
    const before = new Map<string, Notebook>();
    for (const path of paths) before.set(path, await readNotebook(path));
    const { parameters, environment: asked } = await askedParameters({ asked: options.set, paths, kitchen, project });
    const ranFor = [...before.values()].map((notebook) => provenanceIn(notebook)?.parameters.variant);
    const told = asked.SLABWRIGHT_VARIANT ?? ranFor.find((one) => typeof one === "string");
    const runs = await runAll({
      paths,
      copyTo: () => null,
      folderOf,
      project,
      kitchen,
      environment: { ...environment, ...(typeof told === "string" ? { SLABWRIGHT_VARIANT: told } : {}) },
      parameters,
      say: options.say,
    });
    let wrong = 0;
    for (const run of runs) {
      const stored = before.get(run.path) as Notebook;
      const name = oneLine(basename(run.path));
      if (run.failure) {
        options.complain(failureReport(run.path, run.failure));
        wrong++;
        continue;
      }
      const hasOutputs = stored.cells.some((cell) => cell.outputs?.length);
      const differences = compareOutputs(stored, run.notebook, { relative: options.tolerance ?? undefined });
      const [then, now] = [provenanceIn(stored), provenanceIn(run.notebook)];
      const causes = then === null || now === null ? null : changedCauses(then, now, stored);
      if (options.update) await store(run.path, run.notebook, stampOf(stored));
      if (!hasOutputs) {
        options.say(`${name}: no outputs are stored; "slabwright check --update ${name}" stores them`);
        wrong += options.update ? 0 : 1;
        continue;
      }
      for (const { cell, what } of differences) options.say(`${name}: cell ${cell}: ${what}`);
      const verdict =
        differences.length === 0
          ? "same outputs"
          : `${counted(differences.length, "cell")} ${differences.length === 1 ? "differs" : "differ"}`;
      options.say(`${name}: ${verdict}${options.update && differences.length > 0 ? ", now stored" : ""}`);
      for (const line of whyLines(causes, differences.length > 0)) options.say(`  ${oneLine(line)}`);
      if (differences.length > 0 && !options.update) wrong++;
    }
    const missing = paths.length - runs.length;
    options.say(
      `${counted(runs.length, "notebook")} run again in ${((Date.now() - began) / 1000).toFixed(1)} s: ${wrong === 0 ? "all the same" : `${wrong} not the same`}${missing > 0 ? `, ${missing} not run` : ""}.`,
    );
    return wrong > 0 ? 1 : 0;
  } finally {
    close();
  }
}

/** Why a run came out otherwise, or what has changed though it did not. */
function whyLines(causes: readonly string[] | null, differs: boolean): readonly string[] {
  if (causes === null)
    return differs
      ? ["why: not known, as the stored run does not say what it rested on; --update stores that too"]
      : [];
  if (causes.length > 0) return causes.map((cause) => `${differs ? "why" : "though"}: ${cause}`);
  return differs
    ? [
        "why: no file, parameter, seed, version or code has changed: the notebook gives something else each time (tag a cell volatile where it may)",
      ]
    : [];
}

async function storedOf(options: CommandOptions, project: string): Promise<Stored> {
  const [first] = options.named;
  if (options.named.length === 1 && isBundle(first)) {
    const { folder, changed, close } = await openBundle(resolve(first));
    const kitchen = join(folder, "kitchen");
    return {
      paths: await notebookPaths(join(folder, "notebooks")),
      kitchen,
      environment: { SLABWRIGHT_KITCHEN: kitchen },
      folderOf: () => join(project, "notebooks"),
      changed,
      close,
    };
  }
  const kitchen = kitchenOf(options, project);
  const common = { kitchen: kitchen.folder, environment: kitchen.environment, changed: [], close: () => {} };
  const copies = join(kitchen.out, "notebooks");
  const ran = join(project, "notebooks");
  const folderOf = (path: string): string => (dirname(resolve(path)) === copies ? ran : dirname(resolve(path)));
  if (options.named.length > 0) return { ...common, paths: options.named, folderOf };
  const own = await notebookPaths(ran);
  const filled: string[] = [];
  for (const path of own) if ((await readNotebook(path)).cells.some((cell) => cell.outputs?.length)) filled.push(path);
  if (filled.length > 0) return { ...common, paths: filled };
  const last = await executedCopies(kitchen);
  if (last.copies.length === 0)
    throw new Error(
      `executed notebooks of ${kitchen.name} must be in ${copies}, or outputs in notebooks/: run "slabwright start" first`,
    );
  return { ...common, paths: last.copies.map(({ path }) => path), folderOf };
}

/** Stores a new run in the place of the old one, as of the same run of the kitchen. */
async function store(path: string, notebook: Notebook, stamp: RunStamp | null): Promise<void> {
  Object.assign(notebook.metadata, { slabwright: { ...stamp, ...(notebook.metadata.slabwright as object) } });
  await writeNotebook(path, notebook);
}

function counted(count: number, name: string): string {
  return `${count} ${name}${count === 1 ? "" : "s"}`;
}
