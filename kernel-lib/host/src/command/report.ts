import { join, resolve } from "node:path";
import { readNotebook } from "../notebook/notebook";
import { writeReport } from "../report/write-report";
import type { CommandOptions } from "./command-options";
import { oneLine } from "./printable";
import { notebookPaths, projectFolder } from "./project";
import { subtitleOf } from "./subtitle";

/** Writes the report from notebooks as they stand: those named, or the executed copies of the last run. */
export async function reportCommand(options: CommandOptions): Promise<number> {
  const project = projectFolder(process.cwd());
  const out = resolve(options.out ?? join(project, "out"));
  const paths = options.notebooks.length ? [...options.notebooks] : await notebookPaths(join(out, "notebooks"));
  if (paths.length === 0)
    throw new Error(`executed notebooks must be in ${join(out, "notebooks")}: run "npm start" first`);
  const notebooks = await Promise.all(paths.map(async (path) => ({ path, notebook: await readNotebook(path) })));
  const report = join(out, "report.html");
  await writeReport({
    notebooks,
    path: report,
    subtitle: subtitleOf(resolve(options.kitchen ?? join(project, "data"))),
  });
  options.say(`The report: ${oneLine(report)}`);
  return 0;
}
