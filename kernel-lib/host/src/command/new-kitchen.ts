import { relative, resolve } from "node:path";
import { askLibrary } from "./ask-library";
import type { CommandOptions } from "./command-options";
import { oneLine } from "./printable";
import { projectFolder } from "./project";

/** Writes a kitchen to begin with into a folder that is new or empty. */
export async function newKitchenCommand(options: CommandOptions): Promise<number> {
  const { named, units, say } = options;
  if (named.length !== 1)
    throw new Error(`one folder must be named, got ${named.length === 0 ? "none" : named.map(oneLine).join(", ")}`);
  if (units !== null && units !== "us" && units !== "metric")
    throw new Error(`--units must be us or metric, got ${oneLine(units)}`);
  const project = projectFolder(process.cwd());
  const folder = resolve(named[0]);
  const args = [{ folder, units: units ?? "metric" }];
  const files = await askLibrary<readonly string[]>(project, { door: "slabwright/notebook", name: "newKitchen", args });
  const path = oneLine(relative(process.cwd(), folder) || ".");
  const name = /^[\w./-]+$/.test(path) ? path : `"${path}"`;
  say(`Written to ${oneLine(folder)}: ${files.join(", ")}.`);
  say(`\nREADME.md there says what to do next, in order; after each step:\n\n  npm run check-kitchen -- ${name}`);
  return 0;
}
