import { join } from "node:path";
import { compareOutputs } from "../notebook/compare-outputs";
import { type Notebook, readNotebook } from "../notebook/notebook";
import type { CommandOptions } from "./command-options";
import { kitchenEnvironment } from "./kitchen";
import { oneLine } from "./printable";
import { notebookPaths, projectFolder } from "./project";
import { failureReport, runAll } from "./run-all";

/** Runs notebooks again and compares with the outputs stored in them; 1 when any differs, failed or stored nothing. */
export async function checkCommand(options: CommandOptions): Promise<number> {
  const project = projectFolder(process.cwd());
  const paths = options.named.length ? [...options.named] : await notebookPaths(join(project, "notebooks"));
  if (paths.length === 0) throw new Error(`a notebook must be in ${join(project, "notebooks")}`);
  const stored = new Map<string, Notebook>();
  for (const path of paths) stored.set(path, await readNotebook(path));
  const runs = await runAll({
    paths,
    copyTo: () => null,
    environment: kitchenEnvironment(options.kitchen),
    say: options.say,
  });
  let wrong = 0;
  for (const run of runs) {
    const before = stored.get(run.path) as Notebook;
    const name = oneLine(run.path);
    if (run.failure) {
      options.complain(failureReport(run.path, run.failure));
      wrong++;
    } else if (!before.cells.some((cell) => cell.outputs?.length)) {
      options.say(`${name}: no outputs are stored; "slabwright run --in-place ${name}" stores them`);
      wrong++;
    } else {
      const differences = compareOutputs(before, run.notebook, { relative: options.tolerance ?? undefined });
      for (const { cell, what } of differences) options.say(`${name}: cell ${cell}: ${what}`);
      options.say(`${name}: ${differences.length === 0 ? "same outputs" : `${differences.length} cells differ`}`);
      if (differences.length > 0) wrong++;
    }
  }
  return wrong > 0 ? 1 : 0;
}
