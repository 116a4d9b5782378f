/** Value at the share `u` of a step: the cubic through the values and slopes at its ends, slopes for the whole step. */
export function stepCubic(from: number, to: number, fromSlope: number, toSlope: number, u: number): number {
  const v = 1 - u;
  return from * v * v * (1 + 2 * u) + to * u * u * (3 - 2 * u) + fromSlope * u * v * v - toSlope * u * u * v;
}

/** Share of a step at which a curve that is on two sides of 0 at its ends passes 0, by halving. */
export function passesZero(curve: (u: number) => number): number {
  const negative = curve(0) < 0;
  let low = 0;
  let high = 1;
  for (let halving = 0; halving < 50; halving++) {
    const middle = (low + high) / 2;
    if (curve(middle) < 0 === negative) low = middle;
    else high = middle;
  }
  return low;
}
