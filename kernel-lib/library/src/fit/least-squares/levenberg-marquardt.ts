import {
  applyQTransposed,
  decomposeQr,
  type QrDecomposition,
  qrWorkspace,
} from "../../statistics/linear-algebra/qr-decomposition";

/** A least-squares problem as the solver sees it: free parameters by position, arrays reused. */
export interface ResidualProblem {
  readonly residualCount: number;
  readonly start: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** writes the residuals at `parameters` into `out` */
  readonly residuals: (parameters: Float64Array, out: Float64Array) => void;
  /** writes the derivative of every residual, one column a parameter; left out, central differences are taken */
  readonly jacobian?: (parameters: Float64Array, out: Float64Array) => void;
  /** step of the central differences as a share of the parameter [-]; 6.06e-6, the cube root of rounding, unless given */
  readonly relativeStep?: number;
  /** 500 unless given; 0 only takes the derivatives at the start */
  readonly maxIterations?: number;
}

/** Where the solver stopped, and why in words. */
export interface ResidualSolution {
  readonly parameters: readonly number[];
  readonly residuals: readonly number[];
  /** at the solution, one column a parameter */
  readonly jacobian: readonly number[];
  readonly rss: number;
  readonly converged: boolean;
  readonly reason: string;
  /** the derivatives leave some direction undetermined */
  readonly singular: boolean;
  readonly iterations: number;
  readonly evaluations: number;
}

/** A further step would then move the fit by less than this share of its own standard error: Bates & Watts (1981). */
const OFFSET_ENOUGH = 1e-8;
/** Forward differences, half the work, serve until the relative offset falls below this or a step fails. */
const COARSE_ENOUGH = 1e-4;
const ROUNDING = 2.220446049250313e-16;
const ROOT_ROUNDING = 1.4901161193847656e-8;
const CUBE_ROOT_ROUNDING = 6.055454452393343e-6;
const SETTLED = "converged: a further step would move nothing by more than 1e-8 of its standard error";
const ROUGH =
  "stopped: no step lowers the sum of squares though the derivatives say one should, so the model jumps or its numbers are noisy; a larger relativeStep may help";
/** A search that can no longer move is trusted only if its derivatives agree: an offset this far from zero says they do not. */
const STUCK_OFFSET = 0.1;
/** sum of squares against that of the model itself below which residuals are rounding, and derivatives cannot agree */
const NOISELESS = 1e-24;
const IMMOVABLE = "converged: the parameters cannot change further within rounding";
/**
 * Share of its own column below which a diagonal entry of R counts as zero, so that the direction is undetermined. Central
 * differences carry errors of about 1e-10; the hardest of the NIST StRD sets, Bennett5, stands at 5e-5.
 */
export const UNDETERMINED: number = 1e-9;

/**
 * Minimises a sum of squares by the Levenberg–Marquardt method in the form of Moré (1978): scaled trust region with
 * the running maximum of the column norms, pivoted orthogonal solve, gain-ratio control. Bounds are kept by holding
 * back parameters that press against one and by clipping steps. Near the end full steps are mixed with the one before
 * (Anderson 1965). It stops by the relative offset of Bates & Watts
 * (1981), which is free of units, or at the limit of rounding. A run that ends with an undetermined direction or
 * without convergence is tried again from the same start with a shorter first step, and the best end is returned.
 */
export function levenbergMarquardt(problem: ResidualProblem): ResidualSolution {
  let best = run(problem, 100);
  if (best.converged && !best.singular) return best;
  for (const firstStep of [1, 0.1, 0.01]) {
    const next = run(problem, firstStep);
    if (isBetter(next, best)) best = next;
    if (best.converged && !best.singular) break;
  }
  return best;
}

function isBetter(next: ResidualSolution, best: ResidualSolution): boolean {
  if (next.rss < best.rss * (1 - 1e-9)) return true;
  return next.rss <= best.rss * (1 + 1e-9) && next.converged && !best.converged;
}

