import { smallestOf } from "../../statistics/extremes";
import { normOf } from "../../statistics/linear-algebra/norm-of";
import { solveNonnegative } from "../least-squares/solve-nonnegative";

/**
 * A direction along which no row falls and some row rises, or null when there is none: the likelihood of outcomes whose log
 * is concave in these rows then climbs for ever along it, and has no top (Albert & Anderson 1984; Kaufmann 1988).
 *
 * By Stiemke's lemma there is none exactly when positive weights bring the rows to a sum of zero, so the sum is brought as
 * near to zero as weights ≥ 1 allow (`solveNonnegative`): what remains is such a direction.
 *
 * @param rows each a linear form in the parameters that the likelihood does not lose by raising
 * @example
 * recessionDirection([[1, 0], [1, 1], [-1, 2]]) === null; // → false
 * recessionDirection([[1, 0], [-1, 1], [-1, -1]]); // → null
 */
export function recessionDirection(rows: readonly (readonly number[])[]): readonly number[] | null {
  const vectors = rows.flatMap((row) => {
    const length = normOf(row);
    return length > 0 ? [Float64Array.from(row, (entry) => entry / length)] : [];
  });
  if (vectors.length === 0) return null;
  const target = new Float64Array(rows[0].length);
  for (const vector of vectors) for (let k = 0; k < target.length; k++) target[k] -= vector[k];
  const direction = Array.from(solveNonnegative(vectors, target).residual, (entry) => -entry);
  const size = normOf(direction);
  if (size < SMALLEST) return null;
  const rises = vectors.map((vector) => direction.reduce((sum, entry, k) => sum + entry * vector[k], 0) / size);
  // a search that did not settle tells of no direction
  if (smallestOf(rises) < -SMALLEST) return null;
  return direction.map((entry) => entry / size);
}

/** Rises below this share of a row's length are rounding. */
const SMALLEST = 1e-8;
