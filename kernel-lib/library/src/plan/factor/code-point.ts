import { fail, finite } from "../../check/check";
import { ownValue } from "../../check/own-value";
import { type CodedPoint, checkFactors, type Factor } from "./factor";

/**
 * Real values in coded units: coded = (value − (low + high)/2) / ((high − low)/2). For runs that were already made, and
 * for what was set where a step moved it.
 *
 * @param factors in the order of the numbers to come
 * @param values by factor name, in the factors' units; other names are passed over
 * @returns one coded number a factor [-]; −1 at low, 1 at high
 * @example
 * const factors = [{ name: "airC", low: 180, high: 210 }, { name: "thicknessMm", low: 8, high: 14 }];
 * codePoint(factors, { airC: 180, thicknessMm: 12.5 }); // → [-1, 0.5]
 */
export function codePoint(factors: readonly Factor[], values: Readonly<Record<string, number>>): CodedPoint {
  const where = "codePoint";
  checkFactors(where, factors);
  return Object.freeze(
    factors.map(({ name, low, high }) => {
      const value = ownValue(values, name);
      if (value === undefined) fail(`${where}: values`, `must hold a value for ${name}`, Object.keys(values));
      return (finite(value, `${where}: ${name}`, "") - (low + high) / 2) / ((high - low) / 2);
    }),
  );
}
