import { intervalFactor } from "../doubt/interval-factor";
import type { Estimates, ParameterEstimate } from "../fit";
import { correctedAic } from "./summarise-fit";

/** What a directly solved linear least-squares problem leaves. */
export interface DirectSolution {
  readonly names: readonly string[];
  readonly estimates: readonly number[];
  /** a square root R of the inverse cross-product: R Rᵀ = (XᵀWX)⁻¹ */
  readonly root: readonly (readonly number[])[];
  /** residual sum of squares, weighted */
  readonly rss: number;
  readonly weights: readonly number[];
}

/** The parts of `Estimates` that follow from a direct solution, with the residual standard deviation. */
export type DirectEstimates = Omit<Estimates<string>, "model" | "rangeX" | "notices"> & {
  readonly rss: number;
  readonly residualSd: number;
};

/** Estimates with their doubt from a directly solved problem: covariance s²·R·Rᵀ, Wald intervals, criteria. */
export function directEstimates(solution: DirectSolution): DirectEstimates {
  const { names, estimates, root, rss, weights } = solution;
  const n = weights.length;
  const p = names.length;
  const degreesOfFreedom = n - p;
  const residualSd = Math.sqrt(rss / degreesOfFreedom);
  const covariance = covarianceOf(root, residualSd);
  const factor = intervalFactor({ degreesOfFreedom, sdKnown: false });
  const estimateOf = (j: number): ParameterEstimate => {
    const standardError = Math.sqrt(covariance[j][j]);
    return {
      estimate: estimates[j],
      standardError,
      interval95: [estimates[j] - factor * standardError, estimates[j] + factor * standardError],
      atBound: null,
      fixed: false,
    };
  };
  const parameters = Object.fromEntries(names.map((name, j) => [name, estimateOf(j)]));
  const logLikelihood =
    0.5 * weights.reduce((sum, weight) => sum + Math.log(weight), 0) -
    0.5 * n * (Math.log((2 * Math.PI * rss) / n) + 1);
  return {
    kind: "fit",
    names,
    parameters,
    covariance,
    correlation: covariance.map((row, i) =>
      row.map((value, j) => (i === j ? 1 : value / Math.sqrt(covariance[i][i] * covariance[j][j]))),
    ),
    n,
    degreesOfFreedom,
    sdKnown: false,
    logLikelihood,
    aicc: correctedAic(logLikelihood, p + 1, n),
    bic: -2 * logLikelihood + (p + 1) * Math.log(n),
    converged: true,
    reason: "solved directly",
    iterations: 1,
    rss,
    residualSd,
  };
}

/** s²·R·Rᵀ. */
export function covarianceOf(root: readonly (readonly number[])[], residualSd: number): number[][] {
  return root.map((a) => root.map((b) => residualSd ** 2 * a.reduce((sum, value, c) => sum + value * b[c], 0)));
}
