import { fail, notNegative } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { ownValue } from "../../check/own-value";
import type { Estimates } from "../fit";
import { solveLinear } from "../least-squares/solve-linear";
import { type Covariates, type DesignColumns, designColumns } from "../models/design-columns";
import { likelihoodEstimates } from "./likelihood-estimates";
import { maximiseLikelihood } from "./maximise-likelihood";
import { recessionDirection } from "./recession-direction";
import { type OutcomeSide, refuseSeparation, scaledColumn } from "./refuse-separation";
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
  const law = ownValue(TIME_DISTRIBUTIONS, distribution);
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
  refuseNoTop(where, design, lower, upper);
  const startScale = Math.max(0.03, Math.sqrt(first.rss / n)) * (distribution === "logLogistic" ? 0.6 : 1);
  const centre = typical.reduce((sum, value) => sum + value, 0) / n;
  const solution = maximiseLikelihood({
    start: [
      ...Array.from(first.coefficients, (value, j) => (value - (j === 0 ? centre : 0)) / startScale),
      1 / startScale,
    ],
    derivatives: (parameters, gradient, hessian) =>
      logLikelihoodOf({ law, lower, upper, columns, centre }, parameters, gradient, hessian),
  });
  const rate = solution.parameters[p - 1];
  if (rate <= 0) {
    fail(
      `${where}: checks`,
      "must find it so more often the later they are, but trials checked on one side only found it so less often at late checks than at early ones, so no time can be told: check the records, or look at trials more than once",
      counts,
    );
  }
  if (!solution.converged || solution.covariance === null) {
    fail(`${where}: trials`, `must let the search settle (${solution.reason})`, counts);
  }
  const scale = 1 / rate;
  const values = Array.from(
    solution.parameters,
    (value, j) => scale * (j === p - 1 ? 1 : value) + (j === 0 ? centre : 0),
  );
  // derivative of each value by its own parameter and by 1/scale
  const own = names.map((_, j) => (j === p - 1 ? 0 : scale));
  const byRate = names.map((_, j) => -scale * scale * (j === p - 1 ? 1 : solution.parameters[j]));
  const inner = solution.covariance as number[][];
  const covariance = names.map((_, i) =>
    names.map(
      (__, j) =>
        own[i] * own[j] * inner[i][j] +
        own[i] * byRate[j] * inner[i][p - 1] +
        byRate[i] * own[j] * inner[p - 1][j] +
        byRate[i] * byRate[j] * inner[p - 1][p - 1],
    ),
  );
  const estimates = likelihoodEstimates({
    model: `accelerated failure time, ${distribution}`,
    names,
    values,
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

/** Throws when the likelihood climbs for ever: covariates part the outcomes, or one curve passes through every interval. */
function refuseNoTop(where: string, design: DesignColumns, lower: readonly number[], upper: readonly number[]): void {
  const sidesWith = (rest: (time: number) => readonly number[]): OutcomeSide[] =>
    lower.flatMap((low, observation): OutcomeSide[] => [
      ...(low > 0 ? [{ observation, sign: 1, rest: rest(low) } as const] : []),
      ...(upper[observation] < Number.POSITIVE_INFINITY
        ? [{ observation, sign: -1, rest: rest(upper[observation]) } as const]
        : []),
    ]);
  refuseSeparation({
    where,
    design,
    sides: sidesWith(() => [1]),
    parted: "a best value, but it parts what was so from what was not",
    partedTogether:
      "a best value, but together they part what was so from what was not: log trials on both sides of the change",
    allUp: (word) => `no trial at "${word}" was so by its last check: carry some on for longer`,
    allDown: (word) => `every trial at "${word}" was so at its first check: check earlier`,
  });
  const times = [...lower, ...upper].filter((time) => time > 0 && time < Number.POSITIVE_INFINITY);
  const middle = times.reduce((sum, time) => sum + Math.log(time), 0) / times.length;
  const scaled = design.columns.map(scaledColumn);
  const rows = sidesWith((time) => [1, middle - Math.log(time)]).map(({ observation, sign, rest }) => [
    ...scaled.map((column) => sign * column[observation]),
    ...rest.map((entry) => sign * entry),
  ]);
  const direction = recessionDirection([...rows, [...design.columns.map(() => 0), 0, 1]]);
  if (direction === null) return;
  const climbs = rows.some((row) => row.reduce((sum, entry, k) => sum + entry * direction[k], 0) > 1e-8);
  if (!climbs && lower.every((low, i) => low !== upper[i])) {
    fail(
      `${where}: checks`,
      "must not all be made at one time, or at times that follow from the covariates: the time and its scatter cannot be told apart, so check at other times too",
      [...new Set(times)],
    );
  }
  fail(
    `${where}: checks`,
    "must be close enough to show scatter: one curve passes through every interval, so no scatter can be told; check more often or log more trials",
    lower.map((low, i) => [low, upper[i]]),
  );
}

interface CensoredData {
  readonly law: TimeDistribution;
  readonly lower: readonly number[];
  readonly upper: readonly number[];
  readonly columns: readonly Float64Array[];
  /** log times are taken from here */
  readonly centre: number;
}

/**
 * In γ = b/scale and r = 1/scale, where z = r · (log t − centre) − Σ γⱼ xⱼ is linear and the log-likelihood concave, so that
 * its top is the only one (Burridge 1981).
 */
function logLikelihoodOf(
  { law, lower, upper, columns, centre }: CensoredData,
  parameters: Float64Array,
  gradient: Float64Array,
  hessian: number[][],
): number {
  const q = columns.length;
  const rate = parameters[q];
  gradient.fill(0);
  for (const row of hessian) row.fill(0);
  const atLower = new Float64Array(q + 1);
  const atUpper = new Float64Array(q + 1);
  const slope = new Float64Array(q + 1);
  let total = 0;
  for (let i = 0; i < lower.length; i++) {
    let line = 0;
    for (let j = 0; j < q; j++) {
      line += columns[j][i] * parameters[j];
      atLower[j] = -columns[j][i];
      atUpper[j] = -columns[j][i];
    }
    const open = lower[i] === 0;
    const never = upper[i] === Number.POSITIVE_INFINITY;
    atLower[q] = open ? 0 : Math.log(lower[i]) - centre;
    atUpper[q] = never ? 0 : Math.log(upper[i]) - centre;
    const a = rate * atLower[q] - line;
    const b = rate * atUpper[q] - line;
    if (lower[i] === upper[i]) {
      if (!(rate > 0)) return Number.NEGATIVE_INFINITY;
      const first = law.logDensitySlope(a);
      const second = law.logDensityCurvature(a);
      total += law.logDensity(a) + Math.log(rate) - Math.log(lower[i]);
      for (let j = 0; j <= q; j++) {
        gradient[j] += first * atLower[j];
        for (let k = 0; k <= q; k++) hessian[j][k] += second * atLower[j] * atLower[k];
      }
      gradient[q] += 1 / rate;
      hessian[q][q] -= 1 / rate ** 2;
      continue;
    }
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
    for (let j = 0; j <= q; j++) slope[j] = (fb * atUpper[j] - fa * atLower[j]) / share;
    for (let j = 0; j <= q; j++) {
      gradient[j] += slope[j];
      for (let k = 0; k <= q; k++) {
        hessian[j][k] += (gb * atUpper[j] * atUpper[k] - ga * atLower[j] * atLower[k]) / share - slope[j] * slope[k];
      }
    }
  }
  return Number.isFinite(total) ? total : Number.NEGATIVE_INFINITY;
}
