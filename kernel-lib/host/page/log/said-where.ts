import type { Said } from "./field";

/** Sentences of the library, each with the field that it names, or with none. */
export interface SaidWhere {
  readonly at: ReadonlyMap<string, Said>;
  readonly elsewhere: Said;
}

/** Puts each sentence to the column it names: `… column thickness_mm: …`, `… expected a column time_min …`. */
export function saidWhere(said: Said, headings: readonly string[]): SaidWhere {
  const at = new Map<string, { problems: string[]; notices: string[] }>();
  const elsewhere = { problems: [] as string[], notices: [] as string[] };
  for (const kind of ["problems", "notices"] as const) {
    for (const sentence of said[kind]) {
      const [start, named] = /\bcolumn ([^\s:,]+)/.exec(sentence) ?? [];
      const heading = headings.find((one) => one === named);
      if (start === undefined || heading === undefined) {
        elsewhere[kind].push(sentence);
        continue;
      }
      const here = at.get(heading) ?? { problems: [], notices: [] };
      at.set(heading, here);
      here[kind].push(sentence.replace(/^.*?\bcolumn [^\s:,]+: /, ""));
    }
  }
  return { at, elsewhere };
}
