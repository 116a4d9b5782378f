import type { CommandOptions } from "./cli";

/** Serves the notebooks in the browser until it is told to stop. */
export async function notebookCommand(_options: CommandOptions): Promise<number> {
  throw new Error("the notebook page is not built yet");
}
