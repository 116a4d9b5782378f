import { mendJson } from "../../../check/mend-json";
import type { Slip } from "../../../check/slip";
import type { FormulaSource } from "./formula-source";

/** Takes a formula in JSON apart. What can be meant in one way only is a slip, and the rest is read all the same. */
export function jsonFormula(jsonText: string, file: string): FormulaSource {
  const { text, slips, fault, lineOf } = mendJson(jsonText.replace(/^\ufeff/, ""));
  const lineAt = (path: string): number =>
    lineOf.get(path) ?? (path === "" ? 1 : lineAt(path.slice(0, Math.max(0, path.lastIndexOf(".")))));
  const all = fault === null ? slips : [...slips, fault];
  return {
    data: fault === null ? JSON.parse(text) : undefined,
    slips: all.map(
      ({ line, expected, got }): Slip => ({
        file,
        row: line,
        at: null,
        expected: `JSON: ${expected}`,
        got,
        nearest: null,
      }),
    ),
    notices: [],
    placeOf: (path) => ({ row: lineAt(path), at: path === "" ? null : path }),
  };
}
