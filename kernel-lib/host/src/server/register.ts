import { existsSync } from "node:fs";
import { readFile, rm } from "node:fs/promises";
import { homedir } from "node:os";
import { join } from "node:path";
import { writeWhole } from "../notebook/write-whole";
import { KERNEL_NAME, kernelspec } from "./kernelspec";

/** The user's own Jupyter data folder (Jupyter documentation, "Common directories and file locations"). */
export function jupyterDataFolder(
  environment: NodeJS.ProcessEnv = process.env,
  platform: string = process.platform,
  home: string = homedir(),
): string {
  if (environment.JUPYTER_DATA_DIR) return environment.JUPYTER_DATA_DIR;
  if (platform === "darwin") return join(home, "Library", "Jupyter");
  if (platform === "win32") return join(environment.APPDATA ?? join(home, "AppData", "Roaming"), "jupyter");
  return join(environment.XDG_DATA_HOME ?? join(home, ".local", "share"), "jupyter");
}

/** Makes the kernel known to the user's Jupyter programs and says so; a kernel of the same name by others is kept. */
export async function register(dataFolder: string = jupyterDataFolder()): Promise<string> {
  const folder = join(dataFolder, "kernels", KERNEL_NAME);
  const file = join(folder, "kernel.json");
  if (existsSync(file) && !(await isOurs(file))) {
    return `Jupyter knows a kernel of the name ${KERNEL_NAME} already; left as it is: ${file}`;
  }
  await writeWhole(file, `${JSON.stringify(kernelspec(), null, 2)}\n`);
  return `Registered: ${file}`;
}

/** Takes back what `register` wrote, and only that. */
export async function unregister(dataFolder: string = jupyterDataFolder()): Promise<string> {
  const folder = join(dataFolder, "kernels", KERNEL_NAME);
  const file = join(folder, "kernel.json");
  if (!existsSync(file)) return `Nothing was registered at ${file}`;
  if (!(await isOurs(file))) return `Written by another program and left as it is: ${file}`;
  await rm(folder, { recursive: true });
  return `Removed: ${folder}`;
}

async function isOurs(file: string): Promise<boolean> {
  try {
    return JSON.parse(await readFile(file, "utf8")).metadata?.["written-by"] === "slabwright";
  } catch {
    return false;
  }
}
