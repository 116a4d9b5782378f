/**
 * The band that a thickness lies in, bands laid side by side from 0; its lower end counts in.
 *
 * @returns from and to [mm]
 * @example
 * thicknessBand(9.3, 2); // → [8, 10]
 */
export function thicknessBand(thicknessMm: number, bandMm: number): readonly [number, number] {
  const from = Math.floor(thicknessMm / bandMm) * bandMm;
  return [Number(from.toFixed(2)), Number((from + bandMm).toFixed(2))];
}
