import type { Door } from "./door-names";

/** What stands in place of `start` to `end`, as a kernel's completion says it; UTF-16 units. */
export interface ImportCompletion {
  readonly start: number;
  readonly end: number;
  readonly matches: readonly string[];
}

const NAME = String.raw`(?:type\s+)?[\w$]+(?:\s+as\s+[\w$]+)?`;
const IN_BRACES = /(?:^|[\n;])[ \t]*import\s+(?:type\s+)?\{([^{}'"`;()]*)$/;
const AFTER_BRACES = /(?:^|[\n;])[ \t]*import\s+(?:type\s+)?\{([^{}'"`;()]*)\}\s*(f|fr|fro|from|from\s*["'][^"'\n]*)?$/;
const LIST_TO_BRACE = new RegExp(String.raw`^[\w$]*((?:\s*,\s*${NAME})*(?:\s*,)?\s*)\}`);
const DOOR_AFTER = /^\s*from\s*["']([^"'\n]*)["']/;

/**
 * Completes an import of the library's doors at `at`, finished or not: the names that a door shows, and once a name is
 * written whole, or the braces are closed, the door that shows all of them. Null where no such import is being written.
 */
export function completeImport(code: string, at: number, doors: readonly Door[]): ImportCompletion | null {
  const before = code.slice(Math.max(0, at - LONGEST_IMPORT), at);
  const inside = IN_BRACES.exec(before);
  if (inside) return completeName(code, at, inside[1], doors);
  const after = AFTER_BRACES.exec(before);
  return after ? completeDoor(code, at, after, doors) : null;
}

const LONGEST_IMPORT = 4000;

function completeName(code: string, at: number, written: string, doors: readonly Door[]): ImportCompletion | null {
  const parts = written.split(",");
  const last = /^\s*(?:type\s+)?([\w$]*)$/.exec(parts.pop() ?? "");
  if (!last) return null;
  const rest = code.slice(at, at + LONGEST_IMPORT);
  const list = LIST_TO_BRACE.exec(rest);
  const wordEnd = at + (/^[\w$]*/.exec(rest)?.[0].length ?? 0);
  const start = at - last[1].length;
  const word = code.slice(start, wordEnd);
  const named = list && DOOR_AFTER.exec(rest.slice(list[0].length))?.[1];
  const others = [...parts, ...(list?.[1] ?? "").split(",")].flatMap(importedName);
  const open = named ? doors.filter(({ door }) => door === named) : holding(doors, others);
  if (open.length === 0) return null;

  // nobody reads a list of all names of all doors
  const offering = word === "" && !named && others.length === 0 ? open.slice(0, 1) : open;
  const kinds = [...offering.map(({ values }) => [...values.keys()]), ...offering.map(({ types }) => [...types])];
  const offered = new Set(
    matching(
      kinds.flatMap((names) => [...names].sort(byLetter)),
      word,
    ),
  );
  for (const name of others) offered.delete(name);

  const isLast = list ? /^\s*$/.test(list[1]) : /^[ \t]*(?:\n|$)/.test(code.slice(wordEnd));
  const door = holding(doors, [...others, word])[0]?.door;
  if (named || !isLast || door === undefined) return { start, end: wordEnd, matches: [...offered] };
  // the word is whole: the rest of the line is what is missing
  const end = list ? at + list[0].length : wordEnd;
  const longer = [...offered].filter((name) => name !== word && name.startsWith(word));
  const tail = code.slice(wordEnd, end);
  return { start, end, matches: [`${word} } from "${door}";`, ...longer.map((name) => name + tail)] };
}

function completeDoor(
  code: string,
  at: number,
  [, names, from = ""]: RegExpExecArray,
  doors: readonly Door[],
): ImportCompletion | null {
  const imported = names.split(",").flatMap(importedName);
  const quoted = /["']([^"'\n]*)$/.exec(from);
  const fitting = holding(doors, imported).map(({ door }) => door);
  if (!quoted) {
    if (imported.length === 0 || fitting.length === 0) return null;
    const gap = from === "" && code[at - 1] === "}" ? " " : "";
    return { start: at - from.length, end: at, matches: fitting.map((door) => `${gap}from "${door}"`) };
  }
  const matches = fitting.filter((door) => door.startsWith(quoted[1]));
  const end = at + (/^[\w/]*/.exec(code.slice(at))?.[0].length ?? 0);
  return matches.length > 0 ? { start: at - quoted[1].length, end, matches } : null;
}

/** The doors that show every one of `names`. */
function holding(doors: readonly Door[], names: readonly string[]): Door[] {
  return doors.filter(({ values, types }) => names.every((name) => values.has(name) || types.has(name)));
}

function importedName(part: string): string[] {
  const name = /^\s*(?:type\s+)?([\w$]+)/.exec(part)?.[1];
  return name ? [name] : [];
}

/** Those that begin with `word`, then those that hold it somewhere, in either case of letters. */
function matching(names: readonly string[], word: string): string[] {
  const small = word.toLowerCase();
  const at = (name: string): number => name.toLowerCase().indexOf(small);
  return [...names.filter((name) => at(name) === 0), ...names.filter((name) => at(name) > 0)];
}

function byLetter(one: string, other: string): number {
  return one.localeCompare(other, "en");
}
