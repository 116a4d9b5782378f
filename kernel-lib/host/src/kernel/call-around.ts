import type * as TypeScript from "@tslab/typescript-for-tslab";

/** What the cursor touches and what it stands in. */
export interface Around {
  /** the name that the cursor touches */
  readonly word: string | null;
  /** the innermost call in whose brackets the cursor stands, by the name that is called and the place of that name */
  readonly call: { readonly name: string; readonly at: number } | null;
}

/** Looks around `at` in code that may be unfinished: `decide({ ` stands in a call of `decide`. */
export function callAround(ts: typeof TypeScript, code: string, at: number): Around {
  const file = ts.createSourceFile("cell.ts", code, ts.ScriptTarget.ES2022, true);
  const written = code.slice(0, at).trimEnd().length; // a call that is not closed ends before the space behind it
  let word: string | null = null;
  let call: Around["call"] = null;
  const look = (node: TypeScript.Node): void => {
    if (at < node.pos || node.end < written) return;
    if (ts.isIdentifier(node) && node.getStart() <= at && at <= node.end) word = node.text;
    if (ts.isCallExpression(node) && isInBrackets(node)) {
      const name = ts.isPropertyAccessExpression(node.expression) ? node.expression.name : node.expression;
      if (ts.isIdentifier(name) && name.text) call = { name: name.text, at: name.getStart() };
    }
    ts.forEachChild(node, look);
  };
  const isInBrackets = (node: TypeScript.CallExpression): boolean => {
    const open = code.indexOf("(", node.typeArguments?.end ?? node.expression.end);
    const isClosed = code[node.end - 1] === ")" && node.end - 1 > open && node.arguments.end < node.end;
    return open >= 0 && open < at && (isClosed ? at < node.end : true);
  };
  look(file);
  return { word, call };
}
