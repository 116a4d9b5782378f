/** A piece of an equation: on the line, raised or lowered. */
export interface EquationPiece {
  readonly at: "line" | "sup" | "sub";
  readonly text: string;
}

/**
 * Parts what is raised (`x^2`, `e^(−t/τ)`) and lowered (`m_after`) from the rest of an equation, to one level: the outer
 * parentheses of what is raised are left out. In prose only a single letter has something lowered, as words may have strokes too.
 */
export function equationPieces(text: string, isProse: boolean = false): readonly EquationPiece[] {
  const pieces: EquationPiece[] = [];
  const add = (at: EquationPiece["at"], words: string): void => {
    const last = pieces.at(-1);
    if (last?.at === at && at === "line") pieces[pieces.length - 1] = { at, text: last.text + words };
    else if (words !== "") pieces.push({ at, text: words });
  };
  for (let at = 0; at < text.length; ) {
    const rest = text.slice(at);
    const raised = rest.startsWith("^(") ? closedAt(rest, 1) : 0;
    const simple = /^\^([−-]?[\p{L}\p{N}.]+)/u.exec(rest);
    const base = isProse ? /(?<![\p{L}\p{N}_])\p{L}$/u : /[\p{L}\p{N})]$/u;
    const lowered = base.test(text.slice(0, at)) ? /^_([\p{L}\p{N}]+)/u.exec(rest) : null;
    if (raised > 0) {
      add("sup", rest.slice(2, raised));
      at += raised + 1;
    } else if (simple !== null) {
      add("sup", simple[1]);
      at += simple[0].length;
    } else if (lowered !== null) {
      add("sub", lowered[1]);
      at += lowered[0].length;
    } else {
      add("line", text[at]);
      at++;
    }
  }
  return pieces;
}

/** Where the parenthesis that opens at `from` closes; 0 when it does not. */
function closedAt(text: string, from: number): number {
  let depth = 0;
  for (let at = from; at < text.length; at++) {
    if (text[at] === "(") depth++;
    if (text[at] === ")" && --depth === 0) return at;
  }
  return 0;
}
