import { randomUUID } from "node:crypto";
import {
  closeSync,
  fchmodSync,
  fsyncSync,
  openSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from "node:fs";
import { basename, dirname, join } from "node:path";

/** Drafts of an ended process that are older than this are swept (ms): our judgement. */
const OLD_DRAFT_MS = 60_000;

/**
 * Replaces what a file holds, whole or not at all: a draft beside it is written, forced to the disk and renamed over it.
 * The file keeps its permissions, and where it is a link, the file that the link leads to is replaced. Throws what the
 * system says when the disk is full or the folder closed; the file is then as it was.
 */
export function writeWholeFile(path: string, text: string): void {
  const target = realpathSync(path);
  const folder = dirname(target);
  sweepDrafts(folder, basename(target));
  const draft = join(folder, `.${basename(target)}.${randomUUID()}.part`);
  try {
    const handle = openSync(draft, "wx", 0o600);
    try {
      writeAll(handle, new TextEncoder().encode(text), 0);
      fchmodSync(handle, statSync(target).mode & 0o7777);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    renameSync(draft, target);
  } catch (error) {
    rmSync(draft, { force: true });
    throw error;
  }
  syncFolder(folder);
}

/** Writes all bytes at a place in a file: the system may take fewer at a time, as on a disk that is nearly full. */
export function writeAll(handle: number, bytes: Uint8Array, position: number): void {
  for (let at = 0; at < bytes.length; ) {
    const taken = writeSync(handle, bytes, at, bytes.length - at, position + at);
    if (taken === 0) throw new Error("the disk must take what is written, and took nothing");
    at += taken;
  }
}

/** Forces a folder's list of names to the disk, where the system can. */
export function syncFolder(folder: string): void {
  if (process.platform === "win32") return;
  const handle = openSync(folder, "r");
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

function sweepDrafts(folder: string, name: string): void {
  for (const entry of readdirSync(folder)) {
    if (!entry.startsWith(`.${name}.`) || !entry.endsWith(".part")) continue;
    const draft = join(folder, entry);
    const info = statSync(draft, { throwIfNoEntry: false });
    if (info && Date.now() - info.mtimeMs > OLD_DRAFT_MS) rmSync(draft, { force: true });
  }
}
