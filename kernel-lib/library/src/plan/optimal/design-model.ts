import { fail } from "../../check/check";
import { choleskyOrNull } from "../../statistics/linear-algebra/cholesky";

/** A model that is linear in its coefficients, as a plan sees it: y = Σ coefficient · regressor. */
export interface DesignModel<Point = readonly number[]> {
  /** names of the regressors, in the order of a row */
  readonly terms: readonly string[];
  /** the regressors at a point */
  readonly row: (point: Point) => readonly number[];
}

/** Below this share of itself that the terms before it leave, a term counts as following from them: our judgement. */
const LEFT = 1e-10;

/** The rows of a model at points, one after the other. */
export function rowsOf<Point>(where: string, model: DesignModel<Point>, points: readonly Point[]): Float64Array {
  const size = model.terms.length;
  if (size === 0) fail(where, "must have a model with at least one term", model.terms);
  const rows = new Float64Array(points.length * size);
  for (const [at, point] of points.entries()) {
    const row = model.row(point);
    if (row.length !== size || !row.every(Number.isFinite))
      fail(where, `must give a row of ${size} finite numbers at every point, one for each term`, { point, row });
    rows.set(row, at * size);
  }
  return rows;
}

/** Σ z zᵀ over rows, row by row. */
export function momentsOf(rows: Float64Array, size: number): Float64Array {
  const moments = new Float64Array(size * size);
  for (let at = 0; at < rows.length; at += size) {
    for (let i = 0; i < size; i++) {
      const value = rows[at + i];
      for (let j = 0; j <= i; j++) moments[i * size + j] += value * rows[at + j];
    }
  }
  for (let i = 0; i < size; i++) for (let j = 0; j < i; j++) moments[j * size + i] = moments[i * size + j];
  return moments;
}

/** L with L Lᵀ = moments; null where a term follows from those before it. */
export function factorOf(moments: Float64Array, size: number): Float64Array | null {
  return choleskyOrNull(moments, size, LEFT);
}

/** The first term that follows from those before it, by its place. */
export function dependentTerm(moments: Float64Array, size: number): number {
  for (let count = 1; count < size; count++) {
    const leading = new Float64Array(count * count);
    for (let i = 0; i < count; i++) for (let j = 0; j < count; j++) leading[i * count + j] = moments[i * size + j];
    if (factorOf(leading, count) === null) return count - 1;
  }
  return size - 1;
}
