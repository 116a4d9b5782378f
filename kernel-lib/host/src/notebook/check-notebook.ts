import type { Notebook } from "./nbformat";

/** How deep JSON in a notebook may nest: our judgement, ten times what a figure needs; deeper overflows the stack. */
const DEEPEST = 200;

/** The same for one display in it. */
export const DEEPEST_DISPLAY = 150;

/**
 * Throws one sentence with the first thing that keeps JSON from being a notebook of nbformat 4 (the part of its schema
 * that readers here rely on), naming notebook, cell and output. Missing metadata, ids and output lists are no fault:
 * `parseNotebook` adds them.
 */
export function checkNotebook(value: unknown, name: string): asserts value is Notebook {
  const must = (holds: boolean, where: string, what: string, got: unknown): void => {
    if (!holds) throw new Error(`parseNotebook: ${name}${where} must ${what}, got ${shown(got)}`);
  };
  if (!isRecord(value) || value.nbformat !== 4 || !Array.isArray(value.cells))
    throw new Error(
      `parseNotebook: ${name} must be a notebook of nbformat 4, got nbformat ${shown(isRecord(value) ? value.nbformat : value)}`,
    );
  must(nestsAtMost(value, DEEPEST), "", `nest at most ${DEEPEST} levels deep`, "more");
  must(isCount(value.nbformat_minor ?? 0), "", "have a whole number as nbformat_minor", value.nbformat_minor);
  must(isRecord(value.metadata ?? {}), "", "have an object as metadata", value.metadata);
  for (const [index, cell] of value.cells.entries()) {
    const at = `: cell ${index + 1}`;
    must(isRecord(cell), at, "be an object", cell);
    const { cell_type, source, metadata, attachments, execution_count, outputs } = cell;
    must(
      CELL_TYPES.includes(cell_type),
      ": a cell",
      "be code, markdown or raw",
      `${shown(cell_type)} in cell ${index + 1}`,
    );
    must(isText(source), at, "have text or lines of text as source", source);
    must(isRecord(metadata ?? {}), at, "have an object as metadata", metadata);
    const attached = attachments ?? {};
    must(isRecord(attached) && Object.values(attached).every(isRecord), at, "have objects as attachments", attachments);
    must(isCount(execution_count ?? 0), at, "have a whole number as execution_count", execution_count);
    must(Array.isArray(outputs ?? []), at, "have a list of outputs", outputs);
    for (const [number, output] of ((outputs ?? []) as unknown[]).entries()) {
      const fault = outputFault(output);
      if (fault) must(false, `${at}, output ${number + 1}`, fault.must, fault.got);
    }
  }
}

/** Text as nbformat stores it: one string, or several that follow each other. */
export function isText(value: unknown): value is string | string[] {
  return typeof value === "string" || (Array.isArray(value) && value.every((line) => typeof line === "string"));
}

const CELL_TYPES: readonly unknown[] = ["code", "markdown", "raw"];

function outputFault(output: unknown): { must: string; got: unknown } | null {
  if (!isRecord(output)) return { must: "be an object", got: output };
  const { output_type } = output;
  if (output_type === "stream") {
    if (typeof output.name !== "string") return { must: "name its stream", got: output.name };
    return isText(output.text) ? null : { must: "have text or lines of text", got: output.text };
  }
  if (output_type === "error") {
    if (typeof output.ename !== "string") return { must: "have text as ename", got: output.ename };
    if (typeof output.evalue !== "string") return { must: "have text as evalue", got: output.evalue };
    const lines = output.traceback;
    return Array.isArray(lines) && isText(lines) ? null : { must: "have lines of text as traceback", got: lines };
  }
  if (output_type !== "display_data" && output_type !== "execute_result")
    return { must: "be of type stream, display_data, execute_result or error", got: output_type };
  if (!isRecord(output.data)) return { must: "have an object as data", got: output.data };
  if (!isRecord(output.metadata ?? {})) return { must: "have an object as metadata", got: output.metadata };
  const count = output.execution_count ?? 0;
  return isCount(count) ? null : { must: "have a whole number as execution_count", got: count };
}

/** Whether a value of JSON nests at most so many levels deep; without recursion, which is what depth would overflow. */
export function nestsAtMost(value: unknown, levels: number): boolean {
  let level: unknown[] = [value];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > levels) return false;
    const below: unknown[] = [];
    for (const one of level) {
      if (one === null || typeof one !== "object") continue;
      for (const inner of Object.values(one)) if (inner !== null && typeof inner === "object") below.push(inner);
    }
    level = below;
  }
  return true;
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isCount(value: unknown): boolean {
  return Number.isInteger(value) && (value as number) >= 0;
}

/** A value for a sentence: short, whatever was given. */
function shown(value: unknown): string {
  if (value !== null && typeof value === "object") return Array.isArray(value) ? "a list" : "an object";
  const text = typeof value === "string" ? value : String(value);
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}
