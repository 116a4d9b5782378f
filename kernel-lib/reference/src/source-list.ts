import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Closeness } from "./check-table.js";

/** A source, and what rests on it. */
export interface Source {
  readonly source: string;
  readonly usedBy: readonly string[];
}

/** What docstrings say after "Reference:" or "Source:", each with the names that say so; a word about the library itself is none. */
export function docstringSources(built: string): readonly Source[] {
  const named = readdirSync(built, { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".d.ts"))
    .sort()
    .flatMap((path) => sourcesIn(readFileSync(join(built, path), "utf8")));
  return gathered(named);
}

/** The sources of checks, each with the pages whose models they hold. */
export function checkSources(closeness: readonly Closeness[]): readonly Source[] {
  return gathered(
    closeness.flatMap(({ source, page }) => source.split("; ").map((one) => ({ source: one, name: page }))),
  );
}

function sourcesIn(declarations: string): { source: string; name: string }[] {
  const documented = /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*export (?:declare )?(?:function|const|interface|type) (\w+)/g;
  return [...declarations.matchAll(documented)].flatMap(([, comment, name]) => {
    const lines = comment.split("\n").map((line) => line.replace(/^\s*\* ?/, "").trim());
    const from = lines.findIndex((line) => /^(?:References?|Sources?): /.test(line));
    if (from < 0) return [];
    const to = lines.indexOf("", from);
    const source = lines
      .slice(from, to < 0 ? lines.length : to)
      .join(" ")
      .replace(/^\w+: /, "")
      .replace(/\.$/, "");
    return /^(?:this library|as `|correlations of `)/.test(source) ? [] : [{ source, name }];
  });
}

/** One entry a source, in the order of the alphabet. */
function gathered(named: readonly { source: string; name: string }[]): readonly Source[] {
  const usedBy = new Map<string, Set<string>>();
  for (const { source, name } of named) usedBy.set(source, (usedBy.get(source) ?? new Set()).add(name));
  return [...usedBy]
    .map(([source, names]) => ({ source, usedBy: [...names].sort() }))
    .sort((a, b) => a.source.localeCompare(b.source, "en"));
}
