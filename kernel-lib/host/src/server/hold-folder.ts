import { constants, existsSync } from "node:fs";
import { type FileHandle, lstat, mkdir, open, readlink, realpath } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { isWithin } from "./confine";
import { HttpError } from "./http-error";

/** A folder that stays the one that was looked at, whatever is put in its place meanwhile. */
export interface HeldFolder {
  /** what stands for the folder in paths */
  readonly place: string;
  /** opens a file in it for reading; null unless it is one: no link, no folder, nothing that lets a reader wait */
  readonly openFile: (name: string) => Promise<FileHandle | null>;
}

/** How a folder is held. */
export interface HoldOptions {
  /** the folder's real path */
  readonly folder: string;
  /** make the folder, and those above it, where they are absent; false */
  readonly make?: boolean;
}

// Windows has none of these
const FOLDER: number = constants.O_DIRECTORY ?? 0;
const NO_LINK: number = constants.O_NOFOLLOW ?? 0;
const NO_WAIT: number = constants.O_NONBLOCK ?? 0;

/**
 * Holds a folder below `root` while it is used: opens it first and then looks where what was opened stands. On Linux the
 * open folder itself stands in the paths that follow (`/proc/self/fd`), so that no link can come between; elsewhere what
 * is read is looked at again once it is open, and for writing the time between the look and the use is only kept short.
 */
export async function holdFolder<T>(
  root: string,
  options: HoldOptions,
  use: (folder: HeldFolder) => Promise<T>,
): Promise<T> {
  const home = await realpath(root);
  if (process.platform !== "linux" || !existsSync("/proc/self/fd")) return use(await watched(home, options));
  const { folder, make = false } = options;
  const handle = await open(folder, constants.O_RDONLY | FOLDER | NO_LINK).catch((error: NodeJS.ErrnoException) => {
    if (["ENOENT", "ENOTDIR", "ELOOP"].includes(error.code ?? "")) return null;
    throw error;
  });
  if (handle === null) {
    if (!make || !isWithin(home, dirname(folder))) throw absent(folder);
    await holdFolder(root, { folder: dirname(folder), make }, ({ place }) =>
      mkdirIfAbsent(join(place, basename(folder))),
    );
    return holdFolder(root, { folder }, use);
  }
  try {
    const place = `/proc/self/fd/${handle.fd}`;
    if (!isWithin(home, await readlink(place))) throw absent(folder);
    return await use({ place, openFile: (name) => openFile(join(place, name)) });
  } finally {
    await handle.close();
  }
}

/** The folder where it cannot be held: by its path. */
async function watched(home: string, { folder, make }: HoldOptions): Promise<HeldFolder> {
  if (make && isWithin(home, folder)) await mkdir(folder, { recursive: true });
  const place = await realpath(folder).catch(() => "");
  if (!isWithin(home, place)) throw absent(folder);
  return {
    place,
    openFile: async (name) => {
      const file = await openFile(join(place, name));
      if (file === null) return null;
      // a link would have to come, go, come and go again between these four
      const isSame = async (): Promise<boolean> => (await realpath(place).catch(() => "")) === place;
      const stands = await isSame();
      const [opened, there] = [await file.stat(), await lstat(join(place, name)).catch(() => null)];
      if (stands && opened.ino === there?.ino && opened.dev === there.dev && (await isSame())) return file;
      await file.close();
      return null;
    },
  };
}

function absent(folder: string): HttpError {
  return new HttpError(404, `no such folder: ${basename(folder)}`);
}

async function mkdirIfAbsent(path: string): Promise<void> {
  await mkdir(path).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== "EEXIST") throw error;
  });
}

async function openFile(path: string): Promise<FileHandle | null> {
  const file = await open(path, constants.O_RDONLY | NO_LINK | NO_WAIT).catch((error: NodeJS.ErrnoException) => {
    if (["ENOENT", "ENOTDIR", "ELOOP", "ENXIO", "EISDIR"].includes(error.code ?? "")) return null;
    throw error;
  });
  if (file === null || (await file.stat()).isFile()) return file;
  await file.close();
  return null;
}
