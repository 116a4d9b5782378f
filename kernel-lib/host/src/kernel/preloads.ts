import { existsSync } from "node:fs";
import { join } from "node:path";

/** What mends tslab wherever a kernel is started for this host or registered by it. */
export const MENDS: readonly string[] = [
  "mend-shorthand",
  "mend-sockets",
  "mend-outputs",
  "mend-questions",
  "mend-missing",
];

/** What lets a kernel take compiled cells from the store; behind the mends, as it loads what they mend later. */
export const FROM_STORE = "../compile/late-compiler";

/** Node's arguments that load built files of this folder into the kernel's process before tslab. */
export function preloads(...names: readonly string[]): string[] {
  return names.flatMap((name) => {
    const built = join(__dirname, `${name}.js`);
    return ["--require", existsSync(built) ? built : join(__dirname, "../../dist/kernel", `${name}.js`)];
  });
}
