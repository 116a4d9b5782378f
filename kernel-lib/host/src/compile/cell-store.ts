import { createHash } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";

/** A file as it was when the compiler read it: path, time of its last change in ms, bytes; zeros for one that was not there. */
export type FileState = readonly [path: string, changedMs: number, bytes: number];

/** What cells compile to, kept in a folder. */
export interface CellStore {
  /** what a cell compiled to, null when that is not known or rests on files that have changed since */
  readonly find: (cell: readonly string[]) => unknown;
  /** keeps what a cell compiled to, and the state of every file that this rests on */
  readonly keep: (cell: readonly string[], compiled: unknown, files: readonly FileState[]) => void;
}

const KEPT_MS = 30 * 24 * 3600 * 1000;

/**
 * A store in a folder, which is made when something is kept. A store that cannot be read or written finds nothing: it only
 * saves time. What nobody has kept again for 30 days is removed.
 */
export function cellStore(folder: string): CellStore {
  const lists = new Map<string, readonly FileState[]>();
  const filesOf = (name: string): readonly FileState[] => {
    const known = lists.get(name) ?? (JSON.parse(readFileSync(join(folder, name), "utf8")) as FileState[]);
    lists.set(name, known);
    return known;
  };
  const write = (name: string, text: string): void => {
    const draft = join(folder, `${name}.${process.pid}`);
    writeFileSync(draft, text);
    renameSync(draft, join(folder, name));
  };
  return {
    find: (cell) => {
      try {
        const { files, compiled } = JSON.parse(readFileSync(join(folder, nameOf("cell", cell)), "utf8"));
        return filesOf(files).every(isUnchanged) ? compiled : null;
      } catch {
        return null;
      }
    },
    keep: (cell, compiled, files) => {
      try {
        mkdirSync(folder, { recursive: true });
        const list = nameOf("files", files);
        if (!lists.has(list)) {
          sweep(folder);
          write(list, JSON.stringify(files));
          lists.set(list, files);
        }
        write(nameOf("cell", cell), JSON.stringify({ files: list, compiled }));
      } catch {
        // a folder that cannot be written keeps nothing
      }
    },
  };
}

/** The state of a file now. */
export function fileState(path: string): FileState {
  const state = statSync(path, { throwIfNoEntry: false });
  return state === undefined ? [path, 0, 0] : [path, state.mtimeMs, state.size];
}

function isUnchanged([path, changedMs, bytes]: FileState): boolean {
  const [, changedNowMs, bytesNow] = fileState(path);
  return changedNowMs === changedMs && bytesNow === bytes;
}

function nameOf(kind: string, content: unknown): string {
  return `${kind}-${createHash("sha256").update(JSON.stringify(content)).digest("hex")}.json`;
}

function sweep(folder: string): void {
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (Date.now() - fileState(path)[1] > KEPT_MS) rmSync(path, { force: true });
  }
}
