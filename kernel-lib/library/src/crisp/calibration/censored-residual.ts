import { normalCdf } from "../../statistics/distributions/normal-distribution";

/**
 * Deviance residual of a value that is only known to lie between two limits.
 *
 * With a and b the limits less the model's value, over the standard deviation, the chance is P = Φ(b) − Φ(a); the
 * residual is ±√(2·ln(Pmax/P)), Pmax the chance when the model sits in the middle, so that Σr² is minimal where the
 * likelihood is greatest and a narrow interval counts as a plain residual. Positive when the interval lies above.
 *
 * @param low lower limit in standard deviations from the model [-]; −Infinity when open below
 * @param high upper limit [-]; Infinity when open above
 */
export function censoredResidual(low: number, high: number): number {
  if (low === Number.NEGATIVE_INFINITY && high === Number.POSITIVE_INFINITY) return 0;
  const middle = (low + high) / 2;
  const half = (high - low) / 2;
  const most = Number.isFinite(half) ? Math.log(2 * normalCdf(half) - 1) : 0;
  const loss = Math.max(0, most - logBetween(low, high));
  return (middle < 0 ? -1 : 1) * Math.sqrt(2 * loss);
}

/** ln[Φ(high) − Φ(low)], kept finite far out in the tails. */
function logBetween(low: number, high: number): number {
  if (low + high < 0) return logBetween(-high, -low);
  const near = logUpperTail(low);
  if (high === Number.POSITIVE_INFINITY) return near;
  return near + Math.log1p(-Math.exp(logUpperTail(high) - near));
}

/** ln[1 − Φ(x)]. */
function logUpperTail(x: number): number {
  if (x < 10) return Math.log(normalCdf(-x));
  const square = 1 / (x * x);
  return (
    -0.5 * x * x - Math.log(x * Math.sqrt(2 * Math.PI)) + Math.log1p(-square * (1 - 3 * square * (1 - 5 * square)))
  );
}
