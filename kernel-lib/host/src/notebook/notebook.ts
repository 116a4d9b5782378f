import { randomBytes } from "node:crypto";
import { readFile } from "node:fs/promises";
import { textOf } from "./cell-text";
import { checkNotebook, isText } from "./check-notebook";
import type { Cell, Notebook, Output, Text } from "./nbformat";
import { writeWhole } from "./write-whole";

export { tagsOf, textOf } from "./cell-text";
export type { Cell, Notebook, Output, Text } from "./nbformat";

/** Reads a notebook of nbformat 4 in UTF-8; earlier minor versions get cell ids and become 4.5. */
export async function readNotebook(path: string): Promise<Notebook> {
  return decodeNotebook(new Uint8Array(await readFile(path)), path);
}

/** The notebook of a file's bytes, which must be UTF-8: other bytes would be changed by the next save. */
export function decodeNotebook(bytes: Uint8Array, name: string): Notebook {
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    throw new Error(`readNotebook: ${name} must be UTF-8 text, got other bytes`);
  }
  return parseNotebook(text, name);
}

/** The notebook that `text` holds; `name` stands in the error when it holds none. */
export function parseNotebook(text: string, name: string): Notebook {
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\ufeff/, ""));
  } catch (error) {
    throw new Error(`parseNotebook: ${name} must be JSON: ${(error as Error).message}`);
  }
  return asNotebook(value, name);
}

/** The notebook that parsed JSON is. */
export function asNotebook(value: unknown, name: string): Notebook {
  checkNotebook(value, name);
  const taken = new Set<string>();
  for (const cell of value.cells) {
    if (!isId(cell.id) || taken.has(cell.id)) cell.id = randomBytes(4).toString("hex");
    taken.add(cell.id);
    cell.metadata ??= {};
    for (const output of cell.outputs ?? [])
      if (output.output_type === "display_data" || output.output_type === "execute_result") output.metadata ??= {};
  }
  return { ...value, metadata: value.metadata ?? {}, nbformat_minor: Math.max(5, value.nbformat_minor ?? 0) };
}

/** Writes a notebook whole or not at all. */
export async function writeNotebook(path: string, notebook: Notebook): Promise<void> {
  await writeWhole(path, notebookText(notebook));
}

/** A notebook as its file holds it: keys in nbformat's usual order, one space of indent, text split into lines. */
export function notebookText(notebook: Notebook): string {
  const { cells, metadata, nbformat, nbformat_minor, ...rest } = notebook;
  const file = { cells: cells.map(storedCell), metadata, nbformat, nbformat_minor, ...rest };
  return `${JSON.stringify(file, null, 1)}\n`;
}

function storedCell(cell: Cell): Cell {
  const { cell_type, id, metadata, source, ...rest } = cell;
  const { trusted: _, ...kept } = metadata;
  const base = { cell_type, id, metadata: kept, source: linesOf(source) };
  if (cell_type !== "code") return cell.attachments ? { ...base, attachments: cell.attachments } : base;
  return {
    ...base,
    ...rest,
    execution_count: cell.execution_count ?? null,
    outputs: (cell.outputs ?? []).map(storedOutput),
  };
}

function storedOutput(output: Output): Output {
  if (output.output_type === "stream") return { ...output, text: linesOf(output.text) };
  if (output.output_type === "error") return output;
  const data = Object.fromEntries(
    Object.entries(output.data).map(([mime, value]) => [
      mime,
      isText(value) && !isJsonMime(mime) ? linesOf(value) : value,
    ]),
  );
  const { transient: _, ...kept } = output as Output & { transient?: unknown };
  return { ...kept, data } as Output;
}

/** Whether nbformat holds a MIME type's value as JSON rather than as text. */
export function isJsonMime(mime: string): boolean {
  return mime === "application/json" || mime.endsWith("+json");
}

/** The text that a MIME bundle holds in one type, or null where it holds none or something that is no text. */
export function bundleText(data: Readonly<Record<string, unknown>>, mime: string): string | null {
  const value = Object.hasOwn(data, mime) ? data[mime] : null;
  return isText(value) ? textOf(value) : null;
}

/** A notebook's title: its first heading, or `fallback`; at most 200 characters. */
export function titleOf(notebook: Notebook, fallback: string): string {
  for (const cell of notebook.cells) {
    if (cell.cell_type !== "markdown") continue;
    const heading = /^#{1,6}[ \t]+([^ \t\r\n].*)$/m.exec(textOf(cell.source));
    if (!heading) continue;
    const title = withoutClosing(heading[1].slice(0, LONGEST_HEADING)).replace(/[*_`]/g, "");
    return title.length > LONGEST_TITLE ? `${title.slice(0, LONGEST_TITLE - 1)}…` : title;
  }
  return fallback;
}

const LONGEST_TITLE = 200;
const LONGEST_HEADING = 4 * LONGEST_TITLE;

/** A heading without the spaces and the `#` that may close it. */
function withoutClosing(heading: string): string {
  const words = heading.trimEnd();
  let end = words.length;
  while (words[end - 1] === "#") end--;
  return words.slice(0, end).trimEnd() || words;
}

function linesOf(text: Text): string[] {
  return textOf(text).match(/[^\n]*\n|[^\n]+$/g) ?? [];
}

function isId(value: unknown): boolean {
  return typeof value === "string" && /^[a-zA-Z0-9_-]{1,64}$/.test(value);
}
