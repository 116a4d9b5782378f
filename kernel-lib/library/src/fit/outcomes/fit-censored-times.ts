import { fail, notNegative } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import type { Estimates } from "../fit";
import { solveLinear } from "../least-squares/solve-linear";
import { type Covariates, designColumns } from "../models/design-columns";
import { likelihoodEstimates } from "./likelihood-estimates";
import { maximiseLikelihood } from "./maximise-likelihood";
import { TIME_DISTRIBUTIONS, type TimeDistribution, type TimeDistributionName } from "./time-distribution";

/** Times that were seen only at checks. */
export interface FitCensoredTimesOptions {
  /** last check at which it was not yet so, in the unit of time; 0 when it was so at the first check */
  readonly lower: readonly number[];
  /** first check at which it was so; Infinity when it never was; equal to `lower` for a time seen exactly */
  readonly upper: readonly number[];
  /** what the time may depend on, such as log thickness, setpoint, appliance; none unless given */
  readonly covariates?: Covariates;
  /** how log times scatter; "logLogistic" unless given */
  readonly distribution?: TimeDistributionName;
}

/** An accelerated-failure-time fit: log t = intercept + Σ bⱼ xⱼ + scale · W. */
export interface CensoredTimesFit extends Estimates<string> {
  readonly distribution: TimeDistributionName;
  /** how many times were exact, between two checks, before the first, after the last */
  readonly counts: {
    readonly exact: number;
    readonly between: number;
    readonly before: number;
    readonly after: number;
  };
  readonly levels: Readonly<Record<string, readonly string[]>>;
  readonly ranges: Readonly<Record<string, readonly [number, number]>>;
}

/**
 * Fits times seen at checks (not yet at one, so at the next) by accelerated-failure-time regression:
 * log t = intercept + Σ bⱼ xⱼ + scale · W with W logistic (log-logistic times), smallest extreme value (Weibull) or normal
 * (lognormal). An interval adds log(F(upper) − F(lower)) to the likelihood, which Newton's method maximises (Kalbfleisch &
 * Prentice 2002, ch. 3). A coefficient b multiplies times by e^b.
 *
 * @returns `intercept`, one coefficient a covariate and `scale`, with standard errors from the observed information
 * @example
 * const fit = fitCensoredTimes({ lower: [8, 8, 10, 10, 12, 8], upper: [10, 10, 12, 12, 14, 10] });
 * censoredQuantile(fit).time; // → 10.18
 */
export function fitCensoredTimes(options: FitCensoredTimesOptions): CensoredTimesFit {
  const where = "fitCensoredTimes";
  const { lower, upper, covariates = {}, distribution = "logLogistic" } = options;
  const law = TIME_DISTRIBUTIONS[distribution];
  if (law === undefined)
    fail(`${where}: distribution`, `must be one of ${Object.keys(TIME_DISTRIBUTIONS).join(", ")}`, distribution);
  const n = lower.length;
  if (upper.length !== n)
    fail(`${where}: lower and upper`, "must be equally long, one entry a trial", [n, upper.length]);
  const counts = { exact: 0, between: 0, before: 0, after: 0 };
  for (let i = 0; i < n; i++) {
    notNegative(lower[i], `${where}: lower[${i}]`, "");
    if (!(upper[i] > 0)) fail(`${where}: upper[${i}]`, "must be > 0, or Infinity when it never was", upper[i]);
    if (upper[i] < lower[i]) fail(`${where}: upper[${i}]`, `must not be before lower[${i}] = ${lower[i]}`, upper[i]);
    if (lower[i] === 0 && upper[i] === Number.POSITIVE_INFINITY) {
      fail(`${where}: trial ${i}`, "must have been checked at least once: leave it out", [lower[i], "Infinity"]);
    }
    if (lower[i] === upper[i]) counts.exact++;
    else if (lower[i] === 0) counts.before++;
    else if (upper[i] === Number.POSITIVE_INFINITY) counts.after++;
    else counts.between++;
  }
  if (n > 0 && counts.after === n) {
    fail(
      `${where}: upper`,
      "must hold some finite time: every trial ended before it was so; carry some on for longer",
      "all Infinity",
    );
  }
  if (n > 0 && counts.before === n) {
    fail(
      `${where}: lower`,
      "must hold some time above 0: every trial was so at its first check; check earlier",
      "all 0",
    );
  }
  const design = designColumns(where, covariates, n);
  const names = ["intercept", ...design.names, "scale"];
  const p = names.length;
  if (n < p + 1)
    fail(`${where}: trials`, `must number more than the ${p} parameters: log more trials or leave covariates out`, n);
  const columns = [new Float64Array(n).fill(1), ...design.columns];

  const typical = lower.map((low, i) => {
    if (low === 0) return Math.log(upper[i]) - 0.2;
    return upper[i] === Number.POSITIVE_INFINITY ? Math.log(low) + 0.2 : 0.5 * (Math.log(low) + Math.log(upper[i]));
  });
  const first = solveLinear(columns, Float64Array.from(typical));
  if (first.dependent.length > 0) {
    const list = first.dependent.map((j) => names[j]).join(", ");
    fail(
      `${where}: covariates`,
      `must not be sums of each other, but ${list} follows from the rest: leave it out`,
      list,
    );
  }
  const startScale = Math.max(0.03, Math.sqrt(first.rss / n)) * (distribution === "logLogistic" ? 0.6 : 1);
  const solution = maximiseLikelihood({
    start: [...first.coefficients, Math.log(startScale)],
    derivatives: (parameters, gradient, hessian) =>
      logLikelihoodOf(law, lower, upper, columns, parameters, gradient, hessian),
  });
  const scale = Math.exp(solution.parameters[p - 1]);
  if (scale < 1e-4 || (counts.exact === 0 && solution.logLikelihood > -1e-4 * n)) {
    fail(
      `${where}: checks`,
      "must be close enough to show scatter: one curve passes through every interval, so no scatter can be told; check more often or log more trials",
      counts,
    );
  }
  if (!solution.converged || solution.covariance === null) {
    fail(
      `${where}: trials`,
      `must settle every coefficient, but the likelihood has no top (${solution.reason}): log trials on both sides of the change at each setting`,
      counts,
    );
  }
  const stretch = names.map((_, j) => (j === p - 1 ? scale : 1));
  const covariance = (solution.covariance as number[][]).map((row, i) =>
    row.map((value, j) => value * stretch[i] * stretch[j]),
  );
  const estimates = likelihoodEstimates({
    model: `accelerated failure time, ${distribution}`,
    names,
    values: [...solution.parameters.subarray(0, p - 1), scale],
    covariance,
    n,
    rangeX: design.names.length === 1 ? (Object.values(design.ranges)[0] ?? null) : null,
    logLikelihood: solution.logLikelihood,
    converged: true,
    reason: solution.reason,
    iterations: solution.iterations,
    notices:
      counts.exact + counts.between === 0
        ? ["Every trial was checked on one side only: the scale rests on few words, so read intervals with care."]
        : [],
    onLog: ["scale"],
  });
  return freezeDeep({ ...estimates, distribution, counts, levels: design.levels, ranges: design.ranges });
}

