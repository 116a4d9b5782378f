import { cpSync, mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";

const root = resolve(__dirname, "../../..");

/** A project of its own in a temporary folder with the named test notebooks; packages resolve as in this one. */
export function projectWith(...names: string[]): { readonly folder: string; readonly notebooks: string } {
  const folder = mkdtempSync(join(tmpdir(), "slabwright-test-"));
  const notebooks = join(folder, "notebooks");
  mkdirSync(notebooks);
  writeFileSync(join(folder, "package.json"), "{}");
  symlinkSync(join(root, "node_modules"), join(folder, "node_modules"));
  for (const name of names)
    cpSync(join(root, "tests/host/notebooks", `${name}.ipynb`), join(notebooks, `${name}.ipynb`));
  return { folder, notebooks };
}
