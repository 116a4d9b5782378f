import { normalQuantile } from "../../statistics/distributions/normal-distribution";
import type { Estimates, ParameterEstimate } from "../fit";
import { correctedAic } from "../least-squares/summarise-fit";

/** What a likelihood fit knows when it is named. */
export interface LikelihoodParts {
  readonly model: string;
  readonly names: readonly string[];
  readonly values: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  readonly n: number;
  readonly rangeX: readonly [number, number] | null;
  readonly logLikelihood: number;
  readonly converged: boolean;
  readonly reason: string;
  readonly iterations: number;
  readonly notices: readonly string[];
  /** names whose interval is taken on the logarithm */
  readonly onLog?: readonly string[];
}

/** Names a likelihood fit: standard errors from the inverse information, normal intervals, criteria. */
export function likelihoodEstimates(parts: LikelihoodParts): Estimates<string> {
  const { names, values, covariance, n, logLikelihood } = parts;
  const z = normalQuantile(0.975);
  const estimateOf = (name: string, j: number): ParameterEstimate => {
    const standardError = Math.sqrt(covariance[j][j]);
    const half = z * standardError;
    return {
      estimate: values[j],
      standardError,
      interval95: parts.onLog?.includes(name)
        ? [values[j] * Math.exp(-half / values[j]), values[j] * Math.exp(half / values[j])]
        : [values[j] - half, values[j] + half],
      atBound: null,
      fixed: false,
    };
  };
  const parameters = Object.fromEntries(names.map((name, j) => [name, estimateOf(name, j)]));
  const p = names.length;
  return {
    kind: "fit",
    model: parts.model,
    names,
    parameters,
    covariance,
    correlation: covariance.map((row, i) =>
      row.map((value, j) => (i === j ? 1 : value / Math.sqrt(covariance[i][i] * covariance[j][j]))),
    ),
    n,
    degreesOfFreedom: n - p,
    sdKnown: true,
    rangeX: parts.rangeX,
    logLikelihood,
    aicc: correctedAic(logLikelihood, p, n),
    bic: -2 * logLikelihood + p * Math.log(n),
    converged: parts.converged,
    reason: parts.reason,
    iterations: parts.iterations,
    notices: parts.notices,
  };
}
