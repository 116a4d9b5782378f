import { choleskyOrNull, inverseFrom, solveLower, solveUpper } from "../../statistics/linear-algebra/cholesky";

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
    let step: Float64Array | null = null;
    for (;;) {
      const information = flat(hessian, (entry, onDiagonal) => (onDiagonal ? damping * (Math.abs(entry) + 1e-8) : 0));
      const factor = choleskyOrNull(information, p, SINGULAR);
      if (factor) {
        step = solveUpper(factor, p, solveLower(factor, p, gradient.slice()));
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
  const factor = choleskyOrNull(
    flat(hessian, () => 0),
    p,
    SINGULAR,
  );
  const converged = settled >= 2 && factor !== null;
  return {
    parameters,
    logLikelihood: value,
    covariance: factor && rowsOf(inverseFrom(factor, p), p),
    converged,
    reason: converged
      ? "converged: a further step would not raise the likelihood"
      : "stopped: the likelihood has no clear top",
    iterations: iteration,
  };
}

/** Pivots of the information below this share of their diagonal entry are rounding. */
const SINGULAR = 1e-14;

/** Minus a matrix, row by row, with something added on its diagonal. */
function flat(
  matrix: readonly (readonly number[])[],
  added: (entry: number, onDiagonal: boolean) => number,
): Float64Array {
  return Float64Array.from(matrix.flatMap((row, i) => row.map((entry, j) => added(entry, i === j) - entry)));
}

/** Rows of an inverse, made exactly symmetric. */
function rowsOf(inverse: Float64Array, size: number): number[][] {
  return Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (__, j) => (inverse[i * size + j] + inverse[j * size + i]) / 2),
  );
}
