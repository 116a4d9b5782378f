import { largestOf } from "../extremes";

/** The Euclidean length of a vector of any number of values, scaled so that no square overflows: √Σx². */
export function normOf(vector: ArrayLike<number>): number {
  const sizes = Float64Array.from(vector, Math.abs);
  const scale = largestOf(sizes);
  if (scale === 0 || sizes.length === 0) return 0;
  if (!(scale < Number.POSITIVE_INFINITY)) return scale;
  return scale * Math.sqrt(sizes.reduce((sum, size) => sum + (size / scale) ** 2, 0));
}
