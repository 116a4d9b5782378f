import type { DecimalSign } from "../../../units/typed/decimal-sign";
import { readNumber } from "../../../units/typed/read-number";
import { isUnknown } from "../../../units/typed/unknown-mark";
import { partsOf } from "./parts-of";

/** A panel's scores of one cell, or what was expected in their place. */
export type ReadScores =
  | {
      readonly scores: readonly number[];
      /** whose they are; empty when the cell does not say */
      readonly tasters: readonly string[];
      /** places of those that gave none */
      readonly without: readonly number[];
    }
  | { readonly expected: string };

const EXPECTED = "scores from 0 to 9, parted by semicolons, all with the taster's initials (AB:7) or none";

/** Reads a panel's scores: `7; 6.5; 8`, or with initials `AB:7; CD:6.5`. */
export function readScores(cell: string, sign: DecimalSign | null): ReadScores {
  const scores: number[] = [];
  const tasters: string[] = [];
  const without: number[] = [];
  for (const [at, part] of partsOf(cell, { hasFractions: false, sign }).entries()) {
    const [, taster, number] = /^([^\s\d:=][^:=]{0,31}?)\s?[:=]\s?(.*)$/.exec(part) ?? [null, null, part];
    if (isUnknown(number as string)) {
      without.push(at);
      continue;
    }
    const read = readNumber(number as string, { sign, kind: null, base: null, unit: null });
    if ("expected" in read) return { expected: EXPECTED };
    scores.push(read.value);
    if (taster !== null) tasters.push(taster.trim());
  }
  if (tasters.length > 0 && tasters.length < scores.length) return { expected: EXPECTED };
  return { scores, tasters, without };
}
