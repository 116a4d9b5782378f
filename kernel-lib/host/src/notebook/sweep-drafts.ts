import { createHash, randomBytes } from "node:crypto";
import type { Dirent } from "node:fs";
import { readdir, rm, stat } from "node:fs/promises";
import { hostname } from "node:os";
import { join } from "node:path";

const DAY_MS = 86_400_000;
const machine = createHash("sha256").update(hostname()).digest("hex").slice(0, 8);

/** A new name for a file that is being written; it tells which machine and which process write it. */
export function draftName(): string {
  return `.${machine}-${process.pid}-${randomBytes(6).toString("hex")}.part`;
}

/**
 * Removes the drafts that killed processes have left in a folder: those of this machine whose process is gone, and any
 * that nobody has touched for a day. Whatever else stands there is left alone. With `depth` above 1 also in the folders
 * below it, without following links.
 */
export async function sweepDrafts(folder: string, depth: number = 1): Promise<void> {
  for (const entry of await readdir(folder, { withFileTypes: true }).catch((): Dirent[] => [])) {
    const path = join(folder, entry.name);
    if (entry.isFile() && (await isLeft(path, entry.name))) await rm(path, { force: true }).catch(() => {});
    const isLookedAt = !entry.name.startsWith(".") || entry.name === ".ipynb_checkpoints";
    if (entry.isDirectory() && depth > 1 && isLookedAt) await sweepDrafts(path, depth - 1);
  }
}

async function isLeft(path: string, name: string): Promise<boolean> {
  if (!/^\..*[0-9a-f]{12}\.part$/.test(name)) return false;
  const [, where, id] = /^\.([0-9a-f]{8})-(\d+)-/.exec(name) ?? [];
  if (where === machine && !isRunning(Number(id))) return true;
  const facts = await stat(path).catch(() => null);
  return facts !== null && Math.abs(Date.now() - facts.mtimeMs) > DAY_MS;
}

function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== "ESRCH";
  }
}
