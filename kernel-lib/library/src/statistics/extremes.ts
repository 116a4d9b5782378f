/**
 * The smallest of any number of values; Infinity of none, NaN when one is NaN. `Math.min(...values)` puts every value
 * on the stack, which holds some 125,000.
 */
export function smallestOf(values: Iterable<number>): number {
  let smallest = Number.POSITIVE_INFINITY;
  for (const value of values) smallest = Math.min(smallest, value);
  return smallest;
}

/** The largest of any number of values; -Infinity of none, NaN when one is NaN. */
export function largestOf(values: Iterable<number>): number {
  let largest = Number.NEGATIVE_INFINITY;
  for (const value of values) largest = Math.max(largest, value);
  return largest;
}
