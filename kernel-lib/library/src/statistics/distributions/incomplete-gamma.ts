import { logGamma } from "./log-gamma";

const TINY = 1e-300;

/**
 * Both regularised incomplete gamma functions, P(a, x) and Q(a, x) = 1 − P, each without cancellation: the power
 * series below x = a + 1, the continued fraction (modified Lentz) above.
 */
export function incompleteGamma(a: number, x: number): { lower: number; upper: number } {
  if (x <= 0) return { lower: 0, upper: 1 };
  if (x === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 };
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let k = 1; k < 10_000 && Math.abs(term) > sum * 1e-17; k++) {
      term *= x / (a + k);
      sum += term;
    }
    const lower = front * sum;
    return { lower, upper: 1 - lower };
  }
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let fraction = d;
  for (let k = 1; k < 10_000; k++) {
    const numerator = -k * (k - a);
    b += 2;
    d = numerator * d + b;
    if (Math.abs(d) < TINY) d = TINY;
    c = b + numerator / c;
    if (Math.abs(c) < TINY) c = TINY;
    d = 1 / d;
    const factor = d * c;
    fraction *= factor;
    if (Math.abs(factor - 1) < 1e-16) break;
  }
  const upper = front * fraction;
  return { lower: 1 - upper, upper };
}
