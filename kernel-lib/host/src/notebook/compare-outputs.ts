import { bundleText, isJsonMime, type Notebook, type Output, tagsOf, textOf } from "./notebook";

/** Where two runs of a notebook differ. */
export interface Difference {
  /** 1 for the first cell of the notebook, of whatever type */
  readonly cell: number;
  readonly what: string;
}

/** How close two numbers must be to count as the same. */
export interface Tolerance {
  /** allowed difference as a share of the larger of the two; 1e-6 */
  readonly relative?: number;
  /** allowed difference whatever their size; 1e-9 */
  readonly absolute?: number;
}

/**
 * Compares the outputs of two runs, cell by cell: text word for word and number by number within the tolerance, JSON
 * (a figure) field by field, a table cell by cell. A code cell that printed in one run and not in the other is a difference;
 * one tagged `volatile` is passed over.
 */
export function compareOutputs(stored: Notebook, fresh: Notebook, tolerance: Tolerance = {}): Difference[] {
  const differences: Difference[] = [];
  for (const [index, cell] of stored.cells.entries()) {
    if (cell.cell_type !== "code" || tagsOf(cell).includes("volatile")) continue;
    const what = firstDifference(cell.outputs ?? [], fresh.cells[index]?.outputs ?? [], tolerance);
    if (what) differences.push({ cell: index + 1, what });
  }
  return differences;
}

function firstDifference(stored: readonly Output[], fresh: readonly Output[], tolerance: Tolerance): string | null {
  if (stored.length !== fresh.length) return `${stored.length} stored outputs, ${fresh.length} new ones`;
  for (const [index, output] of stored.entries()) {
    const where = different(plain(output), plain(fresh[index]), tolerance, "");
    if (where) return `output ${index + 1}: ${where}`;
  }
  return null;
}

/** What of an output is compared: its text, its parsed data, an error's name and message (not its stack). */
function plain(output: Output): unknown {
  if (output.output_type === "stream") return { name: output.name, text: textOf(output.text) };
  if (output.output_type === "error") return { ename: output.ename, evalue: output.evalue };
  // a table says more of where a number stands than its text does
  const entries = Object.entries(output.data).sort(([a], [b]) => Number(b === "text/html") - Number(a === "text/html"));
  return Object.fromEntries(
    entries.map(([mime, value]) => [mime, isJsonMime(mime) ? value : (bundleText(output.data, mime) ?? value)]),
  );
}

function different(stored: unknown, fresh: unknown, tolerance: Tolerance, path: string): string | null {
  const at = path ? ` at ${path}` : "";
  if (typeof stored === "number" && typeof fresh === "number") {
    return near(stored, fresh, tolerance) ? null : `stored ${stored}, now ${fresh}${by(stored, fresh)}${at}`;
  }
  if (typeof stored === "string" && typeof fresh === "string") return differentText(stored, fresh, tolerance, at);
  if (stored === null || fresh === null || typeof stored !== "object" || typeof fresh !== "object") {
    return stored === fresh ? null : `stored ${JSON.stringify(stored)}, now ${JSON.stringify(fresh)}${at}`;
  }
  const keys = new Set([...Object.keys(stored), ...Object.keys(fresh)]);
  for (const key of keys) {
    const next = path ? `${path}.${key}` : key;
    if (!Object.hasOwn(stored, key) || !Object.hasOwn(fresh, key))
      return `${next} is there only ${Object.hasOwn(stored, key) ? "in the stored" : "in the new"} output`;
    const found = different(
      (stored as Record<string, unknown>)[key],
      (fresh as Record<string, unknown>)[key],
      tolerance,
      next,
    );
    if (found) return found;
  }
  return null;
}

const NUMBER = /[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/g;

function differentText(stored: string, fresh: string, tolerance: Tolerance, at: string): string | null {
  if (stored === fresh) return null;
  const words = (text: string): string[] => text.split(NUMBER);
  const numbers = (text: string): string[] => text.match(NUMBER) ?? [];
  const oldWords = words(stored);
  const newWords = words(fresh);
  const oldNumbers = numbers(stored);
  const newNumbers = numbers(fresh);
  let from = 0;
  for (let index = 0; index < Math.max(oldWords.length, newWords.length); index++) {
    if (oldWords[index] !== newWords[index]) {
      return `stored ${JSON.stringify(around(oldWords[index]))}, now ${JSON.stringify(around(newWords[index]))}${placed(stored, from, at)}`;
    }
    from += (oldWords[index] ?? "").length;
    const [one, other] = [oldNumbers[index], newNumbers[index]];
    if (one !== other && !near(Number(one), Number(other), tolerance))
      return `stored ${one}, now ${other}${by(Number(one), Number(other))}${placed(stored, from, at)}`;
    from += (one ?? "").length;
  }
  return null;
}

/** Where in a text something stands: row and heading in a table of HTML, else what is given. */
function placed(text: string, offset: number, at: string): string {
  const before = text.slice(0, offset);
  const table = before.lastIndexOf("<table");
  if (table < 0 || before.lastIndexOf("</table") > table) return at;
  const rows = text.slice(table).split(/<tr[ >]/);
  const row = before.slice(table).split(/<tr[ >]/).length - 1;
  const column = (rows[row] ?? "").slice(0, offset - before.lastIndexOf("<tr")).split(/<t[dh][ >]/).length - 1;
  const cells = (line: string): readonly string[] =>
    line
      .split(/<t[dh](?=[ >])/)
      .slice(1)
      .map((cell) =>
        cell
          .slice(cell.indexOf(">") + 1)
          .replace(/<[^<>]*>/g, "")
          .trim(),
      );
  const heading = cells(rows[1] ?? "")[column - 1] ?? "";
  return `${at}, row ${row - 1}${heading === "" ? "" : `, column ${JSON.stringify(around(heading))}`}`;
}

/** By how much a number has changed, as a share of what it was. */
function by(stored: number, fresh: number): string {
  if (stored === 0 || !Number.isFinite(stored) || !Number.isFinite(fresh)) return "";
  const percent = (100 * (fresh - stored)) / Math.abs(stored);
  return ` (${percent > 0 ? "+" : ""}${Number(percent.toPrecision(2))} %)`;
}

function near(one: number, other: number, { relative = 1e-6, absolute = 1e-9 }: Tolerance): boolean {
  return (
    one === other || Math.abs(one - other) <= Math.max(absolute, relative * Math.max(Math.abs(one), Math.abs(other)))
  );
}

function around(text: string | undefined): string {
  const line = text ?? "";
  return line.length > 80 ? `${line.slice(0, 80)}…` : line;
}
