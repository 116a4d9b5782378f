/** A log-likelihood with its first and second derivatives. */
export interface LikelihoodProblem {
  readonly start: readonly number[];
  /** returns the log-likelihood at `parameters` and writes its gradient and Hessian; −Infinity where it is not allowed */
  readonly derivatives: (parameters: Float64Array, gradient: Float64Array, hessian: number[][]) => number;
}

/** Where the search ended. */
export interface LikelihoodSolution {
  readonly parameters: Float64Array;
  readonly logLikelihood: number;
  /** inverse of the observed information; null when it is not positive definite */
  readonly covariance: number[][] | null;
  readonly converged: boolean;
  readonly reason: string;
  readonly iterations: number;
}

/**
 * Maximises a log-likelihood by Newton's method, damped where the Hessian is not negative definite or a step does not
 * climb, until the Newton step is worth less than rounding.
 */
export function maximiseLikelihood(problem: LikelihoodProblem): LikelihoodSolution {
  const p = problem.start.length;
  const parameters = Float64Array.from(problem.start);
  const gradient = new Float64Array(p);
  const hessian = Array.from({ length: p }, () => new Array<number>(p).fill(0));
  const trial = new Float64Array(p);
  const trialGradient = new Float64Array(p);
  const trialHessian = Array.from({ length: p }, () => new Array<number>(p).fill(0));
  let value = problem.derivatives(parameters, gradient, hessian);
  let damping = 0;
  let settled = 0;
  let iteration = 0;
  for (; iteration < 200 && settled < 2; iteration++) {
    let step: number[] | null = null;
    for (;;) {
      const information = hessian.map((row, i) =>
        row.map((entry, j) => -entry + (i === j ? damping * (Math.abs(entry) + 1e-8) : 0)),
      );
      const factor = cholesky(information);
      if (factor) {
        step = solveCholesky(factor, gradient);
        break;
      }
      damping = Math.max(1e-3, damping * 10);
      if (damping > 1e12) break;
    }
    if (!step) break;
    const decrement = step.reduce((sum, entry, j) => sum + entry * gradient[j], 0);
    const rounding = 1e-13 * (1 + Math.abs(value));
    for (let j = 0; j < p; j++) trial[j] = parameters[j] + step[j];
    const next = problem.derivatives(trial, trialGradient, trialHessian);
    if (next >= value - (decrement < rounding ? rounding : 0)) {
      parameters.set(trial);
      gradient.set(trialGradient);
      for (let i = 0; i < p; i++) for (let j = 0; j < p; j++) hessian[i][j] = trialHessian[i][j];
      value = next;
      if (decrement < rounding && damping === 0) settled++;
      damping = damping < 1e-6 ? 0 : damping / 10;
    } else {
      if (decrement < rounding) {
        settled = 2;
        break;
      }
      damping = Math.max(1e-3, damping * 10);
      if (damping > 1e12) break;
    }
  }
  const factor = cholesky(hessian.map((row) => row.map((entry) => -entry)));
  const converged = settled >= 2 && factor !== null;
  return {
    parameters,
    logLikelihood: value,
    covariance: factor && invertCholesky(factor),
    converged,
    reason: converged
      ? "converged: a further step would not raise the likelihood"
      : "stopped: the likelihood has no clear top",
    iterations: iteration,
  };
}

function cholesky(matrix: readonly (readonly number[])[]): number[][] | null {
  const n = matrix.length;
  const lower = matrix.map(() => new Array<number>(n).fill(0));
  for (let j = 0; j < n; j++) {
    let diagonal = matrix[j][j];
    for (let k = 0; k < j; k++) diagonal -= lower[j][k] ** 2;
    if (!(diagonal > 1e-14 * Math.abs(matrix[j][j])) || !Number.isFinite(diagonal)) return null;
    lower[j][j] = Math.sqrt(diagonal);
    for (let i = j + 1; i < n; i++) {
      let sum = matrix[i][j];
      for (let k = 0; k < j; k++) sum -= lower[i][k] * lower[j][k];
      lower[i][j] = sum / lower[j][j];
    }
  }
  return lower;
}

function solveCholesky(lower: readonly (readonly number[])[], right: ArrayLike<number>): number[] {
  const n = lower.length;
  const solution = Array.from(right);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) solution[i] -= lower[i][k] * solution[k];
    solution[i] /= lower[i][i];
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) solution[i] -= lower[k][i] * solution[k];
    solution[i] /= lower[i][i];
  }
  return solution;
}

function invertCholesky(lower: readonly (readonly number[])[]): number[][] {
  const columns = lower.map((_, j) =>
    solveCholesky(
      lower,
      lower.map((__, i) => (i === j ? 1 : 0)),
    ),
  );
  return columns.map((column, i) => column.map((value, j) => (value + columns[j][i]) / 2));
}
