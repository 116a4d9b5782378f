/** Where a text stops being JSON, and what was expected there. */
export interface JsonFault {
  readonly line: number;
  /** character of the text, from 0 */
  readonly at: number;
  readonly expected: string;
  readonly got: string;
}

/** Where each value of a JSON text stands, or where the text stops being JSON. */
export interface JsonPlaces {
  /** line of a value by its path: `"mix.2.amount"`; `""` is the whole */
  readonly lineOf: ReadonlyMap<string, number>;
  /** the first thing that is not JSON; `null` when all of it is */
  readonly fault: JsonFault | null;
}

/** A text in quotes, which holds no line end; sticky, as all patterns that are tried at one place. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what JSON does not allow
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[\da-fA-F]{4}))*"/y;
const PLAIN = /(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.+-])/y;

/** How deep a file may nest: our judgement, several times what any file of a kitchen needs. */
const DEEPEST = 50;

/**
 * Finds the line of every value in a JSON text (RFC 8259), and, where the text is not JSON, the first place at which it is
 * not and what was expected there: engines word that differently and some name no place.
 */
export function jsonPlaces(text: string): JsonPlaces {
  const lineOf = new Map<string, number>();
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  let line = 1;
  let fault: JsonPlaces["fault"] = null;

  const skip = (): void => {
    for (; /[ \t\r\n]/.test(text[at] ?? ""); at++) if (text[at] === "\n") line++;
  };
  const refuse = (expected: string): false => {
    const word = /^[^\s,:{}[\]]{1,20}|^./.exec(text.slice(at, at + 21))?.[0];
    fault ??= { line, at, expected, got: word === undefined ? "the end of the file" : JSON.stringify(word) };
    return false;
  };
  const take = (mark: string, expected: string): boolean => {
    skip();
    if (text[at] !== mark) return refuse(expected);
    at++;
    return true;
  };
  const string = (): string | false => {
    const found = matchAt(STRING);
    return found === null ? refuse("a text in double quotes that ends on its line") : (JSON.parse(found) as string);
  };
  const matchAt = (pattern: RegExp): string | null => {
    pattern.lastIndex = at;
    const found = pattern.exec(text)?.[0] ?? null;
    at += found?.length ?? 0;
    return found;
  };
  const members = (path: string, depth: number): boolean => {
    at++;
    skip();
    if (text[at] === "}") return take("}", "");
    for (;;) {
      skip();
      if (text[at] !== '"') return refuse("a name in double quotes");
      const name = string();
      if (name === false || !take(":", 'a colon ":" after the name')) return false;
      if (!value(joined(path, name), depth + 1)) return false;
      skip();
      if (text[at] !== ",") return take("}", 'a comma "," before the next name, or the closing "}"');
      at++;
    }
  };
  const elements = (path: string, depth: number): boolean => {
    at++;
    skip();
    if (text[at] === "]") return take("]", "");
    for (let index = 0; ; index++) {
      if (!value(joined(path, String(index)), depth + 1)) return false;
      skip();
      if (text[at] !== ",") return take("]", 'a comma "," before the next entry, or the closing "]"');
      at++;
    }
  };
  const value = (path: string, depth: number): boolean => {
    skip();
    lineOf.set(path, line);
    if (depth > DEEPEST) return refuse(`at most ${DEEPEST} levels`);
    if (text[at] === "{") return members(path, depth);
    if (text[at] === "[") return elements(path, depth);
    if (text[at] === '"') return string() !== false;
    return matchAt(PLAIN) !== null || refuse('a number with a decimal point, a text in double quotes, "{" or "["');
  };

  if (value("", 0)) {
    skip();
    if (at < text.length) refuse("nothing after the end of the JSON");
  }
  return { lineOf, fault };
}

function joined(path: string, name: string): string {
  return path === "" ? name : `${path}.${name}`;
}
