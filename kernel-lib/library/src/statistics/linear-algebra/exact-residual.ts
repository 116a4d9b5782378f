/** y − Σ columns·coefficients with twice the usual precision, rounded once at the end (Dekker 1971, Knuth two-sum). */
export function exactResidual(
  y: ArrayLike<number>,
  columns: readonly ArrayLike<number>[],
  coefficients: ArrayLike<number>,
): Float64Array {
  const residual = new Float64Array(y.length);
  for (let i = 0; i < y.length; i++) {
    let high = y[i];
    let low = 0;
    for (let j = 0; j < columns.length; j++) {
      const a = -columns[j][i];
      const b = coefficients[j];
      const product = a * b;
      const aHigh = upperHalf(a);
      const bHigh = upperHalf(b);
      const aLow = a - aHigh;
      const bLow = b - bHigh;
      low += aHigh * bHigh - product + aHigh * bLow + aLow * bHigh + aLow * bLow;
      const sum = high + product;
      const part = sum - high;
      low += high - (sum - part) + (product - part);
      high = sum;
    }
    residual[i] = high + low;
  }
  return residual;
}

function upperHalf(value: number): number {
  const spread = 134217729 * value;
  return spread - (spread - value);
}
