import { constants } from "node:fs";
import { copyFile, link, lstat, mkdir, open, rename, rm } from "node:fs/promises";
import { dirname, join } from "node:path";
import { draftName, sweepDrafts } from "./sweep-drafts";

/** How `writeWhole` writes. */
export interface WriteOptions {
  /** false: a file that stands there already is left, and the error's code is EEXIST; true */
  readonly replace?: boolean;
}

/**
 * Writes a file whole or not at all: into a new file beside it, flushed to disk, then renamed over the old one, whose
 * permissions it keeps. Drafts that killed processes have left beside it are swept up.
 */
export async function writeWhole(
  path: string,
  content: string | Uint8Array,
  { replace = true }: WriteOptions = {},
): Promise<void> {
  const folder = dirname(path);
  await mkdir(folder, { recursive: true });
  const draft = join(folder, draftName());
  try {
    const file = await open(draft, "wx");
    try {
      const old = replace ? await lstat(path).catch(() => null) : null;
      if (old?.isFile()) await file.chmod(old.mode & 0o777);
      await file.writeFile(content);
      await file.sync();
    } finally {
      await file.close();
    }
    await (replace ? rename(draft, path) : moveNew(draft, path));
  } catch (error) {
    await rm(draft, { force: true });
    throw error;
  }
  await sweepDrafts(folder);
}

/** Gives a file another name that nothing has yet; where something has, nothing changes and the error's code is EEXIST. */
export async function moveNew(from: string, to: string): Promise<void> {
  try {
    await link(from, to);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") throw error;
    await copyFile(from, to, constants.COPYFILE_EXCL); // a file system without links
  }
  await rm(from);
}
