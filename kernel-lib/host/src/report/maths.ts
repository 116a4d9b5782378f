import type { MarkedExtension, Tokens } from "marked";
import temml from "temml";

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

function mathMl(source: string, displayMode: boolean): string {
  return temml.renderToString(source, { displayMode, throwOnError: false, trust: false });
}

function token(type: string, match: RegExpExecArray | null): Tokens.Generic | undefined {
  return match ? { type, raw: match[0], text: match[1].trim() } : undefined;
}
