/**
 * The value nearest to a share of the way through draws sorted upwards. It is always one of them: nothing is drawn between
 * a finite value and Infinity, for what never comes.
 *
 * @example
 * nearestRank([1, 2, 3, 4, Infinity], 0.5); // → 3
 * nearestRank([1, 2, 3, 4, Infinity], 0.85); // → 4
 */
export function nearestRank(sorted: ArrayLike<number>, share: number): number {
  return sorted[Math.round(share * (sorted.length - 1))];
}
