import type { CodedPoint } from "../factor/factor";

/** At most so many points in a grid, whatever the number of factors. */
const MOST_POINTS = 1000;

/** A grid over ranges, as many levels a factor as make at most a thousand points (21 for one or two factors), ends among them. */
export function gridOf(ranges: readonly (readonly [number, number])[]): readonly CodedPoint[] {
  let levels = 21;
  while (levels > 2 && levels ** ranges.length > MOST_POINTS) levels--;
  return Array.from({ length: levels ** ranges.length }, (_, cell) =>
    ranges.map(([low, high], at) => low + ((high - low) * (Math.floor(cell / levels ** at) % levels)) / (levels - 1)),
  );
}