function run(problem: ResidualProblem, firstStep: number): ResidualSolution {
  const m = problem.residualCount;
  const n = problem.start.length;
  const key = m * 65536 + n;
  const space = idle.get(key) ?? workspaceOf(m, n);
  idle.delete(key);
  try {
    return search(problem, firstStep, space);
  } finally {
    if (idle.size >= 16) idle.clear();
    idle.set(key, space);
  }
}

/** The arrays that one search needs; kept between searches, as refits by the thousand are of one size. */
interface Workspace {
  readonly parameters: Float64Array;
  readonly trial: Float64Array;
  residuals: Float64Array;
  trialResiduals: Float64Array;
  readonly jacobian: Float64Array;
  readonly freeJacobian: Float64Array;
  readonly freeIndex: Int32Array;
  readonly rotated: Float64Array;
  readonly scale: Float64Array;
  readonly norms: Float64Array;
  readonly step: Float64Array;
  readonly lastParameters: Float64Array;
  readonly lastStep: Float64Array;
  readonly ahead: Float64Array;
  readonly behind: Float64Array;
  /** by number of columns */
  readonly qr: QrDecomposition[];
  readonly trust: TrustSpace;
}

/** One workspace a size, while no search is using it: a search inside a residual function makes its own. */
const idle = new Map<number, Workspace>();

function workspaceOf(m: number, n: number): Workspace {
  return {
    parameters: new Float64Array(n),
    trial: new Float64Array(n),
    residuals: new Float64Array(m),
    trialResiduals: new Float64Array(m),
    jacobian: new Float64Array(m * n),
    freeJacobian: new Float64Array(m * n),
    freeIndex: new Int32Array(n),
    rotated: new Float64Array(m),
    scale: new Float64Array(n),
    norms: new Float64Array(n),
    step: new Float64Array(n),
    lastParameters: new Float64Array(n),
    lastStep: new Float64Array(n),
    ahead: new Float64Array(m),
    behind: new Float64Array(m),
    qr: [],
    trust: trustSpaceOf(n),
  };
}

