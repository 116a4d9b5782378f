import { logGamma } from "./log-gamma";

const TINY = 1e-300;

/**
 * Both regularised incomplete beta functions, I_x(a, b) and its complement I_{1−x}(b, a), each without cancellation,
 * from the continued fraction (DLMF 8.17.22, modified Lentz).
 *
 * @param x upper limit [-], 0 to 1
 * @param complement 1 − x, given apart because the caller often knows it without rounding
 */
export function incompleteBeta(a: number, b: number, x: number, complement: number): { lower: number; upper: number } {
  if (x <= 0) return { lower: 0, upper: 1 };
  if (complement <= 0) return { lower: 1, upper: 0 };
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log(complement));
  if (x < (a + 1) / (a + b + 2)) {
    const lower = (front * fraction(a, b, x)) / a;
    return { lower, upper: 1 - lower };
  }
  const upper = (front * fraction(b, a, complement)) / b;
  return { lower: 1 - upper, upper };
}

function fraction(a: number, b: number, x: number): number {
  let c = 1;
  let d = 1 - ((a + b) * x) / (a + 1);
  if (Math.abs(d) < TINY) d = TINY;
  d = 1 / d;
  let value = d;
  for (let k = 1; k < 20_000; k++) {
    const even = (k * (b - k) * x) / ((a + 2 * k - 1) * (a + 2 * k));
    d = 1 + even * d;
    if (Math.abs(d) < TINY) d = TINY;
    c = 1 + even / c;
    if (Math.abs(c) < TINY) c = TINY;
    d = 1 / d;
    value *= d * c;
    const odd = (-(a + k) * (a + b + k) * x) / ((a + 2 * k) * (a + 2 * k + 1));
    d = 1 + odd * d;
    if (Math.abs(d) < TINY) d = TINY;
    c = 1 + odd / c;
    if (Math.abs(c) < TINY) c = TINY;
    d = 1 / d;
    const factor = d * c;
    value *= factor;
    if (Math.abs(factor - 1) < 1e-16) break;
  }
  return value;
}
