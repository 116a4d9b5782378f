/*
 * Loaded into a kernel's process before tslab, where the host asks for it: notes which files of the kitchen and the project
 * the cells read, so that a run can say what it rests on. The environment says under which folders, and into which file the
 * paths go, one a line as JSON, once for each cell that reads it.
 */
import { appendFileSync } from "node:fs";
import { resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { isMainThread } from "node:worker_threads";
import { afterLoad } from "./after-load";
import type { ReadsAsked } from "./reads-asked";

import fs = require("node:fs");

/** Of a project, what is code or a result and not something that a cell works from. */
const LEFT_OUT =
  /(^|[\\/])(node_modules|kernel-lib|dist|out|\.git)([\\/]|$)|(^|[\\/])(package(-lock)?|tsconfig[^\\/]*)\.json$/;

const asked = process.env.SLABWRIGHT_READS;
if (isMainThread && asked !== undefined) noteReads(JSON.parse(asked) as ReadsAsked);

interface Handler {
  handleExecute(...words: unknown[]): unknown;
}

function noteReads({ to, roots }: ReadsAsked): void {
  const noted = new Set<string>();
  const note = (given: unknown): void => {
    if (typeof given === "number") return;
    try {
      const path = resolve(given instanceof URL ? fileURLToPath(given) : String(given));
      if (noted.has(path)) return;
      noted.add(path);
      const root = roots.find((one) => path.startsWith(one + sep));
      if (root !== undefined && !LEFT_OUT.test(path.slice(root.length)))
        appendFileSync(to, `${JSON.stringify(path)}\n`);
    } catch {
      // a path that is none fails where the cell reads it
    }
  };
  const reads = (flags: unknown): boolean =>
    flags === undefined || (typeof flags === "string" && /^rs?\+?$/.test(flags));
  afterLoad<{ JupyterHandlerImpl?: { prototype: Handler } }>("jupyter", ({ JupyterHandlerImpl }) => {
    const handler = JupyterHandlerImpl?.prototype;
    if (!handler?.handleExecute) return;
    const handle = handler.handleExecute;
    handler.handleExecute = function (this: Handler, ...words: unknown[]) {
      noted.clear();
      return handle.apply(this, words);
    };
  });
  type Reader = (path: unknown, ...rest: readonly unknown[]) => unknown;
  const watch = (owner: object, name: string, isRead: (second: unknown) => boolean = () => true): void => {
    const readers = owner as Record<string, Reader>;
    const own = readers[name];
    readers[name] = function (this: unknown, path, ...rest) {
      if (isRead(rest[0])) note(path);
      return own.call(this, path, ...rest);
    };
  };
  for (const name of ["readFileSync", "readFile", "createReadStream"]) watch(fs, name);
  for (const name of ["openSync", "open"]) watch(fs, name, reads);
  watch(fs.promises, "readFile");
  watch(fs.promises, "open", reads);
}
