/** Intercept and slope of the plain least-squares line: starting values for models that a logarithm makes straight. */
export function lineThrough(x: readonly number[], y: readonly number[]): { intercept: number; slope: number } {
  const meanX = x.reduce((sum, value) => sum + value, 0) / x.length;
  const meanY = y.reduce((sum, value) => sum + value, 0) / y.length;
  let top = 0;
  let bottom = 0;
  for (let i = 0; i < x.length; i++) {
    top += (x[i] - meanX) * (y[i] - meanY);
    bottom += (x[i] - meanX) ** 2;
  }
  const slope = bottom > 0 ? top / bottom : 0;
  return { intercept: meanY - slope * meanX, slope };
}
