import { existsSync, readFileSync } from "node:fs";
import type { Door } from "../kernel/door-names";

/** A function of a door and the example in its docstring. */
export interface DocstringExample {
  readonly name: string;
  /** the docstring's first sentence */
  readonly summary: string;
  /** the example's lines as they stand there */
  readonly lines: readonly string[];
  /** as declared: `"Figure"` */
  readonly gives: string;
}

/** The examples of a door's functions, from the declaration files that the door re-exports. */
export function docstringExamples(door: Door): DocstringExample[] {
  return [...door.values].flatMap(([name, source]) => {
    const file = `${source}.d.ts`;
    return existsSync(file) ? exampleOf(name, readFileSync(file, "utf8")) : [];
  });
}

function exampleOf(name: string, declarations: string): DocstringExample[] {
  const start = new RegExp(`^export declare function ${name}\\b`, "m").exec(declarations)?.index;
  if (start === undefined) return [];
  const opening = declarations.lastIndexOf("/**", start);
  const closing = declarations.indexOf("*/", opening);
  // a docstring of something further up is none of this function's
  if (opening < 0 || declarations.slice(closing + 2, start).trim() !== "") return [];
  const doc = declarations
    .slice(opening + 3, closing)
    .split("\n")
    .map((line) => line.replace(/^ *\* ?/, "").trimEnd());
  const from = doc.findIndex((line) => line.startsWith("@example"));
  if (from < 0) return [];
  const rest = doc.slice(from + 1);
  const end = rest.findIndex((line) => line === "" || line.startsWith("@"));
  const lines = (end < 0 ? rest : rest.slice(0, end)).filter((line) => line.trim() !== "");
  const words = doc.slice(0, from).join(" ").trim();
  const summary = /^.*?[.:](?= |$)/.exec(words)?.[0] ?? words;
  const head = declarations.slice(start, declarations.indexOf(";\n", start) + 1);
  return [{ name, summary: summary.replace(/:$/, "."), lines, gives: /\): ([\w ]+);$/.exec(head)?.[1] ?? "" }];
}
