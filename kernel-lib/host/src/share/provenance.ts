import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { type Cell, type Notebook, textOf } from "../notebook/notebook";
import { type ParameterValue, parametersOf } from "../notebook/parameters";
import { calledIn } from "./called-in";
import { filesDigest, filesIn } from "./files-in";
import { fileSha256, sha256 } from "./sha256";

/** What a run of a notebook rested on: enough to say, of a later run that came out otherwise, why. */
export interface Provenance {
  /** version of Node */
  readonly node: string;
  /** version of each package that cells reach, by name */
  readonly packages: Readonly<Record<string, string>>;
  /** SHA-256 of the project's `package-lock.json`; null without one */
  readonly lock: string | null;
  /** SHA-256 over the library's built files */
  readonly code: string;
  /** what the notebook was told, by name: the values of its cells tagged `parameters`, and the variant where one was asked for */
  readonly parameters: Readonly<Record<string, ParameterValue>>;
  /** SHA-256 of each file that it read: `kitchen/trials/week.csv`, `project/notebooks/extra.csv` */
  readonly files: Readonly<Record<string, string>>;
  /** SHA-256 of source and outputs of each code cell, by its id */
  readonly cells: Readonly<Record<string, { readonly source: string; readonly outputs: string }>>;
}

/** What is the same for all notebooks of a run. */
export type RunBasis = Pick<Provenance, "node" | "packages" | "lock" | "code">;

/** Packages whose version can change what a cell shows. */
const PACKAGES = ["slabwright", "slabwright-host", "tslab", "danfojs", "plotly.js-dist", "zod", "xlsx"] as const;

/** What all notebooks of a project rest on now. */
export function runBasis(project: string): RunBasis {
  const lock = join(project, "package-lock.json");
  const packages = PACKAGES.flatMap((name): readonly (readonly [string, string])[] => {
    const version = installedVersion(project, name);
    return version === null ? [] : [[name, version]];
  });
  return {
    node: process.versions.node,
    packages: Object.fromEntries(packages),
    lock: existsSync(lock) ? fileSha256(lock) : null,
    code: codeDigest(join(project, "kernel-lib/library/dist")),
  };
}

/** What `provenanceOf` works from. */
export interface ProvenanceOptions {
  readonly basis: RunBasis;
  /** as it ran, with its outputs */
  readonly notebook: Notebook;
  /** the notebook's name, for errors */
  readonly name: string;
  /** what it was told beside its own parameters */
  readonly told: Readonly<Record<string, ParameterValue>>;
  /** paths of the files that it read */
  readonly reads: readonly string[];
  /** folders that those lie in, by what they are called in the record */
  readonly places: Readonly<Record<string, string>>;
}

/** What one notebook's run rested on. */
export function provenanceOf({ basis, notebook, name, told, reads, places }: ProvenanceOptions): Provenance {
  const own = parametersOf(notebook, name).map((parameter) => [parameter.name, parameter.value] as const);
  const files = reads.flatMap((path): readonly (readonly [string, string])[] => {
    const name = calledIn(places, path);
    return name === null || !existsSync(path) ? [] : [[name, fileSha256(path)]];
  });
  return {
    ...basis,
    parameters: Object.fromEntries([...Object.entries(told), ...own]),
    files: Object.fromEntries(files.sort(([a], [b]) => (a < b ? -1 : 1))),
    cells: Object.fromEntries(
      notebook.cells.filter(({ cell_type }) => cell_type === "code").map((cell) => [cell.id, cellDigests(cell)]),
    ),
  };
}

/** What an executed notebook says that its run rested on; null when it says nothing that can be read. */
export function provenanceIn(notebook: Notebook): Provenance | null {
  const { basis } = (notebook.metadata.slabwright ?? {}) as { readonly basis?: Provenance };
  const isRecord = (value: unknown): boolean => typeof value === "object" && value !== null && !Array.isArray(value);
  if (basis === undefined || !isRecord(basis) || typeof basis.node !== "string" || typeof basis.code !== "string")
    return null;
  const { packages, parameters, files, cells } = basis;
  const areTexts = (record: object): boolean => Object.values(record).every((value) => typeof value === "string");
  const isWhole = [packages, parameters, files, cells].every(isRecord) && areTexts(packages) && areTexts(files);
  return isWhole && Object.values(cells).every(isRecord) ? basis : null;
}

/** SHA-256 of a cell's source and of its outputs. */
export function cellDigests(cell: Cell): { readonly source: string; readonly outputs: string } {
  const outputs = (cell.outputs ?? []).map((output) =>
    output.output_type === "stream"
      ? { ...output, text: textOf(output.text) }
      : output.output_type === "error"
        ? { ename: output.ename, evalue: output.evalue }
        : { data: joined(output.data) },
  );
  return { source: sha256(textOf(cell.source)), outputs: sha256(JSON.stringify(outputs)) };
}

/** Texts that a file holds line by line, as one. */
function joined(data: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  const isLines = (value: unknown): value is string[] =>
    Array.isArray(value) && value.every((line) => typeof line === "string");
  return Object.fromEntries(
    Object.entries(data)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([mime, value]) => [mime, isLines(value) ? value.join("") : value]),
  );
}

function installedVersion(project: string, name: string): string | null {
  const from = createRequire(join(project, "kernel-lib/library/package.json"));
  for (const folder of from.resolve.paths(name) ?? []) {
    const path = join(folder, name, "package.json");
    if (existsSync(path)) return String((JSON.parse(readFileSync(path, "utf8")) as { version?: unknown }).version);
  }
  return null;
}

/** One digest over all programs in a folder, by name and content. */
function codeDigest(folder: string): string {
  if (!existsSync(folder)) return filesDigest([]);
  const programs = filesIn(folder).filter((name) => name.endsWith(".js"));
  return filesDigest(programs.map((name) => ({ name, path: join(folder, name) })));
}
