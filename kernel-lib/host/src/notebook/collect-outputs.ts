import type { Message } from "../kernel/message";
import { withoutColours } from "../report/escape";
import { DEEPEST_DISPLAY, nestsAtMost } from "./check-notebook";
import { compileSentence } from "./compile-sentence";
import { isJsonMime, type Output, type Text, textOf } from "./notebook";

/** Gathers the messages of running cells into outputs, and lets a later cell update an earlier display. */
export interface Collector {
  /** starts a new cell and returns the list that its outputs will fill */
  readonly open: (code?: string) => Output[];
  /** adds one message to the open cell */
  readonly add: (message: Message) => void;
  /** turns what the kernel last wrote to stderr into one error output; `reason` when it wrote nothing */
  readonly close: (failed: boolean, reason: string) => void;
}

/** A collector for one run of one notebook. */
export function outputCollector(): Collector {
  let outputs: Output[] = [];
  let complaints: string[] = [];
  let cell = "";
  const displays = new Map<string, Output[]>();

  const stream = (name: "stdout" | "stderr", text: string): void => {
    const last = outputs.at(-1);
    if (last?.output_type === "stream" && last.name === name) last.text = textOf(last.text) + text;
    else outputs.push({ output_type: "stream", name, text });
  };

  return {
    open: (code = "") => {
      cell = code;
      outputs = [];
      complaints = [];
      return outputs;
    },
    add: ({ header, content }) => {
      if (header.msg_type === "stream") {
        const name = content.name === "stderr" ? "stderr" : "stdout";
        const text = textOf(content.text as Text);
        if (name === "stderr") complaints.push(text);
        stream(name, text);
      }
      if (header.msg_type === "display_data" || header.msg_type === "update_display_data") {
        const shown = { data: parsedData(content.data), metadata: (content.metadata ?? {}) as Record<string, unknown> };
        const id = (content.transient as { display_id?: string } | undefined)?.display_id;
        if (header.msg_type === "update_display_data") {
          for (const output of displays.get(id ?? "") ?? []) Object.assign(output, shown);
          return;
        }
        const output: Output = { output_type: "display_data", ...shown };
        outputs.push(output);
        if (id) displays.set(id, [...(displays.get(id) ?? []), output]);
      }
    },
    close: (failed, reason) => {
      if (!failed) return;
      const error = errorOutput(failureText(complaints), reason, cell);
      takeFromStderr(outputs, failureText(complaints));
      outputs.push(error);
    },
  };
}

/**
 * The part of the stderr messages that tells why the cell failed: the compiler's lines (`3:14 - …`) at the end, or
 * else the last message. tslab sends no error message of its own kind; it prints.
 */
export function failureText(complaints: readonly string[]): string {
  let from = complaints.length;
  while (from > 0 && isCompilerLine(complaints[from - 1])) from--;
  if (from === complaints.length) from = Math.max(0, complaints.length - 1);
  return complaints.slice(from).join("");
}

/** Whether a message on stderr is one of the compiler's. */
export function isCompilerLine(text: string): boolean {
  return /^(\S+ )?\d+:\d+ - /.test(text);
}

/**
 * An error output in nbformat's shape from what the kernel printed: `evalue` is the whole message, of a cell that does not
 * compile one sentence about it.
 *
 * @param text what the kernel printed
 * @param reason why the host ended the cell; empty when it did not
 * @param code the cell, which the sentence about a compiler's complaint takes its names from
 */
export function errorOutput(text: string, reason: string, code = ""): Output {
  const lines = withoutColours(text)
    .trimEnd()
    .split("\n")
    .filter((line) => !INNER_FRAME.test(line));
  if (reason) return failed("CellStopped", reason, [...lines, reason].filter(Boolean));
  if (isCompilerLine(lines[0])) {
    const { sentence, lines: traceback } = compileSentence(lines, code);
    return failed("CompileError", sentence, traceback);
  }
  const frames = lines.findIndex((line) => FRAME.test(line));
  const said = frames < 0 ? lines : lines.slice(0, frames);
  // errors of other names end in frames all the same
  for (const name of frames < 0 ? [ERROR_NAME] : [ERROR_NAME, ANY_NAME]) {
    for (const [at, line] of said.entries()) {
      const named = name.exec(line);
      // what is thrown without a stack prints its message in one line
      if (named)
        return failed(named[1], [named[2], ...(frames < 0 ? [] : said.slice(at + 1))].join("\n").trim(), lines);
    }
  }
  return failed("Error", lines[0] || "the kernel gave no message", lines);
}

function failed(ename: string, evalue: string, traceback: readonly string[]): Output {
  return { output_type: "error", ename, evalue, traceback: [...traceback] };
}

const ERROR_NAME = /^(?:Uncaught )?((?:[A-Za-z_$][\w$]*)?(?:Error|Exception))(?: \[[^\]]*\])?: (.*)$/;
const ANY_NAME = /^(?:Uncaught )?([A-Z][\w$]*): (.*)$/;
const FRAME = /^\s+at \S/;

/** Stack lines inside the kernel and Node, which say nothing about the cell. */
const INNER_FRAME = /^\s+at .*(?:node_modules[\\/]tslab[\\/]|dist[\\/]kernel[\\/]mend-|\(?node:)/;

function takeFromStderr(outputs: Output[], text: string): void {
  for (let at = outputs.length - 1; at >= 0; at--) {
    const output = outputs[at];
    if (output.output_type !== "stream" || output.name !== "stderr") continue;
    const all = textOf(output.text);
    if (!all.endsWith(text)) return;
    output.text = all.slice(0, all.length - text.length);
    if (output.text === "") outputs.splice(at, 1);
    return;
  }
}

/**
 * A MIME bundle whose JSON kinds are values, also where the kernel sent them as text. Text that is no JSON is kept as it
 * came, and stands as plain text too where nothing else does.
 */
export function parsedData(data: unknown): Record<string, unknown> {
  const parsed: Record<string, unknown> = {};
  let broken: string | undefined;
  for (const [mime, value] of Object.entries((data ?? {}) as Record<string, unknown>)) {
    parsed[mime] = value;
    if (!isJsonMime(mime) || typeof value !== "string") continue;
    try {
      parsed[mime] = JSON.parse(value);
      if (!nestsAtMost(parsed[mime], DEEPEST_DISPLAY)) throw new RangeError("too deep to be written or read again");
    } catch {
      parsed[mime] = value;
      broken ??= value;
    }
  }
  if (broken !== undefined) parsed["text/plain"] ??= broken;
  return parsed;
}
