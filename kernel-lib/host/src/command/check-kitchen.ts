import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { askLibrary } from "./ask-library";
import type { CommandOptions } from "./command-options";
import { kitchenOf } from "./kitchen";
import { oneLine } from "./printable";
import { projectFolder } from "./project";

/** What the library says of a kitchen. */
export interface KitchenCheck {
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
  const check = await kitchenCheck(project, folder);
  for (const notice of check.notices) say(`Notice: ${oneLine(notice)}`);
  if (check.notices.length > 0) say("");
  say(problemText(check, folder));
  return check.problems.length > 0 ? 1 : 0;
}

/** What the project's library says of the kitchen in a folder. */
export function kitchenCheck(project: string, folder: string): Promise<KitchenCheck> {
  return askLibrary<KitchenCheck>(project, { door: "slabwright/notebook", name: "checkKitchenFolder", args: [folder] });
}

/** The problems of a kitchen, a line each, and how many there are. */
export function problemText({ problems, summary }: KitchenCheck, folder: string): string {
  const count = problems.length === 1 ? "1 problem" : `${problems.length || "No"} problems`;
  const lines = problems.length > 0 ? [...problems.map(oneLine), ""] : [];
  return [...lines, `${count} in ${oneLine(folder)}: ${summary}.`].join("\n");
}
