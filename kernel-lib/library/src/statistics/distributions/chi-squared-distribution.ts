import { fail } from "../../check/check";
import { incompleteGamma } from "./incomplete-gamma";
import { invertUpperTail } from "./invert-upper-tail";

/**
 * Probability that a chi-squared value falls at or below `value`.
 *
 * @example
 * chiSquaredCdf(3.841459, 1); // → 0.95
 */
export function chiSquaredCdf(value: number, degreesOfFreedom: number): number {
  if (!(degreesOfFreedom > 0)) fail("chiSquaredCdf: degreesOfFreedom", "must be > 0", degreesOfFreedom);
  return incompleteGamma(degreesOfFreedom / 2, value / 2).lower;
}

/**
 * p value of a chi-squared statistic: the probability of a value at least as large.
 *
 * @example
 * chiSquaredPValue(5.991465, 2); // → 0.05
 */
export function chiSquaredPValue(value: number, degreesOfFreedom: number): number {
  if (!(degreesOfFreedom > 0)) fail("chiSquaredPValue: degreesOfFreedom", "must be > 0", degreesOfFreedom);
  return incompleteGamma(degreesOfFreedom / 2, value / 2).upper;
}

/**
 * The value that chi-squared falls below with the given probability.
 *
 * @example
 * chiSquaredQuantile(0.95, 5); // → 11.070498
 */
export function chiSquaredQuantile(probability: number, degreesOfFreedom: number): number {
  if (!(probability > 0 && probability < 1))
    fail("chiSquaredQuantile: probability", "must lie between 0 and 1", probability);
  if (!(degreesOfFreedom > 0)) fail("chiSquaredQuantile: degreesOfFreedom", "must be > 0", degreesOfFreedom);
  return invertUpperTail((value) => incompleteGamma(degreesOfFreedom / 2, value / 2), probability);
}
