import { fail, finite } from "../../check/check";
import { type CodedPoint, checkFactors, type Factor } from "./factor";

/**
 * A run's real values: value = (low + high)/2 + coded · (high − low)/2, then to the nearest step where a factor has one.
 * Codes beyond ±1, such as axial points, give values beyond low and high: see that they can be set.
 *
 * @param factors in the order of the point's numbers
 * @param point one coded number a factor [-]
 * @returns values by factor name, in the factors' units
 * @example
 * const factors = [{ name: "airC", low: 180, high: 210, step: 5 }, { name: "thicknessMm", low: 8, high: 14 }];
 * decodePoint(factors, [0.5, -1]); // → { "airC": 205, "thicknessMm": 8 }
 */
export function decodePoint(factors: readonly Factor[], point: CodedPoint): Readonly<Record<string, number>> {
  const where = "decodePoint";
  checkFactors(where, factors);
  if (point.length !== factors.length)
    fail(`${where}: point`, `must hold one number for each of the ${factors.length} factors`, point);
  const values = factors.map(({ name, low, high, step }, at) => {
    const value = (low + high) / 2 + (finite(point[at], `${where}: ${name}`, "") * (high - low)) / 2;
    return [name, step === undefined ? value : onStep(value, step)] as const;
  });
  return Object.freeze(Object.fromEntries(values));
}

/** The multiple of a step that is nearest, without the dust of 3 · 0.1. */
function onStep(value: number, step: number): number {
  return Number((Math.round(value / step) * step).toPrecision(14));
}
