import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { seededRandom } from "../../statistics/random/seeded-random";

/** Which Latin square. */
export interface LatinSquareOptions {
  /** treatments, and so rows and columns: 2 to 100 */
  readonly size: number;
  /** 1 unless given; the same seed gives the same square everywhere */
  readonly seed?: number;
}

/**
 * A Latin square: each treatment once in every row and once in every column, so that two things that cannot be held still, such
 * as mornings (rows) and turns of the oven (columns), cancel out of treatment means. Cyclic, entry (row + column) mod size, with
 * rows, columns and treatments shuffled by the seed: not every square that exists can come out, from size 4 on.
 *
 * @param options size and seed
 * @returns rows of treatments, counted from 0
 * @example
 * latinSquare({ size: 3, seed: 1 }); // → [[2, 0, 1], [0, 1, 2], [1, 2, 0]]
 *
 * Reference: Fisher & Yates, Statistical Tables, 6th ed. 1963 (from memory).
 */
export function latinSquare({ size, seed = 1 }: LatinSquareOptions): readonly (readonly number[])[] {
  if (!(Number.isInteger(size) && size >= 2 && size <= 100))
    fail("latinSquare: size", "must be a whole number from 2 to 100", size);
  const random = seededRandom(seed);
  const shuffled = (): number[] => {
    const list = Array.from({ length: size }, (_, at) => at);
    for (let last = size - 1; last > 0; last--) {
      const other = random.integer(last + 1);
      [list[last], list[other]] = [list[other], list[last]];
    }
    return list;
  };
  const rows = shuffled();
  const columns = shuffled();
  const treatments = shuffled();
  return freezeDeep(rows.map((row) => columns.map((column) => treatments[(row + column) % size])));
}
