import { basename, dirname, resolve } from "node:path";
import { execute } from "../kernel/execute";
import { type Kernel, startKernel } from "../kernel/start-kernel";
import { outputCollector } from "./collect-outputs";
import { type Cell, type Notebook, readNotebook, tagsOf, textOf, writeNotebook } from "./notebook";
import { type AskedParameters, withParameters } from "./parameters";

/** What `runNotebook` needs to know. */
export interface RunOptions {
  /** the notebook's file */
  readonly path: string;
  /** where the executed copy goes; left out, none is written */
  readonly copyTo?: string;
  /** what is added to the metadata of the executed copy, told from the notebook as it ran */
  readonly metadata?: (notebook: Notebook) => Readonly<Record<string, unknown>>;
  /** other values for the constants of its cells tagged `parameters` */
  readonly parameters?: AskedParameters;
  /** how long one cell may run, s; 120 */
  readonly cellLimitS?: number;
  /** added to the kernel's environment */
  readonly environment?: Readonly<Record<string, string>>;
  /** a kernel that is already running in the notebook's folder; left out, one is started. It is stopped at the end */
  readonly kernel?: Promise<Kernel>;
}

/** Why a run stopped. */
export interface CellFailure {
  /** 1 for the first cell of the notebook, of whatever type */
  readonly cell: number;
  readonly source: string;
  /** what the kernel said, or why the host stopped the cell */
  readonly message: string;
}

/** What came of a run. */
export interface Run {
  readonly path: string;
  /** the notebook with its new outputs; after a failure, cells behind it have none */
  readonly notebook: Notebook;
  readonly failure: CellFailure | null;
  readonly elapsedMs: number;
}

/**
 * Runs a notebook's code cells in order on a kernel of its own and stops at the first that fails. The executed copy is
 * written either way. A cell tagged `skip-execution` is passed over, one tagged `raises-exception` may fail.
 */
export async function runNotebook(options: RunOptions): Promise<Run> {
  const began = Date.now();
  const notebook = await readNotebook(options.path)
    .then((read) => withParameters(read, options.parameters ?? {}, basename(options.path)))
    .catch(async (error) => {
      await options.kernel?.then((kernel) => kernel.stop());
      throw error;
    });
  const folder = dirname(resolve(options.path));
  const kernel = await (options.kernel ?? startKernel({ folder, environment: options.environment, fromStore: true }));
  let failure: CellFailure | null = null;
  try {
    for (const cell of notebook.cells) {
      if (cell.cell_type !== "code") continue;
      Object.assign(cell, { execution_count: null, outputs: [] });
      delete cell.metadata.slabwright; // what the page noted of an earlier run, with names of files that stay at home
    }
    failure = await runCells(kernel, notebook, options);
  } finally {
    await kernel.stop();
  }
  Object.assign(notebook.metadata, options.metadata?.(notebook));
  if (options.copyTo) await writeNotebook(options.copyTo, notebook);
  return { path: options.path, notebook, failure, elapsedMs: Date.now() - began };
}

async function runCells(kernel: Kernel, notebook: Notebook, options: RunOptions): Promise<CellFailure | null> {
  const collector = outputCollector();
  let count = 0;
  for (const cell of cellsToRun(notebook)) {
    const number = notebook.cells.indexOf(cell) + 1;
    const code = textOf(cell.source);
    cell.outputs = collector.open(code);
    const { status, reason } = await execute(kernel, {
      code,
      limitMs: (options.cellLimitS ?? 120) * 1000,
      onNews: collector.add,
    });
    cell.execution_count = ++count;
    collector.close(status !== "ok", reason);
    if (status === "ok") continue;
    if (status === "error" && tagsOf(cell).includes("raises-exception")) {
      await new Promise((done) => setTimeout(done, 250)); // the kernel refuses work for 200 ms after a failure
      continue;
    }
    const error = cell.outputs.at(-1);
    const message = error?.output_type === "error" ? error.traceback.join("\n") : reason;
    return { cell: number, source: code, message };
  }
  return null;
}

/** The cells that a run runs, in order: code, not empty, and not tagged `skip-execution`. */
export function cellsToRun(notebook: Notebook): Cell[] {
  return notebook.cells.filter(
    (cell) =>
      cell.cell_type === "code" && textOf(cell.source).trim() !== "" && !tagsOf(cell).includes("skip-execution"),
  );
}