function search(problem: ResidualProblem, firstStep: number, space: Workspace): ResidualSolution {
  const { lower, upper, start, residualCount: m } = problem;
  const n = start.length;
  const maxIterations = problem.maxIterations ?? 500;
  const { parameters, trial, jacobian, freeIndex, rotated, scale, norms, step } = space;

  for (let j = 0; j < n; j++) parameters[j] = Math.min(upper[j], Math.max(lower[j], start[j]));
  let evaluations = 1;
  problem.residuals(parameters, space.residuals);
  let rss = sumOfSquares(space.residuals);
  const end = (converged: boolean, reason: string, iterations: number, singular: boolean): ResidualSolution => ({
    parameters: numbersOf(parameters),
    residuals: numbersOf(space.residuals),
    jacobian: numbersOf(jacobian),
    rss,
    converged,
    reason,
    singular,
    iterations,
    evaluations,
  });
  if (!Number.isFinite(rss)) {
    return end(false, "stopped: the model is not a finite number at the starting values", 0, true);
  }
  if (maxIterations === 0) {
    evaluations += differentiate(problem, space, false);
    return end(true, "taken where it stands", 0, false);
  }
  if (n === 0) return end(true, "nothing to fit: every parameter is fixed", 0, false);

  const stuck = (offset: number): ResidualSolution => {
    let size = 0;
    for (let j = 0; j < n; j++) size += (norms[j] * parameters[j]) ** 2;
    if (rss < NOISELESS * size) return end(true, "converged: the residuals are zero to rounding", iteration, singular);
    return offset < STUCK_OFFSET ? end(true, IMMOVABLE, iteration, singular) : end(false, ROUGH, iteration, singular);
  };

  let radius = 0;
  let multiplier = 0;
  let polishing = false;
  let stalls = 0;
  let leastOffset = Number.POSITIVE_INFINITY;
  let iteration = 0;
  let singular = false;
  let last = 0;
  let coarse = problem.jacobian === undefined && problem.relativeStep === undefined;
  while (iteration < maxIterations) {
    evaluations += differentiate(problem, space, coarse);
    const residuals = space.residuals;
    let freeCount = 0;
    for (let j = 0; j < n; j++) {
      const at = j * m;
      let slope = 0;
      let square = 0;
      for (let i = 0; i < m; i++) {
        const value = jacobian[at + i];
        slope += value * residuals[i];
        square += value * value;
      }
      if (!Number.isFinite(square)) {
        return end(false, "stopped: the model has no finite derivative at the values reached", iteration, true);
      }
      const norm = Math.sqrt(square);
      norms[j] = norm;
      if (iteration === 0) scale[j] = norm === 0 ? 1 : norm;
      else if (norm > scale[j]) scale[j] = norm;
      const pressed = (parameters[j] <= lower[j] && slope > 0) || (parameters[j] >= upper[j] && slope < 0);
      if (!pressed) freeIndex[freeCount++] = j;
    }
    if (rss === 0) return end(true, "converged: the residuals are zero", iteration, false);
    if (freeCount === 0) return end(true, "converged: every free parameter rests at a bound", iteration, false);
    if (iteration === 0) {
      let size = 0;
      for (let j = 0; j < n; j++) size += (scale[j] * parameters[j]) ** 2;
      radius = firstStep * (Math.sqrt(size) || 1);
    }

    let columns = jacobian;
    if (freeCount < n) {
      columns = space.freeJacobian;
      for (let k = 0; k < freeCount; k++) {
        const from = freeIndex[k] * m;
        for (let i = 0; i < m; i++) columns[k * m + i] = jacobian[from + i];
      }
    }
    space.qr[freeCount] ??= qrWorkspace(m, freeCount);
    const qr = space.qr[freeCount];
    decomposeQr(qr, columns);
    for (let i = 0; i < m; i++) rotated[i] = -residuals[i];
    applyQTransposed(qr, rotated);
    singular = m < freeCount || isSingular(qr, norms, freeIndex);

    let along = 0;
    for (let k = 0; k < Math.min(freeCount, m); k++) along += rotated[k] * rotated[k];
    const offset = Math.sqrt((along / freeCount) * (Math.max(1, m - freeCount) / rss));
    if (coarse && offset < COARSE_ENOUGH) {
      coarse = false;
      continue;
    }
    if (offset < OFFSET_ENOUGH) return end(true, SETTLED, iteration, singular);
    if (polishing) {
      stalls = offset > 0.95 * leastOffset ? stalls + 1 : 0;
      if (stalls === 2) {
        return end(
          true,
          "converged: the sum of squares cannot be lowered further within rounding",
          iteration,
          singular,
        );
      }
    }
    leastOffset = Math.min(leastOffset, offset);

    let rejected = false;
    for (;;) {
      multiplier = trustStep(space.trust, qr, rotated, scale, freeIndex, radius, multiplier, step);
      const mixing = multiplier === 0 && offset < 0.1 && !rejected;
      if (mixing) mixWithLast(space, freeCount, last);
      last = mixing || multiplier === 0 ? freeCount : 0;
      let length = 0;
      let relative = 0;
      for (let j = 0; j < n; j++) trial[j] = parameters[j];
      for (let k = 0; k < freeCount; k++) {
        const j = freeIndex[k];
        trial[j] = Math.min(upper[j], Math.max(lower[j], parameters[j] + step[k]));
        const moved = trial[j] - parameters[j];
        step[k] = moved;
        length += (scale[j] * moved) ** 2;
        relative = Math.max(relative, Math.abs(moved) / Math.max(Math.abs(parameters[j]), 1e-300));
      }
      length = Math.sqrt(length);
      if (iteration === 0 && length > 0) radius = Math.min(radius, length);

      problem.residuals(trial, space.trialResiduals);
      evaluations++;
      const trialRss = sumOfSquares(space.trialResiduals);
      let predictedRss = 0;
      for (let i = 0; i < m; i++) {
        let value = residuals[i];
        for (let k = 0; k < freeCount; k++) value += columns[k * m + i] * step[k];
        predictedRss += value * value;
      }
      const predicted = 1 - predictedRss / rss;
      const actual = trialRss <= 100 * rss ? 1 - trialRss / rss : -1;
      const ratio = predicted > 0 ? actual / predicted : 0;

      polishing = predicted < 1e-12 && Math.abs(actual) < 1e-11 && multiplier === 0;
      if (polishing || ratio >= 1e-4) {
        for (let j = 0; j < n; j++) parameters[j] = trial[j];
        space.residuals = space.trialResiduals;
        space.trialResiduals = residuals;
        rss = trialRss;
      }
      if (polishing) {
        if (relative <= ROUNDING) return stuck(offset);
        break;
      }
      if (mixing && !(ratio >= 1e-4)) {
        rejected = true;
        continue;
      }
      if (!(ratio > 0.25)) {
        let shrink = 0.5;
        if (actual < 0) shrink = Math.max(0.1, 0.5 / (1 + Math.min(10, -actual / Math.max(predicted, ROUNDING))));
        if (!(trialRss <= 100 * rss)) shrink = 0.1;
        radius = shrink * Math.min(radius, length * 10);
        multiplier /= shrink;
      } else if (multiplier === 0 || ratio >= 0.75) {
        radius = 2 * length;
        multiplier *= 0.5;
      }
      if (ratio >= 1e-4) break;
      rejected = true;
      if (coarse) {
        coarse = false;
        break;
      }
      if (relative <= 4 * ROUNDING || length === 0 || radius === 0) return stuck(offset);
    }
    iteration++;
  }
  return end(false, `stopped after ${maxIterations} steps without settling`, iteration, singular);
}

