import { existsSync } from "node:fs";
import { readdir } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import { LIBRARY } from "../kernel/door-names";

/** The folder that holds `notebooks/`: the one given or the nearest above it. */
export function projectFolder(from: string): string {
  for (let folder = resolve(from); ; folder = dirname(folder)) {
    if (existsSync(join(folder, "notebooks")) && existsSync(join(folder, "package.json"))) return folder;
    if (dirname(folder) === folder) {
      throw new Error(`projectFolder: a folder with package.json and notebooks/ must be at or above ${resolve(from)}`);
    }
  }
}

/** Where a notebook's kernel works: in the notebook's folder if packages are found from there, else in the project's folder of notebooks. */
export function kernelFolder(notebook: string, project: string): string {
  const own = dirname(resolve(notebook));
  for (let folder = own; ; folder = dirname(folder)) {
    if (existsSync(join(folder, "node_modules", LIBRARY))) return own;
    if (dirname(folder) === folder) return join(project, "notebooks");
  }
}

/** The notebooks of a folder in the order of their names. */
export async function notebookPaths(folder: string): Promise<string[]> {
  const names = existsSync(folder) ? await readdir(folder) : [];
  return names
    .filter((name) => name.endsWith(".ipynb") && !name.startsWith("."))
    .sort()
    .map((name) => join(folder, name));
}

/** Whether a notebook is a draft that nobody has named yet. */
export function isDraft(path: string): boolean {
  return /^untitled/i.test(basename(path));
}
