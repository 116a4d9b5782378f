import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { type Closeness, checkTable } from "./check-table.js";
import { DOORS, doorName } from "./doors.js";
import type { Source } from "./source-list.js";
import { plain } from "./strict-docstring.js";

/** What the pages are filled with. */
export interface DocumentContents {
  readonly closeness: readonly Closeness[];
  readonly docstrings: readonly Source[];
  readonly checks: readonly Source[];
  /** tables that a page calls by their names */
  readonly tables: Readonly<Record<string, string>>;
  /** the tutorial's page with what its commands printed */
  readonly tutorial: string;
}

/** Writes the pages of a folder into another, their places filled in; the first page and the documents below it, as typedoc takes them. */
export function documents(
  pages: string,
  folder: string,
  contents: DocumentContents,
): { readme: string; documents: string[] } {
  const titles = new Map<string, string>();
  const files = readdirSync(pages, { recursive: true, encoding: "utf8" }).filter((path) => path.endsWith(".md"));
  for (const path of files) {
    const text = readFileSync(join(pages, path), "utf8");
    titles.set(basename(path, ".md"), /^title: (.*)$/m.exec(text)?.[1] ?? "");
  }
  for (const path of files) {
    const source = path === "tutorial.md" ? contents.tutorial : readFileSync(join(pages, path), "utf8");
    const text = source
      .replace("{{checks}}", () => checkTable(contents.closeness, basename(path, ".md")))
      .replace("{{docstring sources}}", () => sourceLines(contents.docstrings, (name) => `\`${name}\``))
      .replace("{{check sources}}", () =>
        sourceLines(contents.checks, (page) => `[${titles.get(page)}](models/${page}.md)`),
      )
      .replace(/\{\{table: ([\w ]+)\}\}/g, (_, name: string) => tableOf(contents.tables, name))
      .replace("{{doors}}", () => DOORS.map(({ room, purpose }) => `- \`${doorName(room)}\`: ${purpose}`).join("\n"));

    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  const documentsOf = ["words.md", "tutorial.md", "how-it-is-computed.md", "sources.md"].filter((path) =>
    files.includes(path),
  );
  return { readme: join(folder, "index.md"), documents: documentsOf.map((path) => join(folder, path)) };
}

function tableOf(tables: Readonly<Record<string, string>>, name: string): string {
  if (!Object.hasOwn(tables, name)) throw new Error(`a page asks for the table "${name}", which there is not`);
  return tables[name];
}

function sourceLines(sources: readonly Source[], words: (user: string) => string): string {
  return sources.map(({ source, usedBy }) => `- ${plain(source)}: ${usedBy.map(words).join(", ")}`).join("\n");
}
