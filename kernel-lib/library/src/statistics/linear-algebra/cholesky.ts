import { fail } from "../../check/check";

/**
 * Lower triangle L with A = L·Lᵀ of a symmetric positive definite matrix, both stored row by row (n × n).
 *
 * @example
 * choleskyFactor(Float64Array.of(4, 2, 2, 5), 2)[2]; // → 1
 * choleskyFactor(Float64Array.of(1, 2, 2, 1), 2); // throws "must be positive definite"
 *
 * Reference: Golub & Van Loan, Matrix Computations, algorithm 4.2.1.
 */
export function choleskyFactor(matrix: Float64Array, size: number): Float64Array {
  return choleskyOrNull(matrix, size) ?? fail("choleskyFactor: matrix", "must be positive definite", [...matrix]);
}

/** The same, or null where a pivot is not above `smallest` of its diagonal entry: where a direction is open, or falls. */
export function choleskyOrNull(matrix: Float64Array, size: number, smallest = 0): Float64Array | null {
  const lower = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let column = 0; column <= row; column++) {
      let sum = matrix[row * size + column];
      for (let k = 0; k < column; k++) sum -= lower[row * size + k] * lower[column * size + k];
      if (row > column) lower[row * size + column] = sum / lower[column * size + column];
      else {
        if (!(sum > smallest * Math.abs(matrix[row * size + row]) && Number.isFinite(sum))) return null;
        lower[row * size + row] = Math.sqrt(sum);
      }
    }
  }
  return lower;
}

/** Solves L·x = b in place. */
export function solveLower(lower: Float64Array, size: number, b: Float64Array): Float64Array {
  for (let row = 0; row < size; row++) {
    let sum = b[row];
    for (let k = 0; k < row; k++) sum -= lower[row * size + k] * b[k];
    b[row] = sum / lower[row * size + row];
  }
  return b;
}

/** Solves Lᵀ·x = b in place. */
export function solveUpper(lower: Float64Array, size: number, b: Float64Array): Float64Array {
  for (let row = size - 1; row >= 0; row--) {
    let sum = b[row];
    for (let k = row + 1; k < size; k++) sum -= lower[k * size + row] * b[k];
    b[row] = sum / lower[row * size + row];
  }
  return b;
}

/** The inverse of A from its factor L, row by row. */
export function inverseFrom(lower: Float64Array, size: number): Float64Array {
  const inverse = new Float64Array(size * size);
  for (let column = 0; column < size; column++) {
    const unit = new Float64Array(size);
    unit[column] = 1;
    solveUpper(lower, size, solveLower(lower, size, unit));
    for (let row = 0; row < size; row++) inverse[row * size + column] = unit[row];
  }
  return inverse;
}
