/**
 * Bessel function of the first kind, order n, for the series of a cylinder: the trapezium rule on
 * Jn(x) = (1/π)∫cos(nθ − x·sin θ)dθ from 0 to π, which converges to machine precision once its points outnumber x.
 */
export function besselJ(order: number, x: number): number {
  const points = Math.ceil(Math.abs(x)) + order + 40;
  let sum = 0.5 * (1 + Math.cos(order * Math.PI));
  for (let point = 1; point < points; point++) {
    const angle = (Math.PI * point) / points;
    sum += Math.cos(order * angle - x * Math.sin(angle));
  }
  return sum / points;
}
