import { basename, dirname, resolve } from "node:path";
import { type Kernel, startKernel } from "../kernel/start-kernel";
import { type CellFailure, type CellProgress, type Run, runNotebook } from "../notebook/run-notebook";

/** What `runAll` needs to know. */
export interface RunAllOptions {
  readonly paths: readonly string[];
  /** where the executed copy of a notebook goes, null for nowhere */
  readonly copyTo: (path: string) => string | null;
  readonly environment: Readonly<Record<string, string>>;
  /** progress, one line at a time */
  readonly say: (line: string) => void;
}

/**
 * Runs notebooks one after another, each on a kernel of its own; the next kernel starts while a notebook runs. Stops
 * at the first failing cell: its run is the last of those returned.
 */
export async function runAll(options: RunAllOptions): Promise<Run[]> {
  const runs: Run[] = [];
  const start = (path: string | undefined): Promise<Kernel> | undefined => {
    if (path === undefined) return undefined;
    const kernel = startKernel({ folder: dirname(resolve(path)), environment: options.environment });
    kernel.catch(() => {}); // told when its notebook's turn comes
    return kernel;
  };
  let kernel = start(options.paths[0]);
  for (const [index, path] of options.paths.entries()) {
    const next = start(options.paths[index + 1]);
    const name = basename(path);
    const place = `[${index + 1}/${options.paths.length}] ${name}`;
    const onCell = ({ cell, codeCell, codeCells }: CellProgress): void => {
      options.say(`${place}  cell ${cell} (${codeCell} of ${codeCells} code cells)`);
    };
    let run: Run;
    try {
      const copyTo = options.copyTo(path) ?? undefined;
      run = await runNotebook({ path, copyTo, kernel, onCell });
    } catch (error) {
      await next?.then((unused) => unused.stop()).catch(() => {});
      throw error;
    }
    runs.push(run);
    options.say(`${place}  ${run.failure ? "FAILED" : "done"} in ${(run.elapsedMs / 1000).toFixed(1)} s`);
    if (run.failure) {
      await next?.then((unused) => unused.stop()).catch(() => {});
      break;
    }
    kernel = next;
  }
  return runs;
}

/** A failure for the terminal: notebook, cell, its source, the kernel's message. */
export function failureReport(path: string, failure: CellFailure): string {
  const indent = (text: string): string => text.trimEnd().replace(/^/gm, "    ");
  return [
    `${path}: cell ${failure.cell} failed.`,
    `  The cell's source:\n${indent(failure.source)}`,
    `  The kernel's message:\n${indent(failure.message)}`,
  ].join("\n");
}
