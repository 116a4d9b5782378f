import { type CodePlace, codePlace } from "./code-place";

/** What the compiler says of one place in a cell: a short line first, finer ones behind it. */
interface Complaint {
  readonly line: number;
  readonly column: number;
  readonly texts: string[];
}

/** The compiler's lines in one sentence, and as they came with the lines of the cell that they are about. */
export interface CompileWords {
  readonly sentence: string;
  readonly lines: readonly string[];
}

const LINE = /^(\S+ )?(\d+):(\d+) - (.*)$/s; // whatever stands in a line that `isCompilerLine` knows
const LONGEST_TYPE = 40;

/**
 * What is wrong with a cell that does not compile, in one sentence that names fields and functions as the cell does:
 * `crispWindow must also be given variantId`. Where the compiler says something else its own finest line stands, long
 * types cut.
 *
 * @param printed the compiler's lines
 * @param code the cell
 */
export function compileSentence(printed: readonly string[], code: string): CompileWords {
  const complaints: Complaint[] = [];
  const lines: string[] = [];
  const source = code.split("\n");
  const quote = (): void => {
    const at = complaints.at(-1)?.line;
    if (at !== undefined && source[at - 1] !== undefined) lines.push(`${at} | ${source[at - 1].slice(0, 500)}`);
  };
  for (const text of printed) {
    const [, file, line, column, words] = LINE.exec(text) ?? [];
    const last = complaints.at(-1);
    if (words === undefined) last?.texts.push(text);
    else if (last && !file && last.line === Number(line) && last.column === Number(column)) last.texts.push(words);
    else {
      quote();
      complaints.push({ line: Number(line), column: Number(column), texts: [words] });
    }
    lines.push(text);
  }
  quote();
  const [first] = complaints;
  const more = complaints.length > 1 ? `, and ${complaints.length - 1} more` : "";
  const where = source.length > 1 ? ` (line ${first.line}${more})` : more && ` (${more.slice(2)})`;
  return { sentence: `${sentenceOf(first, code)}${where}`, lines };
}

function sentenceOf({ line, column, texts }: Complaint, code: string): string {
  const place = codePlace(code, { line, column });
  for (const text of [...texts].reverse()) {
    for (const [pattern, say] of SENTENCES) {
      const match = text.length < 20_000 ? pattern.exec(text) : null;
      const said = match && say(match.slice(1), place, texts);
      if (said) return said;
    }
  }
  return (texts.at(-1) ?? "").replace(/'([^']*)'/g, (all, type) => (type.length > LONGEST_TYPE ? "'…'" : all));
}

type Say = (parts: readonly string[], place: CodePlace, texts: readonly string[]) => string | null;

const SENTENCES: readonly (readonly [RegExp, Say])[] = [
  [
    / is missing the following properties from type '[^']*': (.*?)\.?$/,
    ([fields], place, texts) => missing(fields.replace(", and ", ", ").split(", "), place, texts),
  ],
  [/^Property '([^']+)' is missing in type /, ([field], place, texts) => missing([field], place, texts)],
  [
    /^Object literal may only specify known properties, (?:and|but) '([^']+)' does not exist in type '([^']*)'\.(?: Did you mean to write '([^']+)'\?)?/,
    ([field, type, meant], { owner }) =>
      `${owner ?? type} has no ${bare(field)}${meant ? `; did you mean ${meant}?` : ""}`,
  ],
  [
    /^Property '([^']+)' does not exist on type '.*?'\.(?: Did you mean '([^']+)'\?)?$/,
    ([field, meant], { before }) => before && `${before} has no ${field}${meant ? `; did you mean ${meant}?` : ""}`,
  ],
  [
    /^Type '(.*)' is not assignable to type '(.*)'\./,
    ([given, due], { name }) => name && mismatch(`${name} must be`, due, given),
  ],
  [
    /^Argument of type '(.*)' is not assignable to parameter of type '(.*)'\./,
    ([given, due], { call }) => call && mismatch(`${call} must be given`, due, given),
  ],
];

function missing(fields: readonly string[], { call, name }: CodePlace, texts: readonly string[]): string {
  const inner = texts.flatMap((text) => /^Types of property '([^']+)' are incompatible/.exec(text)?.[1] ?? []);
  const list = fields.length > 1 ? `${fields.slice(0, -1).join(", ")} and ${fields.at(-1)}` : fields[0];
  const holder = inner.length > 0 ? inner.join(".") : name;
  if (holder) return `${holder} must also have ${list}`;
  return call ? `${call} must also be given ${list}` : `${list} must also be given`;
}

function mismatch(must: string, due: string, given: string): string | null {
  const [wanted, got] = [kindOf(due), kindOf(given)];
  return wanted && got && wanted !== got ? `${must} ${wanted}, got ${got}` : null;
}

/** A type in a cook's words; null for one that takes a wall of them. */
function kindOf(type: string): string | null {
  const plain: Record<string, string> = { string: "text", number: "a number", boolean: "true or false" };
  if (Object.hasOwn(plain, type)) return plain[type];
  if (type.endsWith("[]")) return "a list";
  if (/^\{.*\}$/.test(type)) return "an object";
  if (/^[A-Z]\w*$/.test(type)) return `a ${type}`;
  const choices = type.split(" | ").filter((choice) => choice !== "undefined");
  if (choices.length > 1 && choices.every((choice) => choice.startsWith('"'))) return `one of ${choices.join(", ")}`;
  return type.length <= LONGEST_TYPE ? type : null;
}

function bare(field: string): string {
  return field.replace(/^["']|["']$/g, "");
}
