/** The unit matrix, row by row. */
export function identity(size: number): Float64Array {
  const matrix = new Float64Array(size * size);
  for (let at = 0; at < size; at++) matrix[at * size + at] = 1;
  return matrix;
}

/** The product of two square matrices, row by row. */
export function product(one: Float64Array, other: Float64Array, size: number): Float64Array {
  const out = new Float64Array(size * size);
  for (let i = 0; i < size; i++)
    for (let k = 0; k < size; k++) {
      const value = one[i * size + k];
      if (value === 0) continue;
      for (let j = 0; j < size; j++) out[i * size + j] += value * other[k * size + j];
    }
  return out;
}

/** A square matrix, row by row, times a vector. */
export function times(matrix: Float64Array, vector: Float64Array, size: number): Float64Array {
  const out = new Float64Array(size);
  for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) out[i] += matrix[i * size + j] * vector[j];
  return out;
}

/** The sum of the products of two vectors' parts. */
export function dot(one: ArrayLike<number>, other: ArrayLike<number>): number {
  let sum = 0;
  for (let at = 0; at < one.length; at++) sum += one[at] * other[at];
  return sum;
}
