import { z } from "zod";
import { clipped } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { type Formula, formulaSchema } from "./formula";

/** The longest file of a formula: our judgement, 200 lines of long names. */
const LONGEST_TEXT = 100_000;

/**
 * Reads one formula from JSON text. Every problem is named in one error: file, field, what was expected.
 *
 * @param jsonText the file's text
 * @param fileName named in errors
 */
export function parseFormula(jsonText: string, fileName: string): Formula {
  if (jsonText.length > LONGEST_TEXT)
    throw new RangeError(`${fileName}: expected at most ${LONGEST_TEXT} characters, got ${jsonText.length}`);
  let json: unknown;
  try {
    json = JSON.parse(jsonText);
  } catch (error) {
    throw new RangeError(
      `${fileName}: expected JSON, got text that does not parse (${clipped((error as Error).message)})`,
    );
  }
  const checked = formulaSchema.safeParse(json);
  if (!checked.success) throw new RangeError(`${fileName}:\n${z.prettifyError(checked.error)}`);
  for (const [at, layer] of checked.data.coating.entries()) {
    if (layer.pickupBasis === "finished" && layer.pickupPercent >= 100) {
      throw new RangeError(
        `${fileName}: coating.${at}.pickupPercent must be below 100 % of the finished weight, got ${layer.pickupPercent}`,
      );
    }
  }
  return freezeDeep(checked.data);
}
