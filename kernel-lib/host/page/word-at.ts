/** The name that a place in a cell stands in or after; else that of the function whose call is open there; empty where there is none. */
export function wordAt(code: string, offset: number): string {
  const after = /^[\p{L}\p{N}_$]*/u.exec(code.slice(offset))?.[0] ?? "";
  const word = endOf(code.slice(0, offset)) + after;
  if (word !== "") return word;
  let depth = 0;
  for (let at = offset - 1; at >= 0; at--) {
    if (code[at] === ")") depth++;
    if (code[at] === "(" && depth-- === 0) return endOf(code.slice(0, at));
  }
  return "";
}

function endOf(text: string): string {
  return /[\p{L}\p{N}_$]*$/u.exec(text)?.[0] ?? "";
}
