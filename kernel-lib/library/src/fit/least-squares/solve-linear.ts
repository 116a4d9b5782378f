import { exactResidual } from "../../statistics/linear-algebra/exact-residual";
import { normOf } from "../../statistics/linear-algebra/norm-of";
import {
  applyQTransposed,
  decomposeQr,
  inverseOfR,
  type QrDecomposition,
  qrWorkspace,
} from "../../statistics/linear-algebra/qr-decomposition";

/** A linear least-squares solution. */
export interface LinearSolution {
  readonly coefficients: Float64Array;
  /** y minus fitted, in the scale of the rows that were given */
  readonly residuals: Float64Array;
  readonly rss: number;
  /** (XᵀX)⁻¹ */
  readonly inverseGram: readonly (readonly number[])[];
  /** diagonal of the hat matrix */
  readonly leverage: readonly number[];
  /** positions of columns that depend on the others; empty when all stand apart */
  readonly dependent: readonly number[];
  /** (XᵀX)⁻¹ = root rootᵀ, row by row: what keeps digits when coefficients are recombined */
  readonly root: readonly (readonly number[])[];
}

/**
 * Ordinary least squares by Householder QR on columns scaled to length 1, with refinement: residuals in double-double
 * arithmetic (`exactResidual`) and corrections from the same QR until they stop shrinking (Björck 1967).
 */
export function solveLinear(columns: readonly Float64Array[], y: Float64Array): LinearSolution {
  const n = y.length;
  const p = columns.length;
  const norms = columns.map((column) => normOf(column) || 1);
  const packed = new Float64Array(n * p);
  columns.forEach((column, j) => {
    for (let i = 0; i < n; i++) packed[j * n + i] = column[i] / norms[j];
  });
  const qr = qrWorkspace(n, p);
  decomposeQr(qr, packed);
  let rank = 0;
  while (rank < p && Math.abs(qr.diagonal[rank]) > 1e-14 * Math.abs(qr.diagonal[0])) rank++;

  const coefficients = new Float64Array(p);
  let residuals: Float64Array = Float64Array.from(y);
  let last = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 8; round++) {
    const correction = backSolve(qr, rank, residuals);
    let size = 0;
    for (let j = 0; j < p; j++) size += correction[j] ** 2;
    if (round > 0 && size > 0.25 * last) break;
    last = size;
    for (let j = 0; j < p; j++) coefficients[j] += correction[j] / norms[j];
    residuals = exactResidual(y, columns, coefficients);
  }

  const inverse = inverseOfR(qr, rank);
  const root = columns.map(() => new Array<number>(p).fill(0));
  for (let row = 0; row < rank; row++) {
    for (let c = row; c < rank; c++) root[qr.pivot[row]][c] = inverse[row * p + c] / norms[qr.pivot[row]];
  }
  const inverseGram = columns.map((_, a) =>
    columns.map((__, b) => root[a].reduce((sum, value, c) => sum + value * root[b][c], 0)),
  );
  const leverage: number[] = [];
  for (let i = 0; i < n; i++) {
    let total = 0;
    for (let c = 0; c < rank; c++) {
      let entry = 0;
      for (let j = 0; j < p; j++) entry += columns[j][i] * root[j][c];
      total += entry * entry;
    }
    leverage.push(Math.min(1, total));
  }
  return {
    coefficients,
    residuals,
    rss: residuals.reduce((sum, value) => sum + value * value, 0),
    inverseGram,
    leverage,
    dependent: Array.from(qr.pivot.subarray(rank)),
    root,
  };
}

function backSolve(qr: QrDecomposition, rank: number, right: Float64Array): Float64Array {
  const rotated = Float64Array.from(right);
  applyQTransposed(qr, rotated);
  const solution = new Float64Array(qr.columns);
  for (let k = rank - 1; k >= 0; k--) {
    let sum = rotated[k];
    for (let c = k + 1; c < rank; c++) sum -= qr.packed[c * qr.rows + k] * solution[qr.pivot[c]];
    solution[qr.pivot[k]] = sum / qr.diagonal[k];
  }
  return solution;
}
