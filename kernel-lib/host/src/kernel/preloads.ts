import { existsSync } from "node:fs";
import { join } from "node:path";

/** Node's arguments that load built files of this folder into the kernel's process before tslab. */
export function preloads(...names: readonly string[]): string[] {
  return names.flatMap((name) => {
    const built = join(__dirname, `${name}.js`);
    return ["--require", existsSync(built) ? built : join(__dirname, "../../dist/kernel", `${name}.js`)];
  });
}
