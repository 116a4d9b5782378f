import { convertUnit } from "../convert-unit";
import { expectedNumber, type NumberRules, type ReadNumber, readNumber } from "./read-number";

/** The unit of length that a unit of area is the square of. */
const SIDE: Readonly<Record<string, string>> = { "in²": "in", "cm²": "cm" };

/** A floor as it was typed: a rectangle by its sides or a circle by its diameter (mm). */
export type TypedFloor =
  | { readonly shape: "rectangle"; readonly lengthMm: number; readonly widthMm: number }
  | { readonly shape: "round"; readonly diameterMm: number };

/**
 * Reads an area as people type it: one number, the two sides of a rectangle, `9 x 8 1/2` under a heading of square inches, or
 * the diameter of a circle, `round 9`.
 *
 * A = l · w; A = π/4 · d²
 */
export function readArea(cell: string, rules: NumberRules): ReadNumber {
  const unit = SIDE[rules.unit ?? "in²"];
  const isShape = PAIR.test(cell) || ROUND.test(cell);
  if (!isShape || unit === undefined) return readNumber(cell, rules);
  const floor = readFloor(cell, { sign: rules.sign, unit });
  if (floor === null) return { expected: expectedNumber(rules) };
  const mm2 =
    floor.shape === "round" ? (Math.PI / 4) * floor.diameterMm * floor.diameterMm : floor.lengthMm * floor.widthMm;
  const value = convertUnit({ value: mm2 / 100, from: "cm²", to: rules.base ?? "cm²" });
  return {
    value,
    says: floor.shape === "round" ? "was taken as a diameter" : "was taken as length by width",
    taken: `${Number(value.toPrecision(4))} ${rules.base ?? "cm²"}`,
  };
}

const PAIR = /^([^x×*]{1,40})(?:x|×|\*|\bby\b)([^x×*]{1,40})$/i;
const ROUND = /^(?:round|ø|⌀|diameter)\s*([^x×*]{1,40})$/i;

interface SideRules {
  readonly sign: NumberRules["sign"];
  /** of numbers that have none of their own */
  readonly unit: string;
}

/** A floor's shape as people type it, `9 x 8 1/2` or `round 9`; null where the cell says an area alone. */
export function readFloor(cell: string, rules: SideRules): TypedFloor | null {
  const round = ROUND.exec(cell.trim());
  if (round !== null) {
    const diameterMm = sideMm(round[1], rules);
    return diameterMm === null ? null : { shape: "round", diameterMm };
  }
  const pair = PAIR.exec(cell.trim());
  if (pair === null) return null;
  // `600 x 450 mm`: the unit at the end is of both
  const own = /[a-z"”″]+\s*$/i;
  const [one, other] = [own.test(pair[1]) ? pair[1] : `${pair[1].trim()} ${own.exec(pair[2])?.[0] ?? ""}`, pair[2]];
  const [first, second] = [sideMm(one, rules), sideMm(other, rules)];
  if (first === null || second === null) return null;
  return { shape: "rectangle", lengthMm: Math.max(first, second), widthMm: Math.min(first, second) };
}

function sideMm(text: string, { sign, unit }: SideRules): number | null {
  const read = readNumber(text.trim(), { sign, kind: "length", base: "mm", unit });
  return "expected" in read || !(read.value > 0) ? null : read.value;
}
