import { mkdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { NotebookServer } from "../server/serve";

/**
 * Serves on the port that a kitchen was served on before, where that is free, else on any: a browser keeps what was typed and not
 * logged for one address, port and all.
 *
 * @param out the kitchen's folder for what runs write; the port is remembered there
 */
export async function onSteadyPort(
  out: string,
  serve: (port: number) => Promise<NotebookServer>,
): Promise<NotebookServer> {
  const file = join(out, "notebook-port");
  const known = await readFile(file, "utf8").then(portOf, () => null);
  const again = known === null ? null : await serve(known).catch(() => null);
  if (again !== null) return again;
  const server = await serve(0);
  // two servers of one kitchen: the first one's address stays the one that is remembered
  if (known === null) {
    const remembered = mkdir(out, { recursive: true }).then(() => writeFile(file, `${server.port}\n`));
    await remembered.catch(() => {}); // a folder that cannot be written is no reason not to serve
  }
  return server;
}

/** A port that programs of a person may use. */
function portOf(text: string): number | null {
  const port = Number(text);
  return Number.isInteger(port) && port >= 1024 && port <= 65_535 ? port : null;
}
