import { createRequire } from "node:module";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { strictDocstring } from "../../kernel-lib/reference/src/strict-docstring";

// the reader of Markdown that typedoc brings
const typedoc = createRequire(join(process.cwd(), "kernel-lib/reference/package.json")).resolve("typedoc");
const MarkdownIt = createRequire(typedoc)("markdown-it") as new (options: {
  html: false;
}) => {
  render: (text: string) => string;
};

const bodyOf = (comment: string): string =>
  comment
    .split("\n")
    .slice(1, -1)
    .map((line) => line.replace(/^ \* ?/, ""))
    .join("\n");

describe("strictDocstring", () => {
  it("puts what stands after an example into parts of its own", () => {
    const strict = strictDocstring(
      `/**
 * What it computes. How it does.
 *
 * F = ∫10^((T − Tref)/z) dt, exact for straight lines:
 * more of it. It is old.
 *
 * @param options timesMin [min]
 * @returns minutes
 *
 * Range: any trace.
 *
 * @example
 * const a = { b: 1 };
 * f(a); // → 2
 *
 * Reference: Bigelow W.D. (1921),
 * Journal.
 */`,
      true,
    );
    expect(bodyOf(strict)).toBe(
      [
        "What it computes. How it does.",
        "",
        "> F = ∫10^((T − Tref)/z) dt, exact for straight lines:",
        "> more of it.",
        "",
        "It is old.",
        "",
        "@summary What it computes.",
        "",
        "@param options timesMin \\[min\\]",
        "",
        "@returns minutes",
        "",
        "@range any trace.",
        "",
        "@example",
        "```ts",
        "const a = { b: 1 };",
        "f(a); // → 2",
        "```",
        "",
        "@reference Bigelow W.D. (1921),",
        "Journal.",
      ].join("\n"),
    );
  });

  it.each([
    ["V(L) = m/ρ, at last", true],
    ["exp(−λ²)/erf λ − (kl/ks)·√(αs/αl) = λ√π", true],
    ["nutrient of a piece = m", true],
    ["An energy, in kcal (1 kcal = 4.184 kJ)", false],
    ["Mass of mix that makes a slab (g): m = ρ·V", false],
    ["95 % profile-likelihood interval of t = c0 + aL", false],
    ["`a` = b", false],
  ])("%s: set apart as an equation: %s", (text, quoted) => {
    expect(bodyOf(strictDocstring(`/**\n * ${text}\n */`, false)).startsWith("> ")).toBe(quoted);
  });

  it("keeps lists and code, and a sentence's point inside code", () => {
    const strict = strictDocstring("/**\n * Reads `a.b. C` and\n * - `<one>` [a]\n * - two\n */", true);
    expect(bodyOf(strict)).toBe(
      "Reads `a.b. C` and\n- `<one>` \\[a\\]\n- two\n\n@summary Reads `a.b. C` and - `<one>` \\[a\\] - two",
    );
  });

  it("shows any line of text as it was written", () => {
    const reader = new MarkdownIt({ html: false });
    const shown = (html: string): string =>
      html
        .replace(/<\/?(p|ul|ol|li|blockquote)( start="\d+")?>/g, "")
        .replaceAll("&lt;", "<")
        .replaceAll("&gt;", ">")
        .replaceAll("&quot;", '"')
        .replaceAll("&amp;", "&")
        .trim();
    const mark = fc.constantFrom(
      ..."ab<>&*_[](){}@#~|\\!-+=:;\"'.1 ",
      "<b onclick=x>",
      "<!--",
      "](javascript:x)",
      "&lt;",
      "{@link a}",
    );
    fc.assert(
      fc.property(fc.array(mark, { minLength: 1, maxLength: 12 }), (marks) => {
        const line = `t ${marks.join("").trim().replace(/\s+/g, " ")}`.replace(/\*\//g, "* /");
        expect(shown(reader.render(bodyOf(strictDocstring(`/**\n * ${line}\n */`, false))))).toBe(line.trim());
      }),
    );
  });
});
