import { execFile } from "node:child_process";

/** A function of the project's library, and what it is given: plain data. */
export interface LibraryCall {
  /** the door that shows it: `"slabwright/notebook"` */
  readonly door: string;
  readonly name: string;
  readonly args: readonly unknown[];
}

/** What the other process runs: the call comes by its input, which others of the machine cannot read, the answer goes to its output, both as JSON. */
const PROGRAM = `
const { door, name, args } = JSON.parse(require("node:fs").readFileSync(0, "utf8"));
let answer;
try {
  answer = { value: require(door)[name](...args) };
} catch (error) {
  answer = { error: error instanceof Error ? error.message : String(error) };
}
process.stdout.write(JSON.stringify(answer));
`;

/**
 * Calls a function of the library in a process of its own, as a kernel does: the library is that of the project, found
 * from its folder, and the host holds none of its code.
 *
 * @param project the folder that the library is found from
 * @returns what the function returns; throws what it throws
 */
export function askLibrary<T>(project: string, call: LibraryCall): Promise<T> {
  return new Promise((done, fail) => {
    const asked = execFile(
      process.execPath,
      ["-e", PROGRAM],
      { cwd: project, maxBuffer: 2 ** 28 },
      (failed, out, err) => {
        try {
          const answer = JSON.parse(out) as { value: T } | { error: string };
          if ("error" in answer) fail(new Error(answer.error));
          else done(answer.value);
        } catch {
          fail(
            new Error(`${call.name} must answer, and its process ended: ${err.trim() || failed?.message || "no word"}`),
          );
        }
      },
    );
    asked.stdin?.on("error", () => {}); // a process that ended early has said why
    asked.stdin?.end(JSON.stringify(call));
  });
}
