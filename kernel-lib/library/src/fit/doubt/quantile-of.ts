/** Quantile of values sorted upwards, type 7 of Hyndman & Fan (1996), as R's default. */
export function quantileOf(sorted: readonly number[], probability: number): number {
  const place = probability * (sorted.length - 1);
  const below = Math.floor(place);
  const above = Math.min(sorted.length - 1, below + 1);
  return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
}
