import { fail } from "../../check/check";
import { incompleteBeta } from "./incomplete-beta";
import { logGamma } from "./log-gamma";
import { normalCdf } from "./normal-distribution";

/**
 * Probability that a noncentral t falls at or below t, as a Poisson mixture of incomplete beta functions (Lenth 1989,
 * algorithm AS 243). For |noncentrality| up to about 37, beyond which its weights underflow.
 *
 * @example
 * noncentralTCdf(2, 10, 1); // → 0.8076116
 */
export function noncentralTCdf(t: number, degreesOfFreedom: number, noncentrality: number): number {
  if (!(degreesOfFreedom > 0)) fail("noncentralTCdf: degreesOfFreedom", "must be > 0", degreesOfFreedom);
  if (!(Math.abs(noncentrality) <= 37))
    fail("noncentralTCdf: noncentrality", "must lie between -37 and 37", noncentrality);
  if (t < 0) return 1 - noncentralTCdf(-t, degreesOfFreedom, -noncentrality);
  const base = normalCdf(-noncentrality);
  if (t === 0) return base;
  const square = t * t;
  const half = degreesOfFreedom / 2;
  const [x, rest] = [square / (square + degreesOfFreedom), degreesOfFreedom / (square + degreesOfFreedom)];
  const rate = (noncentrality * noncentrality) / 2;
  let even = Math.exp(-rate);
  let odd = (noncentrality / Math.SQRT2) * Math.exp(-rate - logGamma(1.5));
  let sum = 0;
  for (let j = 0; j < 5000; j++) {
    const term = even * incompleteBeta(j + 0.5, half, x, rest).lower + odd * incompleteBeta(j + 1, half, x, rest).lower;
    sum += term;
    if (j > rate && Math.abs(term) < 1e-16) break;
    even *= rate / (j + 1);
    odd *= rate / (j + 1.5);
  }
  return Math.min(1, Math.max(0, base + 0.5 * sum));
}

/**
 * Probability that a noncentral F falls at or below `value`: Poisson mixture of incomplete beta functions.
 *
 * @param noncentrality λ, 0 to 1400
 * @example
 * noncentralFCdf(3, 2, 10, 4); // → 0.5489679
 */
export function noncentralFCdf(
  value: number,
  numeratorDf: number,
  denominatorDf: number,
  noncentrality: number,
): number {
  if (!(numeratorDf > 0 && denominatorDf > 0)) {
    fail("noncentralFCdf: both degrees of freedom", "must be > 0", [numeratorDf, denominatorDf]);
  }
  if (!(noncentrality >= 0 && noncentrality <= 1400)) {
    fail("noncentralFCdf: noncentrality", "must lie between 0 and 1400", noncentrality);
  }
  if (value <= 0) return 0;
  const total = numeratorDf * value + denominatorDf;
  const rate = noncentrality / 2;
  let weight = Math.exp(-rate);
  let sum = 0;
  for (let j = 0; j < 20_000; j++) {
    const term =
      weight *
      incompleteBeta(numeratorDf / 2 + j, denominatorDf / 2, (numeratorDf * value) / total, denominatorDf / total)
        .lower;
    sum += term;
    if (j > rate && term < 1e-17) break;
    weight *= rate / (j + 1);
  }
  return Math.min(1, sum);
}
