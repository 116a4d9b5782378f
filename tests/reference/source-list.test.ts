import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { checkSources, docstringSources } from "../../kernel-lib/reference/src/source-list";

const place = mkdtempSync(join(tmpdir(), "slabwright-test-"));
afterAll(() => rmSync(place, { recursive: true }));

it("gathers what docstrings say, over lines, once a source, and no word about the library itself", () => {
  mkdirSync(join(place, "room"));
  const says = (source: string, name: string): string =>
    `/**\n * What.\n *\n * Reference: ${source}\n *\n * More.\n */\nexport declare function ${name}(): void;\n`;
  writeFileSync(
    join(place, "room", "a.d.ts"),
    [
      says("Plank R. (1913),\n * Journal 1.", "b"),
      says("this library's solver.", "c"),
      "/** Nothing. */\nexport declare function d(): void;\n",
    ].join(""),
  );
  writeFileSync(join(place, "e.d.ts"), says("Plank R. (1913), Journal 1.", "a") + says("Bigelow (1921).", "f"));
  expect(docstringSources(place)).toEqual([
    { source: "Bigelow (1921)", usedBy: ["f"] },
    { source: "Plank R. (1913), Journal 1", usedBy: ["a", "b"] },
  ]);
});

it("parts the sources of a check", () => {
  const one = { what: "", against: "", measure: "K", found: 0, heldTo: 1 };
  expect(
    checkSources([
      { ...one, page: "storage", source: "B; A" },
      { ...one, page: "batch-day", source: "A" },
    ]),
  ).toEqual([
    { source: "A", usedBy: ["batch-day", "storage"] },
    { source: "B", usedBy: ["storage"] },
  ]);
});

it("every model has a page that published checks fill, and every check a page", () => {
  const used = readdirSync("tests/published")
    .filter((path) => path.endsWith(".test.ts"))
    .flatMap((path) =>
      [...readFileSync(join("tests/published", path), "utf8").matchAll(/page: "([\w-]+)"/g)].map(([, page]) => page),
    );
  const pages = readdirSync("kernel-lib/reference/pages/models").map((path) => path.replace(".md", ""));
  expect([...new Set(used)].sort()).toEqual(pages.sort());
  for (const page of pages)
    expect(readFileSync(`kernel-lib/reference/pages/models/${page}.md`, "utf8")).toMatch(
      /^## Checks\n\n\{\{checks\}\}$/m,
    );
});
