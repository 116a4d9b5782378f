import { fail } from "../../check/check";
import { writtenFractions } from "./written-fractions";

/** A number read from the start of a text, and what follows it. */
export interface ParsedAmount {
  readonly amount: number;
  /** the text after the number, trimmed: `"tsp"`, `"large"`, `"% of beets"` */
  readonly rest: string;
}

/** The longest text that is read as an amount or a quantity: our judgement. */
export const LONGEST_AMOUNT = 200;

const NUMBER = /^([-+]?)(?:(\d+)[ -]+(\d+)\/(\d+)|(\d+)\/(\d+)|(\d+(?:\.\d+)?|\.\d+))(?![\d.,/])\s*/;

/**
 * Reads the number that a text begins with: `1.5`, `3/4`, `1 1/2`, `1-1/2`, `1½`, `-18`. A comma is refused, as it
 * means a decimal point in one country and thousands in another.
 */
export function parseAmount(text: string, where: string): ParsedAmount {
  if (text.length > LONGEST_AMOUNT) fail(where, `must have at most ${LONGEST_AMOUNT} characters`, text);
  const plain = writtenFractions(text)
    .replace(/[−–]/g, "-")
    .trim()
    .replace(/^([-+])\s+/, "$1");
  const match = NUMBER.exec(plain);
  if (!match) fail(where, 'must begin with a number such as "1.5", "3/4" or "1 1/2" (decimal point, no comma)', text);
  const [whole, sign, units, top, bottom, topOnly, bottomOnly, decimal] = match;
  const size = decimal
    ? Number(decimal)
    : topOnly
      ? Number(topOnly) / Number(bottomOnly)
      : Number(units) + Number(top) / Number(bottom);
  if (!Number.isFinite(size)) fail(where, "must not divide by zero", text);
  return { amount: sign === "-" ? -size : size, rest: plain.slice(whole.length).trim() };
}
