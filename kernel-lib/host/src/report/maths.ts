import type { MarkedExtension, Tokens } from "marked";
import temml from "temml";
import { escapeHtml } from "./escape";

/** Maths between dollar signs in markdown (`$…$` in a line, `$$…$$` on its own) as MathML, which browsers draw. */
export const maths: MarkedExtension = {
  extensions: [
    {
      name: "displayMaths",
      level: "block",
      start: (text: string) => text.indexOf("$$"),
      tokenizer: (text: string) => token("displayMaths", /^\$\$([\s\S]+?)\$\$(?:\n|$)/.exec(text)),
      renderer: ({ text }: Tokens.Generic) => `<p class="maths">${mathMl(text, true)}</p>\n`,
    },
    {
      name: "inlineMaths",
      level: "inline",
      start: (text: string) => text.indexOf("$"),
      tokenizer: (text: string) =>
        token(
          "inlineMaths",
          /^\$\$([^$]+)\$\$/.exec(text) ?? /^\$(?!\s)((?:\\.|[^$\\\n])+?)(?<!\s)\$(?!\d)/.exec(text),
        ),
      renderer: ({ text }: Tokens.Generic) => mathMl(text, false),
    },
  ],
};

/** The longest formula that is set: our judgement, a page of derivation. */
const LONGEST = 2000;

/** Commands that define commands: two lines of them can stand for megabytes. */
const DEFINITION = /\\(?:[egx]?def|(?:re)?newcommand|providecommand|let|futurelet)(?![a-zA-Z])/;

/** A formula as MathML; one that is too long, defines commands or cannot be read is shown as it is written. */
function mathMl(source: string, displayMode: boolean): string {
  if (source.length <= LONGEST && !DEFINITION.test(source)) {
    try {
      return temml.renderToString(source, { displayMode, throwOnError: false, trust: false });
    } catch {
      // temml breaks on some texts, such as many underscores
    }
  }
  return `<code>${escapeHtml(source)}</code>`;
}

function token(type: string, match: RegExpExecArray | null): Tokens.Generic | undefined {
  return match ? { type, raw: match[0], text: match[1].trim() } : undefined;
}
