import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { FROM_STORE, MENDS, preloads } from "../kernel/preloads";

/** Notebooks that are being compiled. */
export interface Ahead {
  /** done when the cells of the notebook with this number, from 0, are in the store, or will not come there */
  readonly compiled: (notebook: number) => Promise<void>;
  readonly stop: () => void;
}

/**
 * Compiles the cells of notebooks into the store that kernels take them from, in a process of its own. Whatever happens to
 * it, a kernel compiles for itself what it does not find.
 *
 * @param folder where the notebooks' kernels work
 * @param notebooks the sources of each notebook's cells, in the order in which they will run
 */
export function compileAhead(folder: string, notebooks: readonly (readonly string[])[]): Ahead {
  const built = join(__dirname, "compile-cells.js");
  const program = existsSync(built) ? built : join(__dirname, "../../dist/compile/compile-cells.js");
  const child = spawn(process.execPath, [...preloads(...MENDS, FROM_STORE), program], {
    cwd: folder,
    stdio: ["pipe", "pipe", "ignore"],
  });
  const waiting: (() => void)[] = [];
  const compiled = notebooks.map(() => new Promise<void>((done) => waiting.push(done)));
  const release = (count: number): void => {
    for (const done of waiting.splice(0, count)) done();
  };
  child.stdout.on("data", (text: Buffer) => release(text.toString("latin1").split("\n").length - 1));
  child.once("close", () => release(waiting.length));
  child.once("error", () => release(waiting.length));
  child.stdin.on("error", () => {}); // a process that has ended is told by "close"
  child.stdin.end(JSON.stringify(notebooks));
  return { compiled: (notebook) => compiled[notebook], stop: () => void child.kill() };
}
