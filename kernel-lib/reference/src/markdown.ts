import { equationPieces } from "./equation-pieces.js";

/** The page of a public name; `null` for other words, and on that page itself. */
export type LinkOf = (name: string) => string | null;

/** What this file needs of the Markdown reader that typedoc uses. */
interface Token {
  readonly type: string;
  content: string;
  children: Token[] | null;
}
type Rule = (tokens: Token[], at: number, ...rest: unknown[]) => string;
interface MarkdownReader {
  readonly core: { readonly ruler: { push(name: string, rule: (state: State) => void): void } };
  readonly renderer: { readonly rules: Record<string, Rule | undefined> };
}
interface State {
  readonly tokens: Token[];
  readonly Token: new (type: string, tag: string, nesting: -1 | 0 | 1) => Token;
}

/** Names in backticks lead to their pages. */
export function withLinks(reader: MarkdownReader, linkOf: LinkOf): void {
  const { rules } = reader.renderer;
  const own = rules.code_inline!;
  rules.code_inline = (tokens, at, ...rest) => {
    const code = own(tokens, at, ...rest);
    const link = linkOf(/^\w+(?:\/\w+)?/.exec(tokens[at].content)?.[0] ?? "");
    return link === null ? code : `<a href="${link}">${code}</a>`;
  };
}

/** Raises and lowers parts of the text, more boldly inside quotations, where the strict docstrings hold their equations. */
export function withEquations(reader: MarkdownReader): void {
  reader.core.ruler.push("equations", ({ tokens, Token }) => {
    let quoted = 0;
    for (const token of tokens) {
      if (token.type === "blockquote_open") quoted++;
      if (token.type === "blockquote_close") quoted--;
      if (token.children === null) continue;
      token.children = token.children.flatMap((child) => {
        if (child.type !== "text") return [child];
        return equationPieces(child.content, quoted === 0).flatMap(({ at, text }) => {
          const words = new Token("text", "", 0);
          words.content = text;
          return at === "line" ? [words] : [new Token(`${at}_open`, at, 1), words, new Token(`${at}_close`, at, -1)];
        });
      });
    }
  });
}
