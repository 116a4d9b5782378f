import { fail } from "../../check/check";
import { incompleteGamma } from "./incomplete-gamma";

/**
 * Density of the standard normal distribution at z.
 *
 * @example
 * normalDensity(0); // → 0.3989423
 */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / 2.5066282746310007;
}

/**
 * Probability that a standard normal value falls at or below z, from the incomplete gamma function P(½, z²/2).
 *
 * @example
 * normalCdf(1.96); // → 0.9750021
 */
export function normalCdf(z: number): number {
  const { lower, upper } = incompleteGamma(0.5, 0.5 * z * z);
  return z < 0 ? 0.5 * upper : 0.5 + 0.5 * lower;
}

/**
 * The value z below which a standard normal falls with the given probability, 0 < probability < 1:
 * Acklam's rational approximation (1.15e-9; coefficients from memory) polished by two Halley steps to full precision.
 *
 * @example
 * normalQuantile(0.975); // → 1.959964
 */
export function normalQuantile(probability: number): number {
  if (!(probability > 0 && probability < 1))
    fail("normalQuantile: probability", "must lie between 0 and 1", probability);
  if (probability > 0.5) return -lowerTail(1 - probability);
  return lowerTail(probability);
}

const CENTRE_TOP = [
  -39.69683028665376, 220.9460984245205, -275.9285104469687, 1.38357751867269e2, -30.66479806614716, 2.506628277459239,
];
const CENTRE_BOTTOM = [
  -54.47609879822406, 161.5858368580409, -155.6989798598866, 66.80131188771972, -13.28068155288572, 1,
];
const TAIL_TOP = [
  -0.007784894002430293, -0.3223964580411365, -2.400758277161838, -2.549732539343734, 4.374664141464968,
  2.938163982698783,
];
const TAIL_BOTTOM = [0.007784695709041462, 0.3224671290700398, 2.445134137142996, 3.754408661907416, 1];

function lowerTail(probability: number): number {
  let z: number;
  if (probability < 0.02425) {
    const q = Math.sqrt(-2 * Math.log(probability));
    z = horner(TAIL_TOP, q) / horner(TAIL_BOTTOM, q);
  } else {
    const q = probability - 0.5;
    z = (horner(CENTRE_TOP, q * q) * q) / horner(CENTRE_BOTTOM, q * q);
  }
  for (let step = 0; step < 2; step++) {
    const density = normalDensity(z);
    if (density === 0) break;
    const newton = (normalCdf(z) - probability) / density;
    z -= newton / (1 + 0.5 * z * newton);
  }
  return z;
}

function horner(coefficients: readonly number[], x: number): number {
  let value = 0;
  for (const coefficient of coefficients) value = value * x + coefficient;
  return value;
}