function logLikelihoodOf(
  law: TimeDistribution,
  lower: readonly number[],
  upper: readonly number[],
  columns: readonly Float64Array[],
  parameters: Float64Array,
  gradient: Float64Array,
  hessian: number[][],
): number {
  const q = columns.length;
  const scale = Math.exp(parameters[q]);
  gradient.fill(0);
  for (const row of hessian) row.fill(0);
  let total = 0;
  for (let i = 0; i < lower.length; i++) {
    let line = 0;
    for (let j = 0; j < q; j++) line += columns[j][i] * parameters[j];
    let slope: number;
    let slopeScale: number;
    let curve: number;
    let cross: number;
    let curveScale: number;
    if (lower[i] === upper[i]) {
      const z = (Math.log(lower[i]) - line) / scale;
      const l1 = law.logDensitySlope(z);
      const l2 = law.logDensityCurvature(z);
      total += law.logDensity(z) - parameters[q] - Math.log(lower[i]);
      slope = -l1 / scale;
      slopeScale = -z * l1 - 1;
      curve = l2 / scale ** 2;
      cross = (l1 + z * l2) / scale;
      curveScale = z * l1 + z * z * l2;
    } else {
      const open = lower[i] === 0;
      const never = upper[i] === Number.POSITIVE_INFINITY;
      const a = open ? 0 : (Math.log(lower[i]) - line) / scale;
      const b = never ? 0 : (Math.log(upper[i]) - line) / scale;
      const share = open
        ? law.below(b)
        : never
          ? law.above(a)
          : a > 0
            ? law.above(a) - law.above(b)
            : law.below(b) - law.below(a);
      if (!(share > 0)) return Number.NEGATIVE_INFINITY;
      const fa = open ? 0 : law.density(a);
      const fb = never ? 0 : law.density(b);
      const ga = open ? 0 : law.densitySlope(a);
      const gb = never ? 0 : law.densitySlope(b);
      total += Math.log(share);
      slope = -(fb - fa) / scale / share;
      slopeScale = -(b * fb - a * fa) / share;
      curve = (gb - ga) / scale ** 2 / share - slope * slope;
      cross = (fb + b * gb - fa - a * ga) / scale / share - slope * slopeScale;
      curveScale = (b * fb + b * b * gb - a * fa - a * a * ga) / share - slopeScale * slopeScale;
    }
    for (let j = 0; j < q; j++) {
      gradient[j] += slope * columns[j][i];
      for (let k = 0; k < q; k++) hessian[j][k] += curve * columns[j][i] * columns[k][i];
      hessian[j][q] += cross * columns[j][i];
      hessian[q][j] += cross * columns[j][i];
    }
    gradient[q] += slopeScale;
    hessian[q][q] += curveScale;
  }
  return Number.isFinite(total) ? total : Number.NEGATIVE_INFINITY;
}
