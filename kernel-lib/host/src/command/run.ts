import { basename, join, resolve } from "node:path";
import { terminalText } from "../notebook/terminal-text";
import type { CommandOptions } from "./command-options";
import { kitchenEnvironment } from "./environment";
import { oneLine } from "./printable";
import { projectFolder } from "./project";
import { failureReport, runAll } from "./run-all";

/** Runs the named notebooks and writes executed copies, or, with `--in-place`, the outputs into the files. */
export async function runCommand(options: CommandOptions): Promise<number> {
  if (options.notebooks.length === 0) throw new Error("a notebook must be named");
  const copyTo = options.inPlace
    ? (path: string): string => path
    : (path: string): string =>
        join(resolve(options.out ?? join(projectFolder(process.cwd()), "out")), "notebooks", basename(path));
  const runs = await runAll({
    paths: options.notebooks,
    copyTo,
    environment: kitchenEnvironment(options.kitchen),
    say: options.say,
  });
  for (const run of runs) {
    const text = terminalText(run.notebook);
    if (text) options.say(`\n${text}`);
    options.say(`Written: ${oneLine(copyTo(run.path))}`);
    if (run.failure) {
      options.complain(failureReport(run.path, run.failure));
      return 1;
    }
  }
  return 0;
}
