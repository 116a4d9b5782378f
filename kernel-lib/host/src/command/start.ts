import { existsSync } from "node:fs";
import { basename, join } from "node:path";
import { terminalText } from "../notebook/terminal-text";
import { writeReport } from "../report/write-report";
import { askedParameters, variantIdsOf } from "./asked-parameters";
import { kitchenCheck, problemText } from "./check-kitchen";
import type { CommandOptions } from "./command-options";
import { eachVariant } from "./each-variant";
import { headingsOf, newStamp } from "./executed-copies";
import { kitchenOf } from "./kitchen";
import { oneLine } from "./printable";
import { isDraft, notebookPaths, projectFolder } from "./project";
import { failureReport, runAll } from "./run-all";

/**
 * Checks the kitchen, and ends with its problems where it has any; else runs every notebook of the project and of the kitchen,
 * writes copies and the report, and prints what the notebooks have for the terminal.
 */
export async function startCommand(options: CommandOptions): Promise<number> {
  const began = Date.now();
  const project = projectFolder(process.cwd());
  const kitchen = kitchenOf(options, project);
  const { out } = kitchen;
  const stamp = newStamp(kitchen);
  const ofProject = options.named.length ? [...options.named] : await notebookPaths(join(project, "notebooks"));
  const own = options.named.length || kitchen.notebooks === null ? [] : await notebookPaths(kitchen.notebooks);
  const all = [...ofProject, ...own];
  const drafts = options.named.length ? [] : all.filter(isDraft);
  const paths = all.filter((path) => !drafts.includes(path));
  if (drafts.length > 0)
    options.say(
      `Not run, as drafts: ${drafts.map((path) => oneLine(basename(path))).join(", ")}. Rename one to have it run.`,
    );
  if (paths.length === 0) throw new Error(`a notebook must be in ${join(project, "notebooks")}`);
  if (existsSync(kitchen.folder)) {
    const check = await kitchenCheck(project, kitchen.folder);
    if (check.problems.length > 0) {
      options.complain(`${problemText(check, kitchen.folder)}\nNothing was run: correct these first.`);
      return 1;
    }
  }
  if (options.each) {
    const { parameters } = await askedParameters({ asked: options.set, paths, kitchen: kitchen.folder, project });
    const variantIds = await variantIdsOf(project, kitchen.folder);
    return eachVariant({
      variantIds,
      paths,
      kitchen,
      project,
      parameters,
      say: options.say,
      complain: options.complain,
    });
  }
  const asked = await askedParameters({ asked: options.set, paths, kitchen: kitchen.folder, project });
  const runs = await runAll({
    paths,
    copyTo: (path) => join(out, "notebooks", copyName(path, own.includes(path) ? ofProject : [])),
    stamp,
    project,
    kitchen: kitchen.folder,
    parameters: asked.parameters,
    environment: { ...kitchen.environment, ...asked.environment },
    say: options.say,
  });
  const report = join(out, "report.html");
  await writeReport({ notebooks: runs, path: report, ...headingsOf(stamp, kitchen) });
  for (const run of runs) {
    const text = terminalText(run.notebook);
    if (text) options.say(`\n${text}`);
  }
  const failed = runs.find((run) => run.failure);
  if (failed?.failure) {
    options.complain(`\n${failureReport(failed.path, failed.failure)}`);
    const copy = copyName(failed.path, own.includes(failed.path) ? ofProject : []);
    options.complain(`  The partly executed copy: ${oneLine(join(out, "notebooks", copy))}`);
    return 1;
  }
  options.say(
    `\n${runs.length} notebooks in ${((Date.now() - began) / 1000).toFixed(1)} s. The report: ${oneLine(report)}`,
  );
  return 0;
}

/** The name of an executed copy; a notebook of the kitchen makes way for one of the project that is called the same. */
function copyName(path: string, others: readonly string[]): string {
  const name = basename(path);
  return others.some((other) => basename(other) === name) ? `kitchen-${name}` : name;
}
