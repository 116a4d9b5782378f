import { fail } from "../../check/check";
import { incompleteBeta } from "./incomplete-beta";
import { invertUpperTail } from "./invert-upper-tail";

/**
 * Probability that an F value with the given degrees of freedom falls at or below `value`.
 *
 * @example
 * fCdf(4.964603, 1, 10); // → 0.95
 */
export function fCdf(value: number, numeratorDf: number, denominatorDf: number): number {
  checkDf(numeratorDf, denominatorDf);
  if (value <= 0) return 0;
  return tails(value, numeratorDf, denominatorDf).lower;
}

/**
 * p value of an F statistic: the probability of a value at least as large, without loss far out in the tail.
 *
 * @example
 * fPValue(1.070857665, 4, 6); // → 0.446835
 */
export function fPValue(value: number, numeratorDf: number, denominatorDf: number): number {
  checkDf(numeratorDf, denominatorDf);
  if (value <= 0) return 1;
  return tails(value, numeratorDf, denominatorDf).upper;
}

/**
 * The value that F falls below with the given probability.
 *
 * @example
 * fQuantile(0.95, 1, 10); // → 4.964603
 */
export function fQuantile(probability: number, numeratorDf: number, denominatorDf: number): number {
  if (!(probability > 0 && probability < 1)) fail("fQuantile: probability", "must lie between 0 and 1", probability);
  checkDf(numeratorDf, denominatorDf);
  return invertUpperTail((value) => tails(value, numeratorDf, denominatorDf), probability);
}

function tails(value: number, d1: number, d2: number): { lower: number; upper: number } {
  const sum = d1 * value + d2;
  return incompleteBeta(d1 / 2, d2 / 2, (d1 * value) / sum, d2 / sum);
}

function checkDf(numeratorDf: number, denominatorDf: number): void {
  if (!(numeratorDf > 0 && denominatorDf > 0 && Number.isFinite(numeratorDf) && Number.isFinite(denominatorDf))) {
    fail("F distribution: both degrees of freedom", "must be finite and > 0", [numeratorDf, denominatorDf]);
  }
}
