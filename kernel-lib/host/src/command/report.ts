import { join } from "node:path";
import { readNotebook } from "../notebook/notebook";
import { writeReport } from "../report/write-report";
import type { CommandOptions } from "./command-options";
import { executedCopies, headingsOf, newStamp } from "./executed-copies";
import { kitchenOf } from "./kitchen";
import { oneLine } from "./printable";
import { projectFolder } from "./project";

/** Writes the report from notebooks as they stand: those named, or the executed copies of the kitchen's last run. */
export async function reportCommand(options: CommandOptions): Promise<number> {
  const kitchen = kitchenOf(options, projectFolder(process.cwd()));
  const path = join(kitchen.out, "report.html");
  if (options.named.length > 0) {
    const named = options.named.map(async (one) => ({ path: one, notebook: await readNotebook(one) }));
    await writeReport({ notebooks: await Promise.all(named), path, ...headingsOf(newStamp(kitchen), kitchen) });
  } else {
    const { run, copies, others } = await executedCopies(kitchen);
    if (run === null)
      throw new Error(
        `executed notebooks of ${kitchen.name} must be in ${join(kitchen.out, "notebooks")}: run "slabwright start" for this kitchen first`,
      );
    await writeReport({ notebooks: copies, path, ...headingsOf(newStamp(kitchen, run), kitchen) });
    if (others.length > 0)
      options.say(`Left out, as they are not of this kitchen's last run: ${others.map(oneLine).join(", ")}`);
  }
  options.say(`The report: ${oneLine(path)}`);
  return 0;
}
