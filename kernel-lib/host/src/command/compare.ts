import { existsSync, statSync } from "node:fs";
import { basename, join, resolve } from "node:path";
import { compareOutputs } from "../notebook/compare-outputs";
import { mergeNotebooks } from "../notebook/merge-notebooks";
import { type Cell, type Notebook, notebookText, readNotebook, textOf } from "../notebook/notebook";
import { writeWhole } from "../notebook/write-whole";
import { escapeHtml } from "../report/escape";
import { writeReport } from "../report/write-report";
import { isBundle, openBundle } from "../share/bundle";
import { changedCauses } from "../share/changed-causes";
import { provenanceIn } from "../share/provenance";
import { askLibrary } from "./ask-library";
import type { CommandOptions } from "./command-options";
import { oneLine } from "./printable";
import { notebookPaths, projectFolder } from "./project";

/** One part of what two things have otherwise. */
interface Part {
  readonly title: string;
  readonly text: string;
  readonly html: string;
}

/** What one side of a comparison is. */
interface Side {
  /** folder of a kitchen, if it has one */
  readonly kitchen: string | null;
  readonly notebooks: readonly string[];
  readonly close: () => void;
}

/**
 * Says what two notebooks, bundles or kitchens have otherwise: settings, data, cells, outputs and what they rested on; in the
 * terminal and as a page. With `--merge FILE` two notebooks become one that holds every cell of both.
 *
 * @returns 0 when they are the same, 1 when they are not, as `diff` does
 */
export async function compareCommand(options: CommandOptions): Promise<number> {
  const { named, say } = options;
  if (named.length !== 2) throw new Error(`two notebooks, bundles or kitchens must be named, got ${named.length}`);
  const project = projectFolder(process.cwd());
  const [before, after] = [await sideOf(named[0]), await sideOf(named[1])];
  try {
    const parts: Part[] = [];
    if (before.kitchen !== null && after.kitchen !== null) {
      const { tables } = await askLibrary<{ readonly tables: readonly Part[] }>(project, {
        door: "slabwright/notebook",
        name: "compareKitchens",
        args: [before.kitchen, after.kitchen],
      });
      for (const table of tables) parts.push(table);
    }
    const notebooks = await notebookParts(before.notebooks, after.notebooks);
    for (const part of notebooks) parts.push(part);
    if (options.merge !== null) await writeMerged(before.notebooks, after.notebooks, options.merge, say);
    if (parts.length === 0) {
      say("Nothing differs.");
      return 0;
    }
    for (const { text } of parts) say(`${text}\n`);
    const page = resolve(options.out ?? join(project, "out"), "compare.html");
    const title = `${basename(named[0])} and ${basename(named[1])}`;
    await writeReport({
      notebooks: [{ path: page, notebook: asNotebook(parts) }],
      path: page,
      title,
      subtitle: `What they have otherwise, before and after, ${new Date().toISOString().slice(0, 10)}.`,
    });
    say(`The page: ${oneLine(page)}`);
    return 1;
  } finally {
    before.close();
    after.close();
  }
}

async function sideOf(named: string): Promise<Side> {
  const path = resolve(named);
  if (!existsSync(path)) throw new Error(`what is compared must exist, got ${oneLine(path)}`);
  if (path.endsWith(".ipynb")) return { kitchen: null, notebooks: [path], close: () => {} };
  if (isBundle(path)) {
    const { folder, close } = await openBundle(path);
    return { kitchen: join(folder, "kitchen"), notebooks: await notebookPaths(join(folder, "notebooks")), close };
  }
  if (!statSync(path).isDirectory())
    throw new Error(`what is compared must be a notebook, a bundle or a kitchen's folder, got ${oneLine(path)}`);
  return { kitchen: path, notebooks: [], close: () => {} };
}

/** Notebooks of two sides, told by their names, or the only one of each. */
async function notebookParts(before: readonly string[], after: readonly string[]): Promise<readonly Part[]> {
  const isPair = before.length === 1 && after.length === 1;
  const names = isPair ? [basename(before[0])] : [...new Set([...before, ...after].map((path) => basename(path)))];
  const parts: Part[] = [];
  for (const name of names) {
    const was = isPair ? before[0] : before.find((path) => basename(path) === name);
    const is = isPair ? after[0] : after.find((path) => basename(path) === name);
    const lines =
      was === undefined || is === undefined
        ? [`it is only in the ${was === undefined ? "second" : "first"}`]
        : notebookLines(await readNotebook(was), await readNotebook(is));
    if (lines.length > 0) parts.push(listPart(name, lines));
  }
  return parts;
}

function notebookLines(before: Notebook, after: Notebook): readonly string[] {
  const at = ({ cells }: Notebook, id: string): number => cells.findIndex((cell) => cell.id === id);
  const firstLine = (cell: Cell): string => JSON.stringify(textOf(cell.source).split("\n")[0].slice(0, 60));
  const lines: string[] = [];
  for (const [index, cell] of before.cells.entries()) {
    const there = after.cells[at(after, cell.id)];
    if (there === undefined) lines.push(`cell ${index + 1} is not in the second: ${firstLine(cell)}`);
    else if (textOf(there.source) !== textOf(cell.source))
      lines.push(`cell ${index + 1} reads otherwise: ${firstLine(cell)}, then ${firstLine(there)}`);
  }
  for (const [index, cell] of after.cells.entries())
    if (at(before, cell.id) < 0) lines.push(`cell ${index + 1} of the second is not in the first: ${firstLine(cell)}`);
  const common = (notebook: Notebook, other: Notebook): Notebook => ({
    ...notebook,
    cells: notebook.cells.filter(({ id }) => at(other, id) >= 0),
  });
  const [one, other] = [common(before, after), common(after, before)];
  const inOrder = { ...other, cells: one.cells.map(({ id }) => other.cells[at(other, id)]) };
  for (const { cell, what } of compareOutputs(one, inOrder))
    lines.push(`cell ${at(before, one.cells[cell - 1].id) + 1}: ${what.replace("stored ", "was ")}`);
  const [then, now] = [provenanceIn(before), provenanceIn(after)];
  if (then !== null && now !== null) for (const cause of changedCauses(then, now, before)) lines.push(cause);
  return lines;
}

function listPart(title: string, lines: readonly string[]): Part {
  return {
    title,
    text: [title, ...lines.map((line) => `  ${line}`)].join("\n"),
    html: `<ul>${lines.map((line) => `<li>${escapeHtml(line)}</li>`).join("")}</ul>`,
  };
}

/** Parts as a notebook that a report can be written of. */
function asNotebook(parts: readonly Part[]): Notebook {
  const cells = parts.flatMap(({ title, text, html }, at): readonly Cell[] => [
    { id: `t${at}`, cell_type: "markdown", metadata: {}, source: `# ${title.replace(/[\\`*_<>[\]]/g, "\\$&")}` },
    {
      id: `c${at}`,
      cell_type: "code",
      metadata: {},
      source: "",
      outputs: [{ output_type: "display_data", data: { "text/plain": text, "text/html": html }, metadata: {} }],
    },
  ]);
  return { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [...cells] };
}

async function writeMerged(
  before: readonly string[],
  after: readonly string[],
  to: string,
  say: CommandOptions["say"],
): Promise<void> {
  if (before.length !== 1 || after.length !== 1) throw new Error("--merge must have two notebooks to make one of");
  const merged = mergeNotebooks(await readNotebook(before[0]), await readNotebook(after[0]));
  await writeWhole(resolve(to), notebookText(merged), { replace: false });
  say(`Both as one: ${oneLine(resolve(to))}`);
}