/**
 * Mixes a Gauss–Newton step with the last one (Anderson 1965, depth one), which turns the slow straight-line approach of a
 * curve with large residuals into a fast one. Keeps this step and where it starts for the next; `last` is how many
 * parameters the last one moved, 0 when it was none.
 */
function mixWithLast(space: Workspace, freeCount: number, last: number): void {
  const { parameters, step, scale, freeIndex, lastParameters, lastStep } = space;
  let top = 0;
  let bottom = 0;
  for (let k = 0; k < freeCount; k++) {
    const square = scale[freeIndex[k]] ** 2;
    const change = step[k] - lastStep[k];
    top += square * step[k] * change;
    bottom += square * change * change;
  }
  const share = last === freeCount && bottom > 0 ? top / bottom : 0;
  for (let k = 0; k < freeCount; k++) {
    const j = freeIndex[k];
    const own = step[k];
    if (Math.abs(share) < 3) step[k] -= share * (parameters[j] - lastParameters[k] + own - lastStep[k]);
    lastParameters[k] = parameters[j];
    lastStep[k] = own;
  }
}

/** A copy as a plain array, which costs a third of a typed one of this size. */
function numbersOf(values: Float64Array): number[] {
  const copy: number[] = [];
  for (let i = 0; i < values.length; i++) copy.push(values[i]);
  return copy;
}

function isSingular(qr: QrDecomposition, norms: Float64Array, freeIndex: Int32Array): boolean {
  for (let k = 0; k < qr.columns; k++) {
    if (Math.abs(qr.diagonal[k]) <= UNDETERMINED * norms[freeIndex[qr.pivot[k]]]) return true;
  }
  return false;
}

function sumOfSquares(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i] * values[i];
  return Number.isFinite(sum) ? sum : Number.POSITIVE_INFINITY;
}

/**
 * Fills the Jacobian: from the problem itself, by forward differences while `coarse`, or by central differences that turn one-sided (still second order) at a
 * bound. Returns how many times the residuals were worked out.
 */
