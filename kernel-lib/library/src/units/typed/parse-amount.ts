import { fail } from "../../check/check";

/** A number read from the start of a text, and what follows it. */
export interface ParsedAmount {
  readonly amount: number;
  /** the text after the number, trimmed: `"tsp"`, `"large"`, `"% of beets"` */
  readonly rest: string;
}

const VULGAR: Readonly<Record<string, string>> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** The longest text that is read as an amount or a quantity: our judgement. */
export const LONGEST_AMOUNT = 200;

const NUMBER = /^([-+]?)(?:(\d+)[ -]+(\d+)\/(\d+)|(\d+)\/(\d+)|(\d+(?:\.\d+)?|\.\d+))(?![\d.,/])\s*/;

/**
 * Reads the number that a text begins with: `1.5`, `3/4`, `1 1/2`, `1-1/2`, `1½`, `-18`. A comma is refused, as it
 * means a decimal point in one country and thousands in another.
 */
export function parseAmount(text: string, where: string): ParsedAmount {
  if (text.length > LONGEST_AMOUNT) fail(where, `must have at most ${LONGEST_AMOUNT} characters`, text);
  const plain = text
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, (mark) => ` ${VULGAR[mark]}`)
    .replace(/[−–]/g, "-")
    .replace(/⁄/g, "/")
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
