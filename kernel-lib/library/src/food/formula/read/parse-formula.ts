import { failAll } from "../../../check/csv";
import { slipLines } from "../../../check/slip";
import type { Formula } from "../formula";
import { readFormula } from "./read-formula";

/**
 * Reads one formula from JSON text. Every problem is named in one error: file, line, field, what was expected.
 *
 * @param jsonText the file's text
 * @param fileName named in errors
 */
export function parseFormula(jsonText: string, fileName: string): Formula {
  const { formula, slips } = readFormula(jsonText, fileName);
  failAll(slipLines(slips));
  return formula as Formula;
}
