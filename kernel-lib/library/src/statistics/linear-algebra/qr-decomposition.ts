/**
 * A Householder QR of a tall matrix with column pivoting, kept in typed arrays.
 *
 * Ours rather than a library's because a curve fit with 12 points and 3 parameters makes one at every step of every
 * bootstrap refit: ml-matrix 6.15.1 takes four to seven times as long on such sizes, allocates each time and does not pivot.
 */
export interface QrDecomposition {
  readonly rows: number;
  readonly columns: number;
  /** reflectors below the diagonal, R above it; column by column */
  readonly packed: Float64Array;
  readonly diagonal: Float64Array;
  /** `pivot[k]` is the column of the input that stands k-th in R */
  readonly pivot: Int32Array;
  /** what is left of each column's squared length below the rows done */
  readonly squares: Float64Array;
  /** the squared length from which `squares` was last worked down */
  readonly first: Float64Array;
}

/** Makes room for a decomposition of the given size, to be filled by `decomposeQr` as often as needed. */
export function qrWorkspace(rows: number, columns: number): QrDecomposition {
  return {
    rows,
    columns,
    packed: new Float64Array(rows * columns),
    diagonal: new Float64Array(columns),
    pivot: new Int32Array(columns),
    squares: new Float64Array(columns),
    first: new Float64Array(columns),
  };
}

/**
 * Fills `qr` with the pivoted Householder decomposition of the first `columns` columns of `matrix` (column by column,
 * `rows` long each), after Businger & Golub (1965).
 */
export function decomposeQr(qr: QrDecomposition, matrix: Float64Array): void {
  const { rows, columns, packed, diagonal, pivot, squares, first } = qr;
  for (let j = 0; j < columns; j++) {
    const at = j * rows;
    let square = 0;
    for (let i = 0; i < rows; i++) {
      const value = matrix[at + i];
      packed[at + i] = value;
      square += value * value;
    }
    pivot[j] = j;
    squares[j] = square;
    first[j] = square;
  }
  for (let k = 0; k < columns; k++) {
    bringLongestForward(qr, k);
    const at = k * rows;
    let norm = 0;
    for (let i = k; i < rows; i++) norm += packed[at + i] * packed[at + i];
    norm = Math.sqrt(norm);
    if (!Number.isFinite(norm) || norm < 1e-140) norm = carefulNorm(packed, at + k, at + rows);
    if (norm === 0 || k >= rows) {
      diagonal[k] = 0;
      continue;
    }
    if (packed[at + k] < 0) norm = -norm;
    for (let i = k; i < rows; i++) packed[at + i] /= norm;
    packed[at + k] += 1;
    const head = packed[at + k];
    for (let j = k + 1; j < columns; j++) {
      const other = j * rows;
      let dot = 0;
      for (let i = k; i < rows; i++) dot += packed[at + i] * packed[other + i];
      dot /= -head;
      for (let i = k; i < rows; i++) packed[other + i] += dot * packed[at + i];
      squares[j] -= packed[other + k] * packed[other + k];
      if (!(squares[j] > 1e-8 * first[j])) {
        let square = 0;
        for (let i = k + 1; i < rows; i++) square += packed[other + i] * packed[other + i];
        squares[j] = square;
        first[j] = square;
      }
    }
    diagonal[k] = -norm;
  }
}

/** Replaces `vector` (length `rows`) by Qᵀ times it. */
export function applyQTransposed(qr: QrDecomposition, vector: Float64Array): void {
  const { rows, columns, packed, diagonal } = qr;
  for (let k = 0; k < columns; k++) {
    if (diagonal[k] === 0) continue;
    const at = k * rows;
    let dot = 0;
    for (let i = k; i < rows; i++) dot += packed[at + i] * vector[i];
    dot /= -packed[at + k];
    for (let i = k; i < rows; i++) vector[i] += dot * packed[at + i];
  }
}

/**
 * The inverse of R, upper triangular and row by row, in pivoted order; rows and columns from `rank` on are left zero.
 */
export function inverseOfR(qr: QrDecomposition, rank: number): Float64Array {
  const { rows, columns: n, packed, diagonal } = qr;
  const inverse = new Float64Array(n * n);
  for (let column = 0; column < rank; column++) {
    inverse[column * n + column] = 1 / diagonal[column];
    for (let row = column - 1; row >= 0; row--) {
      let sum = 0;
      for (let k = row + 1; k <= column; k++) sum += packed[k * rows + row] * inverse[k * n + column];
      inverse[row * n + column] = -sum / diagonal[row];
    }
  }
  return inverse;
}

function bringLongestForward(qr: QrDecomposition, k: number): void {
  const { rows, columns, packed, pivot, squares, first } = qr;
  let best = k;
  for (let j = k + 1; j < columns; j++) if (squares[j] > squares[best] * (1 + 1e-12)) best = j;
  if (best === k) return;
  for (let i = 0; i < rows; i++) {
    const kept = packed[k * rows + i];
    packed[k * rows + i] = packed[best * rows + i];
    packed[best * rows + i] = kept;
  }
  const kept = pivot[k];
  pivot[k] = pivot[best];
  pivot[best] = kept;
  squares[best] = squares[k];
  first[best] = first[k];
}

function carefulNorm(values: Float64Array, from: number, to: number): number {
  let largest = 0;
  for (let i = from; i < to; i++) largest = Math.max(largest, Math.abs(values[i]));
  if (largest === 0 || !Number.isFinite(largest)) return 0;
  let sum = 0;
  for (let i = from; i < to; i++) sum += (values[i] / largest) ** 2;
  return largest * Math.sqrt(sum);
}
