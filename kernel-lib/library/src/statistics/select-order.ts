/**
 * Puts the value that would stand at index `wanted` of the sorted array there, smaller ones before it and larger ones
 * after (Hoare's selection, 1961), and returns it. Reorders `values` between `from` and `to`, both included.
 */
export function selectOrder(
  values: Float64Array,
  wanted: number,
  from: number = 0,
  to: number = values.length - 1,
): number {
  let low = from;
  let high = to;
  while (high > low) {
    const pivot = values[wanted];
    let left = low;
    let right = high;
    while (left <= right) {
      while (values[left] < pivot) left++;
      while (values[right] > pivot) right--;
      if (left <= right) {
        const swap = values[left];
        values[left] = values[right];
        values[right] = swap;
        left++;
        right--;
      }
    }
    if (right < wanted) low = left;
    if (wanted < left) high = right;
  }
  return values[wanted];
}
