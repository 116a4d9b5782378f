import { basename, join } from "node:path";
import { terminalText } from "../notebook/terminal-text";
import { askedParameters } from "./asked-parameters";
import type { CommandOptions } from "./command-options";
import { executedCopies, newStamp } from "./executed-copies";
import { type CommandKitchen, kitchenOf } from "./kitchen";
import { oneLine } from "./printable";
import { projectFolder } from "./project";
import { failureReport, type RunAllOptions, runAll } from "./run-all";

/**
 * Runs the named notebooks and writes executed copies, or, with `--in-place`, the outputs into the files. The copies
 * join those of the kitchen's last run, so that the report can take both.
 */
export async function runCommand(options: CommandOptions): Promise<number> {
  if (options.named.length === 0) throw new Error("a notebook must be named");
  const project = projectFolder(process.cwd());
  const kitchen = kitchenOf(options, project);
  const to = options.inPlace
    ? { copyTo: (path: string): string => path, environment: kitchen.environment }
    : await besideLastRun(kitchen);
  const asked = await askedParameters({ asked: options.set, paths: options.named, kitchen: kitchen.folder, project });
  const runs = await runAll({
    paths: options.named,
    ...to,
    environment: { ...to.environment, ...asked.environment },
    parameters: asked.parameters,
    project,
    kitchen: kitchen.folder,
    say: options.say,
  });
  for (const run of runs) {
    const text = terminalText(run.notebook);
    if (text) options.say(`\n${text}`);
    options.say(`Written: ${oneLine(to.copyTo(run.path))}`);
    if (run.failure) {
      options.complain(failureReport(run.path, run.failure));
      return 1;
    }
  }
  return 0;
}

async function besideLastRun(
  kitchen: CommandKitchen,
): Promise<Pick<RunAllOptions, "stamp" | "environment"> & { readonly copyTo: (path: string) => string }> {
  const { run } = await executedCopies(kitchen);
  return {
    copyTo: (path) => join(kitchen.out, "notebooks", basename(path)),
    stamp: newStamp(kitchen, run ?? undefined),
    environment: kitchen.environment,
  };
}
