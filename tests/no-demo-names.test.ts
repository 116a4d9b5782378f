import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { loadKitchen } from "../kernel-lib/library/src/notebook/load-kitchen";

const SKIPPED = /(^|[\\/])(node_modules|dist|out)([\\/]|$)/;
const TEXT = /\.(ts|tsx|mts|mjs|js|json|ipynb|css|html|md|svg)$/;

function textsIn(folder: string): { path: string; text: string }[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((path) => !SKIPPED.test(path) && TEXT.test(path))
    .map((path) => join(folder, path))
    .filter((path) => statSync(path).isFile())
    .map((path) => ({ path, text: readFileSync(path, "utf8") }));
}

/** Docstrings may show the demo in an `@example`; the lines of those are left out. */
function withoutExamples(text: string): string {
  return text.replace(/\/\*\*[\s\S]*?\*\//g, (comment) =>
    comment.replace(/@example[\s\S]*?(?=\n\s*\*\s*(?:@|\n)|\*\/)/g, ""),
  );
}

it("nothing but the demo's data, tests and docstring examples knows the demo's names", () => {
  const demo = loadKitchen("data");
  const words = [
    "Quarry Lane",
    ...demo.variants.flatMap(({ variantId, name }) => [variantId, name]),
    ...demo.trials.map(({ trialId }) => trialId),
  ];
  const pattern = new RegExp(`(?<![\\w-])(${words.join("|")})(?![\\w-])`, "i");
  expect([`trial ${demo.trials[0].trialId}: look`, "the Quarry Lane kitchen"].every((text) => pattern.test(text))).toBe(
    true,
  );
  const texts = [...textsIn("kernel-lib"), ...textsIn("notebooks")];
  expect(texts.length).toBeGreaterThan(300);
  const knowing = texts.flatMap(({ path, text }) =>
    withoutExamples(text)
      .split("\n")
      .flatMap((line) => (pattern.test(line) ? [`${path}: ${line.trim().slice(0, 120)}`] : [])),
  );
  expect(knowing).toEqual([]);
});
