import { fail } from "../../check/check";
import { incompleteBeta } from "./incomplete-beta";
import { logGamma } from "./log-gamma";
import { normalCdf, normalQuantile } from "./normal-distribution";

/**
 * Probability that Student's t with the given degrees of freedom falls at or below t (Infinity gives the normal).
 *
 * @example
 * studentTCdf(2, 10); // → 0.963306
 */
export function studentTCdf(t: number, degreesOfFreedom: number): number {
  if (!(degreesOfFreedom > 0)) fail("studentTCdf: degreesOfFreedom", "must be > 0", degreesOfFreedom);
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return normalCdf(t);
  const tail = 0.5 * tailBothSides(t, degreesOfFreedom);
  return t < 0 ? tail : 1 - tail;
}

/**
 * Two-sided p value of a t statistic: the probability of a value at least as far from zero as t.
 *
 * @example
 * studentTPValue(2, 10); // → 0.073388
 */
export function studentTPValue(t: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return 2 * normalCdf(-Math.abs(t));
  return tailBothSides(t, degreesOfFreedom);
}

/**
 * The value that Student's t falls below with the given probability; Newton steps, kept inside a bracket.
 *
 * @example
 * studentTQuantile(0.975, 10); // → 2.228139
 */
export function studentTQuantile(probability: number, degreesOfFreedom: number): number {
  if (!(probability > 0 && probability < 1))
    fail("studentTQuantile: probability", "must lie between 0 and 1", probability);
  if (!(degreesOfFreedom > 0)) fail("studentTQuantile: degreesOfFreedom", "must be > 0", degreesOfFreedom);
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return normalQuantile(probability);
  if (probability === 0.5) return 0;
  const tail = probability < 0.5 ? probability : 1 - probability;
  const size = upperQuantile(tail, degreesOfFreedom);
  return probability < 0.5 ? -size : size;
}

function tailBothSides(t: number, df: number): number {
  const square = t * t;
  return incompleteBeta(df / 2, 0.5, df / (df + square), square / (df + square)).lower;
}

function upperQuantile(tail: number, df: number): number {
  let low = 0;
  let high = 2;
  while (0.5 * tailBothSides(high, df) > tail) {
    low = high;
    high *= 2;
  }
  const logFront = logGamma((df + 1) / 2) - logGamma(df / 2) - 0.5 * Math.log(df * Math.PI);
  let t = low + (high - low) / 2;
  for (let step = 0; step < 200; step++) {
    const excess = 0.5 * tailBothSides(t, df) - tail;
    if (excess > 0) low = t;
    else high = t;
    const density = Math.exp(logFront - ((df + 1) / 2) * Math.log1p((t * t) / df));
    let next = t + excess / density;
    if (!(next > low && next < high)) next = low + (high - low) / 2;
    if (Math.abs(next - t) <= 1e-15 * t || high - low <= 1e-15 * high) return next;
    t = next;
  }
  return t;
}
