import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";

import { type Ahead, compileAhead } from "../compile/compile-ahead";

import { notedPaths, type ReadsAsked } from "../kernel/reads-asked";
import { startKernel } from "../kernel/start-kernel";
import { readNotebook, textOf } from "../notebook/notebook";
import { type AskedParameters, withParameters } from "../notebook/parameters";
import { type CellFailure, cellsToRun, type Run, runNotebook } from "../notebook/run-notebook";
import { provenanceOf, runBasis } from "../share/provenance";
import type { RunStamp } from "./executed-copies";
import { oneLine } from "./printable";
import { kernelFolder } from "./project";

/** What `runAll` needs to know. */
export interface RunAllOptions {
  readonly paths: readonly string[];
  /** where the executed copy of a notebook goes, null for nowhere */
  readonly copyTo: (path: string) => string | null;
  /** the folder that a notebook's cells work in; where packages are found (`kernelFolder`) unless given */
  readonly folderOf?: (path: string) => string;
  /** what the copies say of themselves beside what they rest on; left out, nothing */
  readonly stamp?: RunStamp;
  /** the project's folder, whose library and packages the cells reach */
  readonly project: string;
  /** folder of the kitchen that the cells load */
  readonly kitchen: string;
  /** other values of the notebooks' parameters */
  readonly parameters?: AskedParameters;
  readonly environment: Readonly<Record<string, string>>;
  /** progress: a line when it begins, and one a notebook when it is done */
  readonly say: (line: string) => void;
}

/** Notebooks that run at the same time, each on a kernel of its own: a small machine has two cores. */
const LANES = 2;

/**
 * Runs notebooks, two at a time, each on a kernel of its own, while one process compiles ahead of them what was not compiled
 * before. After a failing cell no further notebook is started; those that run already are finished. Returns the runs in the
 * order of the paths.
 */
export async function runAll(options: RunAllOptions): Promise<Run[]> {
  const { paths, environment, say, parameters = {}, project } = options;
  const folderOf = options.folderOf ?? ((path: string): string => kernelFolder(path, project));
  const runs: Run[] = [];
  const basis = runBasis(options.project);
  const places = { kitchen: options.kitchen, project: options.project };
  const variant = environment.SLABWRIGHT_VARIANT ?? process.env.SLABWRIGHT_VARIANT ?? "";
  const told: Readonly<Record<string, string>> = variant === "" ? {} : { variant };
  const notes = mkdtempSync(join(tmpdir(), "slabwright-reads-"));
  const lanesUsed = Math.min(LANES, paths.length);
  say(`Running ${paths.length === 1 ? "1 notebook" : `${paths.length} notebooks, ${lanesUsed} at a time`} …`);
  const ahead = await aheadOf(paths, parameters, folderOf);
  let taken = 0;
  let stopped = false;
  const runNext = async (): Promise<void> => {
    while (!stopped && taken < paths.length) {
      const index = taken++;
      const path = paths[index];
      const place = `[${index + 1}/${paths.length}] ${oneLine(basename(path))}`;
      const readsIn = join(notes, `${index}`);
      const reads: ReadsAsked = { to: readsIn, roots: Object.values(places) };
      try {
        const started = startKernel({
          folder: folderOf(path),
          fromStore: true,
          // a cell that logs a trial has done so when it was written: not again
          environment: { ...environment, SLABWRIGHT_RERUN: "1", SLABWRIGHT_READS: JSON.stringify(reads) },
        });
        const kernel = Promise.all([started, ahead.compiled(index)]).then(([ready]) => ready);
        const run = await runNotebook({
          path,
          copyTo: options.copyTo(path) ?? undefined,
          metadata: (notebook) => ({
            slabwright: {
              ...options.stamp,
              basis: provenanceOf({ basis, notebook, name: basename(path), told, reads: pathsIn(readsIn), places }),
            },
          }),
          parameters,
          kernel,
        });
        runs[index] = run;
        stopped ||= run.failure !== undefined && run.failure !== null;
        say(`${place}  ${run.failure ? "FAILED" : "done"} in ${(run.elapsedMs / 1000).toFixed(1)} s`);
      } catch (error) {
        stopped = true;
        throw error;
      }
    }
  };
  const lanes = await Promise.allSettled(Array.from({ length: lanesUsed }, runNext));
  ahead.stop();
  rmSync(notes, { recursive: true, force: true });
  for (const lane of lanes) if (lane.status === "rejected") throw lane.reason;
  return runs.filter((run) => run !== undefined);
}

/** Compiles ahead the notebooks that work in the folder of the first; others are compiled by their kernels. */
async function aheadOf(
  paths: readonly string[],
  parameters: AskedParameters,
  folderOf: (path: string) => string,
): Promise<Ahead> {
  const folder = folderOf(paths[0]);
  const sources = paths.map(async (path) => {
    if (folderOf(path) !== folder) return [];
    // its run says what is wrong with a notebook
    const notebook = await readNotebook(path)
      .then((read) => withParameters(read, parameters, basename(path)))
      .catch(() => null);
    return notebook === null ? [] : cellsToRun(notebook).map((cell) => textOf(cell.source));
  });
  return compileAhead(folder, await Promise.all(sources));
}

/** The paths that a kernel noted. */
function pathsIn(file: string): readonly string[] {
  return existsSync(file) ? notedPaths(readFileSync(file, "utf8")) : [];
}

/** A failure for the terminal: notebook, cell, its source, the kernel's message. */
export function failureReport(path: string, failure: CellFailure): string {
  const indent = (text: string): string => text.trimEnd().replace(/^/gm, "    ");
  return [
    `${oneLine(path)}: cell ${failure.cell} failed.`,
    `  The cell's source:\n${indent(failure.source)}`,
    `  The kernel's message:\n${indent(failure.message)}`,
  ].join("\n");
}
