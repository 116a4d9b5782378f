/**
 * The value at which a distribution on (0, ∞) reaches `probability`, by bisection on the logarithm of the value
 * (about 60 calls, full precision) on whichever tail is smaller, so that nothing is lost to cancellation.
 */
export function invertUpperTail(
  tails: (value: number) => { lower: number; upper: number },
  probability: number,
): number {
  const below = (value: number): boolean =>
    probability < 0.5 ? tails(value).lower < probability : tails(value).upper > 1 - probability;
  let low = -1;
  let high = 1;
  while (!below(Math.exp(low)) && low > -700) low *= 2;
  while (below(Math.exp(high)) && high < 700) high *= 2;
  for (let step = 0; step < 100 && high - low > 1e-16 * Math.max(1, Math.abs(low)); step++) {
    const middle = low + (high - low) / 2;
    if (middle === low || middle === high) break;
    if (below(Math.exp(middle))) low = middle;
    else high = middle;
  }
  return Math.exp(low + (high - low) / 2);
}
