import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { strictDocstring } from "./strict-docstring.js";

/** Writes the declaration files of a build into a folder of their own, docstrings in the strict form; `heads` open files. */
export function declaredDoors(built: string, folder: string, heads: ReadonlyMap<string, string> = new Map()): void {
  rmSync(folder, { recursive: true, force: true });
  for (const path of readdirSync(built, { recursive: true, encoding: "utf8" })) {
    if (!path.endsWith(".d.ts")) continue;
    const text = readFileSync(join(built, path), "utf8");
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(
      join(folder, path),
      opening(heads.get(path)) +
        text.replace(/\/\*\*[\s\S]*?\*\/(?=(\s*(?:export|declare)\b)?)/g, (comment, statement) =>
          strictDocstring(comment, statement !== undefined),
        ),
    );
  }
}

function opening(head: string | undefined): string {
  return head === undefined ? "" : `${strictDocstring(`/** ${head} */`, false)}\n`;
}
