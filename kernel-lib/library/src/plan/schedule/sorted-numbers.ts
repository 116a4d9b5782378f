/** The numbers 0 to count − 1 by a key, whole and below 1e15 / count; equal keys in their own order. */
export function sortedNumbers(count: number, key: (at: number) => number): Int32Array {
  const keys = new Float64Array(count);
  for (let at = 0; at < count; at++) keys[at] = key(at) * count + at;
  keys.sort();
  const sorted = new Int32Array(count);
  for (let at = 0; at < count; at++) sorted[at] = ((keys[at] % count) + count) % count;
  return sorted;
}
