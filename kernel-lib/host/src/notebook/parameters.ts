import { tagsOf, textOf } from "./cell-text";
import type { Notebook } from "./nbformat";

/** What a parameter may hold. */
export type ParameterValue = string | number | boolean | null | readonly (string | number | boolean)[];

/** A name in a cell tagged `parameters`, with its value. */
export interface Parameter {
  readonly name: string;
  readonly value: ParameterValue;
  /** 1 for the first cell of the notebook, of whatever type */
  readonly cell: number;
}

/** The tag of the cell whose constants may be set from outside. */
const TAG = "parameters";
const LINE = /^(\s*(?:const|let)\s+([A-Za-z_$][\w$]*)\s*(?::[^=]*)?=\s*)(.*?)(\s*;?\s*(?:\/\/.*)?)$/;

/**
 * The parameters of a notebook: the constants of its cells tagged `parameters`, one a line, each a text, a number, `true`,
 * `false`, `null` or a list of those. Throws for a line of such a cell that is something else.
 */
export function parametersOf(notebook: Notebook, name: string): readonly Parameter[] {
  return notebook.cells.flatMap((cell, index) => {
    if (cell.cell_type !== "code" || !tagsOf(cell).includes(TAG)) return [];
    return textOf(cell.source)
      .split("\n")
      .flatMap((line): readonly Parameter[] => {
        if (/^\s*(\/\/.*)?$/.test(line)) return [];
        const parts = line.length > LONGEST_LINE ? null : LINE.exec(line);
        const value = parts === null ? undefined : literalOf(parts[3]);
        if (parts === null || value === undefined)
          throw new Error(
            `${name}: a line of cell ${index + 1}, tagged ${TAG}, must be like const freezerC = -18; got ${JSON.stringify(line.slice(0, 80))}`,
          );
        return [{ name: parts[2], value, cell: index + 1 }];
      });
  });
}

const LONGEST_LINE = 2000;

/** What is asked for on a command line, by name: `freezerC` → `"-20"`. */
export type AskedParameters = Readonly<Record<string, string>>;

/**
 * A notebook with other values in its cells tagged `parameters`, each read as the kind of value that stands there. Names that
 * this notebook does not have are left alone: another may have them.
 *
 * @param name of the notebook, for errors
 */
export function withParameters(notebook: Notebook, asked: AskedParameters, name: string): Notebook {
  const own = parametersOf(notebook, name).filter((parameter) => Object.hasOwn(asked, parameter.name));
  if (own.length === 0) return notebook;
  const cells = notebook.cells.map((cell, index) => {
    const here = own.filter((parameter) => parameter.cell === index + 1);
    if (here.length === 0) return cell;
    const lines = textOf(cell.source)
      .split("\n")
      .map((line) => {
        const parts = LINE.exec(line);
        const parameter = here.find((one) => one.name === parts?.[2]);
        if (parts === null || parameter === undefined) return line;
        return `${parts[1]}${JSON.stringify(askedValue(parameter, asked[parameter.name], name))}${parts[4]}`;
      });
    return { ...cell, source: lines.join("\n") };
  });
  return { ...notebook, cells };
}

/** What was asked for, as the kind of value that the parameter has. */
function askedValue({ name, value, cell }: Parameter, asked: string, notebook: string): ParameterValue {
  const refuse = (kind: string): never => {
    throw new Error(
      `--set ${name} must be ${kind}, as in cell ${cell} of ${notebook} (${JSON.stringify(value)}), got ${JSON.stringify(asked)}`,
    );
  };
  if (Array.isArray(value)) {
    const sample = value[0] ?? "";
    return asked.split(",").map((one) => askedValue({ name, value: sample, cell }, one.trim(), notebook) as string);
  }
  if (typeof value === "number") {
    const number = asked.trim() === "" ? Number.NaN : Number(asked);
    return Number.isFinite(number) ? number : refuse("a number");
  }
  if (typeof value === "boolean") return { true: true, false: false }[asked.trim()] ?? refuse("true or false");
  if (value === null) return literalOf(asked) ?? asked;
  return asked;
}

/** The value that a literal of TypeScript writes; undefined for anything else. */
function literalOf(text: string): ParameterValue | undefined {
  const quoted = /^'([^'\\\n]*)'$/.exec(text);
  try {
    const value: unknown = quoted === null ? JSON.parse(text.replace(/,\s*\]$/, "]")) : quoted[1];
    const isPlain = (one: unknown): boolean => ["string", "number", "boolean"].includes(typeof one);
    return value === null || isPlain(value) || (Array.isArray(value) && value.every(isPlain))
      ? (value as ParameterValue)
      : undefined;
  } catch {
    return undefined;
  }
}
