import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { askLibrary } from "./ask-library";
import type { CommandOptions } from "./command-options";
import { kitchenOf } from "./kitchen";
import { oneLine } from "./printable";
import { projectFolder } from "./project";

/** What the library says of a kitchen. */
interface KitchenCheck {
  readonly problems: readonly string[];
  readonly notices: readonly string[];
  readonly summary: string;
}

/** Reads every file of a kitchen and says all that is wrong; 1 when something is. */
export async function checkKitchenCommand(options: CommandOptions): Promise<number> {
  const { named, say } = options;
  if (named.length > 1) throw new Error(`one kitchen must be named, got ${named.map(oneLine).join(", ")}`);
  const project = projectFolder(process.cwd());
  const folder = named.length === 1 ? resolve(named[0]) : kitchenOf(options, project).folder;
  if (!existsSync(folder)) throw new Error(`the kitchen must be a folder that exists, got ${oneLine(folder)}`);
  const call = { door: "slabwright/notebook", name: "checkKitchenFolder", args: [folder] };
  const { problems, notices, summary } = await askLibrary<KitchenCheck>(project, call);
  for (const problem of problems) say(oneLine(problem));
  if (problems.length > 0) say("");
  for (const notice of notices) say(`Notice: ${oneLine(notice)}`);
  if (notices.length > 0) say("");
  const count = problems.length === 1 ? "1 problem" : `${problems.length || "No"} problems`;
  say(`${count} in ${oneLine(folder)}: ${summary}.`);
  return problems.length > 0 ? 1 : 0;
}
