import { closeSync, existsSync, fstatSync, mkdtempSync, openSync, readSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { notedPaths, type ReadsAsked } from "../kernel/reads-asked";
import { calledIn } from "../share/called-in";
import { fileSha256 } from "../share/sha256";
import { confine } from "./confine";

/** Digests of files, by what they are called; null for one that is not there. */
export type Digests = Readonly<Record<string, string | null>>;

/** The files that cells may read and that a page watches. */
export interface WatchedFiles {
  /** how files are called: `kitchen/trials/week.csv` */
  readonly places: Readonly<Record<string, string>>;
  /** the files of one kernel's cells */
  readonly notes: () => NotedReads;
  /** digests as the files are now; what lies outside the places is not there */
  readonly digests: (names: readonly string[]) => Promise<Digests>;
}

/** What one kernel's cells read. */
export interface NotedReads {
  /** goes into the kernel's environment */
  readonly environment: Readonly<Record<string, string>>;
  /** digests of what was read since this was last called */
  readonly take: () => Digests;
  readonly close: () => void;
}

/** A short digest is enough to tell a change. */
const DIGITS = 16;

/** Watches the files below named folders. */
export function watchedFiles(places: Readonly<Record<string, string>>): WatchedFiles {
  const known = new Map<string, { readonly mark: string; readonly digest: string }>();
  const digestOf = (path: string): string | null => {
    const found = statSync(path, { throwIfNoEntry: false });
    if (!found?.isFile()) return null;
    const mark = `${found.mtimeMs} ${found.size} ${found.ino}`;
    const before = known.get(path);
    if (before?.mark === mark) return before.digest;
    const digest = fileSha256(path).slice(0, DIGITS);
    known.set(path, { mark, digest });
    return digest;
  };
  const notes = (): NotedReads => {
    const folder = mkdtempSync(join(tmpdir(), "slabwright-reads-"));
    const to = join(folder, "reads");
    const asked: ReadsAsked = { to, roots: Object.values(places) };
    let taken = 0;
    return {
      environment: { SLABWRIGHT_READS: JSON.stringify(asked) },
      take: () => {
        const { text, end } = textFrom(to, taken);
        taken = end;
        const named = notedPaths(text).flatMap((path): readonly (readonly [string, string | null])[] => {
          const name = calledIn(places, path);
          return name === null ? [] : [[name, digestOf(path)]];
        });
        return Object.fromEntries(named);
      },
      close: () => rmSync(folder, { recursive: true, force: true }),
    };
  };
  const digests = async (names: readonly string[]): Promise<Digests> => {
    const found = names.map(async (name): Promise<readonly [string, string | null]> => {
      const [place, ...rest] = name.split("/");
      if (!Object.hasOwn(places, place)) return [name, null];
      const path = await confine(places[place], rest.join("/")).catch(() => null);
      return [name, path === null ? null : digestOf(path)];
    });
    return Object.fromEntries(await Promise.all(found));
  };
  return { places, notes, digests };
}

/** What a file holds from a byte on, up to its last whole line, and where that ends. */
function textFrom(path: string, from: number): { readonly text: string; readonly end: number } {
  if (!existsSync(path)) return { text: "", end: from };
  const file = openSync(path, "r");
  try {
    const bytes = Buffer.alloc(Math.max(fstatSync(file).size - from, 0));
    readSync(file, new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.length), 0, bytes.length, from);
    const whole = bytes.lastIndexOf(10) + 1;
    return { text: bytes.toString("utf8", 0, whole), end: from + whole };
  } finally {
    closeSync(file);
  }
}
