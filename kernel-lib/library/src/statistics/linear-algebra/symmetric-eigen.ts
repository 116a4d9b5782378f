/** Eigenvalues in falling order and, under the same index, their unit eigenvectors. */
export interface SymmetricEigen {
  readonly values: readonly number[];
  readonly vectors: readonly (readonly number[])[];
}

/**
 * Eigenvalues and eigenvectors of a small symmetric matrix by Jacobi's rotations (1846), accurate to rounding.
 *
 * @example
 * symmetricEigen([[2, 1], [1, 2]]).values[0]; // → 3
 */
export function symmetricEigen(matrix: readonly (readonly number[])[]): SymmetricEigen {
  const n = matrix.length;
  const a = matrix.map((row) => [...row]);
  const v: number[][] = matrix.map((_, i) => matrix.map((__, j) => (i === j ? 1 : 0)));
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0;
    let on = 0;
    for (let i = 0; i < n; i++) {
      on += a[i][i] ** 2;
      for (let j = i + 1; j < n; j++) off += a[i][j] ** 2;
    }
    if (off <= 1e-34 * on || off === 0) break;
    for (let p = 0; p < n; p++) {
      for (let q = p + 1; q < n; q++) {
        if (a[p][q] === 0) continue;
        const theta = (a[q][q] - a[p][p]) / (2 * a[p][q]);
        const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        const c = 1 / Math.sqrt(t * t + 1);
        const s = t * c;
        for (let k = 0; k < n; k++) {
          const left = a[k][p];
          a[k][p] = c * left - s * a[k][q];
          a[k][q] = s * left + c * a[k][q];
        }
        for (let k = 0; k < n; k++) {
          const left = a[p][k];
          a[p][k] = c * left - s * a[q][k];
          a[q][k] = s * left + c * a[q][k];
          const side = v[k][p];
          v[k][p] = c * side - s * v[k][q];
          v[k][q] = s * side + c * v[k][q];
        }
      }
    }
  }
  const order = a.map((_, i) => i).sort((i, j) => a[j][j] - a[i][i]);
  return { values: order.map((i) => a[i][i]), vectors: order.map((i) => v.map((row) => row[i])) };
}
