import { spawn } from "node:child_process";
import { mkdir, open, rm } from "node:fs/promises";
import { join } from "node:path";
import { escapeHtml } from "../report/escape";

/**
 * Opens an address that holds a secret in the user's browser, if the machine knows how. Command lines can be read by
 * every user of a machine, so the browser is given a file that leads on, readable by its owner alone. It stands in
 * `folder`, which is the project's and not the system's folder for temporary files: browsers that are packed with a
 * file system of their own do not see that one. Returns what takes the file away again.
 */
export async function openBrowser(address: string, folder: string): Promise<() => Promise<void>> {
  await mkdir(folder, { recursive: true });
  const path = join(folder, "open-notebooks.html");
  const remove = (): Promise<void> => rm(path, { force: true });
  await remove(); // of a server that was killed
  const file = await open(path, "wx", 0o600);
  try {
    // a file system without permissions lets everybody read; the address then stays in the terminal alone
    const { mode } = await file.stat();
    if (process.platform !== "win32" && (mode & 0o077) !== 0) {
      await remove();
      return remove;
    }
    await file.writeFile(
      `<!doctype html><meta charset="utf-8"><meta name="referrer" content="no-referrer"><meta http-equiv="refresh" content="0;url=${escapeHtml(address)}"><title>…</title>\n`,
    );
  } finally {
    await file.close();
  }
  const program = process.platform === "darwin" ? "open" : process.platform === "win32" ? "explorer" : "xdg-open";
  const opened = spawn(program, [path], { stdio: "ignore", detached: true });
  opened.on("error", () => {});
  opened.unref();
  return remove;
}
