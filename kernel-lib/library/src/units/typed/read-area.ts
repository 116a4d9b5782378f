import { convertUnit } from "../convert-unit";
import { expectedNumber, type NumberRules, type ReadNumber, readNumber } from "./read-number";

/** The unit of length that a unit of area is the square of. */
const SIDE: Readonly<Record<string, string>> = { "in²": "in", "cm²": "cm" };

/**
 * Reads an area as people type it: one number, or the two sides of a rectangle, `9 x 8 1/2` under a heading of square inches.
 *
 * A = l · w
 */
export function readArea(cell: string, rules: NumberRules): ReadNumber {
  const sides = /^([^x×*]{1,40})(?:x|×|\*|\bby\b)([^x×*]{1,40})$/i.exec(cell);
  const unit = SIDE[rules.unit ?? "in²"];
  if (sides === null || unit === undefined) return readNumber(cell, rules);
  const read = [sides[1], sides[2]].map((side) =>
    readNumber(side.trim(), { sign: rules.sign, kind: "length", base: "cm", unit }),
  );
  const [length, width] = read;
  if ("expected" in length || "expected" in width) return { expected: expectedNumber(rules) };
  const value = convertUnit({ value: length.value * width.value, from: "cm²", to: rules.base ?? "cm²" });
  return {
    value,
    says: "was taken as length by width",
    taken: `${Number(value.toPrecision(4))} ${rules.base ?? "cm²"}`,
  };
}
