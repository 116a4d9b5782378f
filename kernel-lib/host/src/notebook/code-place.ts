/** What stands around a place in a cell. */
export interface CodePlace {
  /** the function in whose brackets the place stands */
  readonly call: string | null;
  /** the field that is given its value at the place, or the name that is declared there */
  readonly name: string | null;
  /** the field, or else the function, whose object the place stands in */
  readonly owner: string | null;
  /** what stands before the dot, where the place is behind one */
  readonly before: string | null;
}

const CLOSES: Readonly<Record<string, string>> = { "(": ")", "[": "]", "{": "}" };
const FURTHEST = 5000; // characters before the place that are looked at

/** Looks around a line and a column (from 1) of code that need not compile. */
export function codePlace(
  code: string,
  { line, column }: { readonly line: number; readonly column: number },
): CodePlace {
  const start = code
    .split("\n")
    .slice(0, line - 1)
    .reduce((length, one) => length + one.length + 1, 0);
  const at = start + column - 1;
  const before = code.slice(Math.max(0, at - FURTHEST), at);
  const after = code.slice(at, at + 200);
  const field = /^["']?([\w$]+)["']?\s*:/.exec(after)?.[1] ?? null;
  const declared = /(?:const|let|var)\s+$/.test(before.slice(-20)) ? (/^[\w$]+/.exec(after)?.[0] ?? null) : null;
  const openers = openBefore(before);
  const call =
    openers.flatMap(({ mark, text }) => (mark === "(" ? (/([\w$]+)\s*$/.exec(text)?.[1] ?? []) : []))[0] ?? null;
  const inner = openers.find(({ mark }) => mark !== "[");
  const holder = inner?.mark === "{" ? /([\w$]+)["']?\s*:\s*$/.exec(inner.text)?.[1] : undefined;
  return {
    call,
    name: field ?? declared,
    owner: holder ?? call,
    before: /([\w$]+(?:\.[\w$]+)*)\s*\??\.\s*$/.exec(before.slice(-100))?.[1] ?? null,
  };
}

/** The brackets that are open at the end of `text`, the innermost first, each with the end of what stands before it. */
function openBefore(text: string): { readonly mark: string; readonly text: string }[] {
  const open: { mark: string; text: string }[] = [];
  for (let at = 0; at < text.length; at++) {
    const mark = text[at];
    if (mark === '"' || mark === "'" || mark === "`") {
      const end = endOfText(text, at);
      if (end < 0) break;
      at = end;
    } else if (CLOSES[mark]) open.unshift({ mark, text: text.slice(Math.max(0, at - 80), at) });
    else if (open.length > 0 && CLOSES[open[0].mark] === mark) open.shift();
  }
  return open;
}

function endOfText(text: string, start: number): number {
  for (let at = start + 1; at < text.length; at++) {
    if (text[at] === "\\") at++;
    else if (text[at] === text[start]) return at;
  }
  return -1;
}
