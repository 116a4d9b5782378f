import { execFile } from "node:child_process";
import { resolve } from "node:path";

const bin = resolve(__dirname, "../../../kernel-lib/host/bin/slabwright.js");

/** How a command ended, and what it printed. */
export interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs one command line in a project's folder; `environment` is added to this process's own as it is then. */
export function runCommand(
  project: string,
  words: readonly string[],
  environment: Readonly<Record<string, string>> = {},
): Promise<Outcome> {
  return new Promise((done) => {
    const options = { cwd: project, env: { ...process.env, ...environment } };
    execFile(process.execPath, [bin, ...words], options, (error, out, err) => {
      done({ code: typeof error?.code === "number" ? error.code : error ? -1 : 0, out, err });
    });
  });
}