function differentiate(problem: ResidualProblem, space: Workspace, coarse: boolean): number {
  const { lower, upper, residualCount: m, start } = problem;
  const { parameters, residuals, jacobian: out, trial: moved, ahead, behind } = space;
  if (problem.jacobian) {
    problem.jacobian(parameters, out);
    return 0;
  }
  const n = start.length;
  const share = problem.relativeStep ?? CUBE_ROOT_ROUNDING;
  for (let j = 0; j < n; j++) moved[j] = parameters[j];
  for (let j = 0; j < n; j++) {
    const value = parameters[j];
    const size = Math.abs(value) || 1e-2 * Math.abs(start[j]) || 1;
    const at = j * m;
    if (coarse) {
      const forward = value + ROOT_ROUNDING * size <= upper[j];
      moved[j] = value + (forward ? ROOT_ROUNDING : -ROOT_ROUNDING) * size;
      problem.residuals(moved, ahead);
      const width = moved[j] - value;
      for (let i = 0; i < m; i++) out[at + i] = (ahead[i] - residuals[i]) / width;
      moved[j] = value;
      continue;
    }
    const room = Math.max(upper[j] - value, value - lower[j]);
    const wanted = Math.min(share * size, room / 2);
    const up = value + wanted;
    const down = value - wanted;
    if (up <= upper[j] && down >= lower[j]) {
      moved[j] = up;
      problem.residuals(moved, ahead);
      moved[j] = down;
      problem.residuals(moved, behind);
      const width = up - down;
      for (let i = 0; i < m; i++) out[at + i] = (ahead[i] - behind[i]) / width;
    } else {
      const near = up <= upper[j] ? up : down;
      const width = near - value;
      moved[j] = near;
      problem.residuals(moved, ahead);
      moved[j] = value + 2 * width;
      problem.residuals(moved, behind);
      for (let i = 0; i < m; i++) out[at + i] = (4 * ahead[i] - 3 * residuals[i] - behind[i]) / (2 * width);
    }
    moved[j] = value;
  }
  return coarse ? n : 2 * n;
}

/** Arrays for `trustStep`. */
interface TrustSpace {
  readonly capacity: number;
  readonly triangle: Float64Array;
  readonly lowerDiagonal: Float64Array;
  readonly right: Float64Array;
  readonly direction: Float64Array;
  readonly work: Float64Array;
  readonly own: Float64Array;
}

function trustSpaceOf(capacity: number): TrustSpace {
  return {
    capacity,
    triangle: new Float64Array(capacity * capacity),
    lowerDiagonal: new Float64Array(capacity),
    right: new Float64Array(capacity),
    direction: new Float64Array(capacity),
    work: new Float64Array(capacity),
    own: new Float64Array(capacity),
  };
}

/**
 * Writes the step that minimises the linear model inside a scaled ball, after Moré (1978), sections 3 and 5, and returns
 * the multiplier that keeps it there: 0 for the full Gauss–Newton step.
 */
