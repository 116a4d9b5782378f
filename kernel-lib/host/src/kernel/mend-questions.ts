/*
 * Loaded into the kernel's process before tslab: answers while a line is still being written. tslab 1.0.22 finds no name
 * in an import whose door is not written yet, says nothing of a function whose call is under way, and counts the cursor
 * in UTF-16 units where the protocol counts code points, so that one emoji moves every later completion.
 */
import { dirname } from "node:path";
import type * as TypeScript from "@tslab/typescript-for-tslab";
import { afterLoad } from "./after-load";
import { callAround } from "./call-around";
import { completeImport } from "./complete-import";
import { doorNames } from "./door-names";

interface Question {
  readonly code: string;
  readonly cursor_pos: number;
}

interface Matches {
  readonly status: string;
  readonly matches: readonly string[];
  readonly cursor_start: number;
  readonly cursor_end: number;
  readonly metadata: object;
}

interface Found {
  readonly status: string;
  readonly found: boolean;
  readonly data: Readonly<Record<string, string>>;
  readonly metadata: object;
}

interface Handler {
  handleComplete(question: Question): Matches;
  handleInspect(question: Question): Found;
}

afterLoad<{ JupyterHandlerImpl?: { prototype: Handler } }>("jupyter", ({ JupyterHandlerImpl }) => {
  const handler = JupyterHandlerImpl?.prototype;
  if (!handler?.handleComplete || !handler.handleInspect) return;
  const { handleComplete, handleInspect } = handler;

  handler.handleComplete = function ({ code, cursor_pos }) {
    const at = unitsOf(code, cursor_pos);
    const ofImport = completeImport(code, at, doorNames(process.cwd()));
    const given = ofImport
      ? {
          status: "ok",
          metadata: {},
          matches: ofImport.matches,
          cursor_start: ofImport.start,
          cursor_end: ofImport.end,
        }
      : handleComplete.call(this, { code, cursor_pos: at });
    return {
      ...given,
      cursor_start: pointsOf(code, given.cursor_start),
      cursor_end: pointsOf(code, given.cursor_end),
    };
  };

  handler.handleInspect = function ({ code, cursor_pos }) {
    const at = unitsOf(code, cursor_pos);
    const inspect = (source: string, place: number): string | null => {
      const { found, data } = handleInspect.call(this, { code: source, cursor_pos: place });
      return found && data["text/plain"] !== "any" ? data["text/plain"] : null;
    };
    const { word, call } = callAround(compiler(), code, at);
    const texts = [inspect(code, at) ?? (word && ofDoor(word, inspect))];
    if (call) texts.push(inspect(code, call.at) ?? ofDoor(call.name, inspect));
    const said = [...new Set(texts.filter((text): text is string => Boolean(text)))];
    const data: Record<string, string> = said.length > 0 ? { "text/plain": said.join("\n\n") } : {};
    return { status: "ok", found: said.length > 0, data, metadata: {} };
  };
});

/** What a name of the library is that no cell has imported yet. */
function ofDoor(name: string, inspect: (code: string, at: number) => string | null): string | null {
  const door = doorNames(process.cwd()).find(({ values }) => values.has(name))?.door;
  return door === undefined ? null : inspect(`import { ${name} } from "${door}";`, "import { ".length);
}

/** The kernel's own compiler, which it has loaded. */
function compiler(): typeof TypeScript {
  const kernel = dirname(require.resolve("tslab/bin/tslab"));
  return require(require.resolve("@tslab/typescript-for-tslab", { paths: [kernel] }));
}

/** Code points to UTF-16 units. */
function unitsOf(code: string, points: number): number {
  let at = 0;
  for (let left = points; left > 0 && at < code.length; left--) at += (code.codePointAt(at) ?? 0) > 0xffff ? 2 : 1;
  return at;
}

/** UTF-16 units to code points. */
function pointsOf(code: string, units: number): number {
  return [...code.slice(0, units)].length;
}
