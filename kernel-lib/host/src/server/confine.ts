import { realpath } from "node:fs/promises";
import { basename, dirname, join, sep } from "node:path";
import { HttpError } from "./http-error";

/**
 * The real place of a path that a request named, below `root`. Refused: parts that begin with a dot (so also `..`),
 * backslashes, control characters, and links that lead out of `root`, also where the file itself does not exist yet.
 */
export async function confine(root: string, path: string): Promise<string> {
  const parts = path.split("/").filter((part) => part !== "");
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these characters are what is looked for
  if (parts.some((part) => part.startsWith(".") || /[\u0000-\u001f\\:*?"<>|%]/.test(part) || part.length > 200)) {
    throw new HttpError(404, `no such file: ${path}`);
  }
  const home = await realpath(root);
  const real = await realOf(join(home, ...parts));
  if (real !== home && !real.startsWith(home + sep)) throw new HttpError(404, `no such file: ${path}`);
  return real;
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
