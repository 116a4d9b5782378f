import { randomBytes } from "node:crypto";
import { mkdir, open, rename, rm } from "node:fs/promises";
import { basename, dirname, join } from "node:path";

/** Writes a file whole or not at all: into a new file beside it, flushed to disk, then renamed over the old one. */
export async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  const folder = dirname(path);
  await mkdir(folder, { recursive: true });
  const draft = join(folder, `.${basename(path)}.${randomBytes(6).toString("hex")}.part`);
  try {
    const file = await open(draft, "wx");
    try {
      await file.writeFile(content);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(draft, path);
  } catch (error) {
    await rm(draft, { force: true });
    throw error;
  }
}
