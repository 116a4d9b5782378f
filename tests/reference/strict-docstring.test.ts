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
 * more of it
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
        "> more of it",
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
