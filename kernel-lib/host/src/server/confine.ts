import { realpath } from "node:fs/promises";
import { basename, dirname, join, sep } from "node:path";
import { HttpError } from "./http-error";

/**
 * The real place of a path that a request named, below `root`. Refused: parts that begin with a dot (so also `..`),
 * backslashes, control characters, what would be one of these if it were decoded once more, what Windows reads as
 * something else there, and links that lead out of `root`, also where the file itself does not exist yet. Between this
 * look and the use of the place a link may be put there: `holdFolder` is for that.
 */
export async function confine(root: string, path: string): Promise<string> {
  if (typeof path !== "string") throw new HttpError(400, "a path must be text"); // whatever a request held
  const parts = path.split("/").filter((part) => part !== "");
  if (parts.some((part) => isRefused(part) || isRefused(decoded(part)))) {
    throw new HttpError(404, `no such file: ${path}`);
  }
  const home = await realpath(root);
  const real = await realOf(join(home, ...parts));
  if (!isWithin(home, real)) throw new HttpError(404, `no such file: ${path}`);
  return real;
}

/** Whether a real path is `home` or below it. */
export function isWithin(home: string, real: string): boolean {
  return real === home || real.startsWith(home.endsWith(sep) ? home : home + sep);
}

function isRefused(part: string): boolean {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these characters are what is looked for
  if (part.startsWith(".") || /[\u0000-\u001f\u007f/\\]/.test(part) || part.length > 200) return true;
  return process.platform === "win32" && /[:*?"<>|]/.test(part);
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

/** The real path of a file, or, where it does not exist, of where it would stand. */
async function realOf(path: string): Promise<string> {
  try {
    return await realpath(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "ENOENT") throw new HttpError(404, "no such file");
    return join(await realOf(dirname(path)), basename(path));
  }
}
