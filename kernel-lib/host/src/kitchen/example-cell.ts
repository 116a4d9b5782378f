import type { Door } from "../kernel/door-names";
import type { DocstringExample } from "./docstring-examples";
import type { ExampleIds } from "./kitchen-answer";

/** What `exampleCell` needs. */
export interface ExampleCellOptions {
  readonly example: DocstringExample;
  /** every door, the cook's first: where the names of the example are imported from */
  readonly doors: readonly Door[];
  /** ids of the open kitchen in place of the example's; null where none is known */
  readonly ids: ExampleIds | null;
}

const LOAD = "const kitchen = loadKitchen();";
const NO_TRIAL = "no-trial-is-logged-yet";

/** Types that `show` shows whole. */
const SHOWN = new Set(["Figure", "Table", "ReheatCard", "Answers"]);

/**
 * A docstring's example as a cell that runs in the open kitchen: imports, the kitchen, and each result shown or printed.
 * Ids are known by the part they play (`variantId: "…"`, `variantOf(kitchen, "…")`), so nothing here knows whose they are.
 */
export function exampleCell({ example, doors, ids }: ExampleCellOptions): string {
  const lines = example.lines.map((line) => withIds(line, ids)).filter((line): line is string => line !== null);
  const shows = lines.some((line) => / \/\/ → /.test(line));
  const body = [...new Set(lines.flatMap((line) => statementOf(line, example, shows)))];
  const loads = example.name !== "loadKitchen" && body.some((line) => line.includes("loadKitchen()"));
  const cell = loads
    ? [
        LOAD,
        ...body.filter((line) => line !== LOAD).map((line) => line.replace(/(kitchen: )?loadKitchen\(\)/g, "kitchen")),
      ]
    : body;
  return [...importsOf(cell, doors), "", ...cell].join("\n");
}

/** One line of an example as a statement; none for one that shows an error, unless that is all there is to show. */
function statementOf(line: string, { name, gives }: DocstringExample, shows: boolean): string[] {
  const marked = /^(.*?);\s*\/\/ (→|throws) /.exec(line);
  if (!marked) return [line];
  const [, expression, mark] = marked;
  if (mark === "throws") return shows ? [] : [`${expression};`];
  if (name === "show") return [`${expression};`];
  const whole = expression.startsWith(`${name}(`) ? callOf(expression) : null;
  if (whole !== null && (SHOWN.has(gives) || gives === "string")) return [`show(${whole});`];
  return [`console.log(${expression});`];
}

/** The call that an expression begins with, brackets and all: `f(a)` of `f(a).rows.length`. */
function callOf(expression: string): string {
  let depth = 0;
  for (let at = expression.indexOf("("); at < expression.length; at++) {
    if (expression[at] === "(") depth++;
    if (expression[at] === ")" && --depth === 0) return expression.slice(0, at + 1);
  }
  return expression;
}

/** A line with the kitchen's ids for the example's; null where the kitchen has none to put in its place. */
function withIds(line: string, ids: ExampleIds | null): string | null {
  if (ids === null) return line;
  const variant = JSON.stringify(ids.variantIds[0]);
  const pan = /panId === "[^"]*"/.test(line) ? panIn(line, ids) : ids.panIds[0];
  if (pan === undefined) return null;
  return line
    .replace(
      /variantIds: \["[^\]]*\]/g,
      () => `variantIds: ${JSON.stringify(ids.variantIds.slice(0, 2)).replace(",", ", ")}`,
    )
    .replace(/\b(variantId|variant): "[^"]*"/g, (_, name) => `${name}: ${variant}`)
    .replace(/(variantOf\((?:kitchen|loadKitchen\(\)), )"[^"]*"/g, (_, call) => `${call}${variant}`)
    .replace(/(panOf\((?:kitchen|loadKitchen\(\)), )"[^"]*"/g, (_, call) => `${call}${JSON.stringify(pan)}`)
    .replace(/panId === "[^"]*"/g, () => `panId === ${JSON.stringify(pan)}`)
    .replace(/trialId: "[^"]*"/g, () => `trialId: ${JSON.stringify(ids.trialIds[0] ?? NO_TRIAL)}`);
}

/** The kitchen's pan for the one in a line: its main one for a verdict of "keep", another for any other verdict. */
function panIn(line: string, { panIds }: ExampleIds): string | undefined {
  return /→ "keep"/.test(line) ? panIds[0] : panIds[1];
}

/** The import lines of a cell: each name from the first door that shows it. */
function importsOf(cell: readonly string[], doors: readonly Door[]): string[] {
  const names = new Set<string>();
  for (const line of cell) {
    for (const [, name] of line.matchAll(/(?<![.\w$])([A-Za-z_$][\w$]*)\(/g)) names.add(name);
  }
  const taken = new Map<string, string[]>();
  for (const name of names) {
    const door = doors.find(({ values }) => values.has(name))?.door;
    if (door !== undefined) taken.set(door, [...(taken.get(door) ?? []), name]);
  }
  return doors.flatMap(({ door }) => {
    const list = taken.get(door);
    return list ? [`import { ${list.sort().join(", ")} } from "${door}";`] : [];
  });
}