function trustStep(
  space: TrustSpace,
  qr: QrDecomposition,
  rotated: Float64Array,
  scale: Float64Array,
  freeIndex: Int32Array,
  radius: number,
  multiplier: number,
  step: Float64Array,
): number {
  const { columns: n, rows, packed, diagonal, pivot } = qr;
  const { capacity, triangle, lowerDiagonal, direction, work, own } = space;
  let rank = n;
  for (let k = 0; k < n; k++) {
    own[k] = scale[freeIndex[pivot[k]]];
    if (diagonal[k] === 0 && rank === n) rank = k;
  }
  for (let k = 0; k < n; k++) direction[k] = k < rank ? rotated[k] : 0;
  for (let k = rank - 1; k >= 0; k--) {
    direction[k] /= diagonal[k];
    for (let i = 0; i < k; i++) direction[i] -= packed[k * rows + i] * direction[k];
  }
  let length = scaledLength(space, n);
  let excess = length - radius;
  if (Number.isFinite(length) && excess <= 0.1 * radius) {
    for (let k = 0; k < n; k++) step[pivot[k]] = direction[k];
    return 0;
  }

  let low = 0;
  if (rank === n && Number.isFinite(length)) {
    for (let k = 0; k < n; k++) direction[k] = own[k] * (work[k] / length);
    let square = 0;
    for (let k = 0; k < n; k++) {
      let sum = direction[k];
      for (let i = 0; i < k; i++) sum -= packed[k * rows + i] * direction[i];
      direction[k] = sum / diagonal[k];
      square += direction[k] * direction[k];
    }
    low = excess / radius / square;
  }
  let gradient = 0;
  for (let k = 0; k < n; k++) {
    let sum = diagonal[k] * rotated[k];
    for (let i = 0; i < k; i++) sum += packed[k * rows + i] * rotated[i];
    gradient += (sum / own[k]) ** 2;
  }
  gradient = Math.sqrt(gradient);
  let high = gradient / radius || 1e-300 / Math.min(radius, 0.1);
  let value = Math.min(high, Math.max(low, multiplier)) || gradient / (length || 1);

  for (let pass = 0; ; pass++) {
    if (!(value > 0)) value = Math.max(1e-300, 0.001 * high);
    dampedDirection(space, qr, rotated, Math.sqrt(value));
    length = scaledLength(space, n);
    const last = excess;
    excess = length - radius;
    if (Math.abs(excess) <= 0.1 * radius || (low === 0 && excess <= last && last < 0) || pass === 10) {
      for (let k = 0; k < n; k++) step[pivot[k]] = direction[k];
      return value;
    }
    let square = 0;
    for (let k = 0; k < n; k++) work[k] = own[k] * (work[k] / length);
    for (let k = 0; k < n; k++) {
      let sum = work[k];
      for (let i = 0; i < k; i++) sum -= triangle[k * capacity + i] * work[i];
      work[k] = sum / lowerDiagonal[k];
      square += work[k] * work[k];
    }
    if (excess > 0) low = Math.max(low, value);
    if (excess < 0) high = Math.min(high, value);
    value = Math.max(low, value + excess / radius / square);
  }
}

/** Length of the direction in scaled units; `work` is left holding the scaled direction. */
function scaledLength({ work, own, direction }: TrustSpace, n: number): number {
  let square = 0;
  for (let k = 0; k < n; k++) {
    work[k] = own[k] * direction[k];
    square += work[k] * work[k];
  }
  return Math.sqrt(square);
}

/** Solves [R; root·D] direction = [rotated; 0] by plane rotations; `triangle` holds the rotated R by columns. */
function dampedDirection(space: TrustSpace, qr: QrDecomposition, rotated: Float64Array, root: number): void {
  const { columns: n, rows, packed, diagonal } = qr;
  const { capacity, triangle, lowerDiagonal, right, direction, work, own } = space;
  for (let column = 0; column < n; column++) {
    for (let row = 0; row < column; row++) triangle[column * capacity + row] = packed[column * rows + row];
    triangle[column * capacity + column] = diagonal[column];
    right[column] = rotated[column];
  }
  for (let k = 0; k < n; k++) {
    for (let i = k; i < n; i++) work[i] = 0;
    work[k] = root * own[k];
    let carried = 0;
    for (let row = k; row < n; row++) {
      if (work[row] === 0) continue;
      const top = triangle[row * capacity + row];
      const norm = Math.sqrt(top * top + work[row] * work[row]) || Math.hypot(top, work[row]);
      const cosine = top / norm;
      const sine = work[row] / norm;
      triangle[row * capacity + row] = norm;
      const kept = cosine * right[row] + sine * carried;
      carried = cosine * carried - sine * right[row];
      right[row] = kept;
      for (let column = row + 1; column < n; column++) {
        const entry = triangle[column * capacity + row];
        triangle[column * capacity + row] = cosine * entry + sine * work[column];
        work[column] = cosine * work[column] - sine * entry;
      }
    }
  }
  for (let k = 0; k < n; k++) lowerDiagonal[k] = triangle[k * capacity + k];
  for (let k = n - 1; k >= 0; k--) {
    let sum = right[k];
    for (let column = k + 1; column < n; column++) sum -= triangle[column * capacity + k] * direction[column];
    direction[k] = sum / lowerDiagonal[k];
  }
}
