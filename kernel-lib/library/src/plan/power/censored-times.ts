import { fail, positive, within } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { fitCensoredTimes } from "../../fit/outcomes/fit-censored-times";
import { TIME_DISTRIBUTIONS, type TimeDistributionName } from "../../fit/outcomes/time-distribution";
import { studentTPValue } from "../../statistics/distributions/student-t-distribution";
import { type SeededRandom, seededRandom } from "../../statistics/random/seeded-random";

/** Two products whose times are seen at looks only. */
export interface CensoredTimesPower {
  /** typical (median) time of each (min) */
  readonly timesMin: readonly [number, number];
  /** how the logarithms of times scatter, as `fitCensoredTimes` gives it [-] */
  readonly scale: number;
  /** law of that scatter; "logLogistic" unless given */
  readonly distribution?: TimeDistributionName;
  /** when every trial is looked at (min), rising; after the last one it is taken out */
  readonly looksMin: readonly number[];
  /** trials of each product */
  readonly trials: number;
  /** chance of seeing a difference that is not there [-]; 0.05 unless given */
  readonly significance?: number;
  /** simulated pairs of logs, 300 unless given */
  readonly draws?: number;
  /** 1 unless given; the same seed gives the same answer everywhere */
  readonly seed?: number;
}

/** What simulated logs saw. */
export interface CensoredTimesPowerResult {
  /** share of logs that saw the difference [-] */
  readonly power: number;
  /** its standard error from the number of draws [-] */
  readonly monteCarloError: number;
  /** share of logs that saw a difference where both times were alike: should be near `significance` [-] */
  readonly falseAlarms: number;
  readonly falseAlarmsError: number;
  /** share of logs that no fit could judge, as the looks were too far apart or too few: counted as not seen [-] */
  readonly undecided: number;
  readonly draws: number;
}

/**
 * Chance of seeing that two products crisp at different times, when times are seen between looks: logs are drawn, each is fitted by
 * `fitCensoredTimes` with a column for the product, and its coefficient b is tested. With N trials in all, b/se · √((N − 2)/N) is
 * held against Student's t with N − 2 degrees of freedom: for lognormal times seen exactly that is the t test of two means.
 *
 * @throws when there are fewer than three trials each, or looks do not rise
 * @example
 * const looksMin = [8, 9, 10, 11, 12, 13, 14];
 * powerOfCensoredTimes({ timesMin: [10, 12], scale: 0.08, distribution: "lognormal", looksMin, trials: 6, draws: 40 }).power; // → 0.9
 */
export function powerOfCensoredTimes(options: CensoredTimesPower): CensoredTimesPowerResult {
  const where = "powerOfCensoredTimes";
  const { timesMin, scale, looksMin, trials, significance = 0.05, draws = 300, seed = 1 } = options;
  const { distribution = "logLogistic" } = options;
  for (const time of timesMin) positive(time, `${where}: timesMin`, "min");
  positive(scale, `${where}: scale`, "");
  within(significance, 1e-6, 0.5, `${where}: significance`, "");
  if (!(Number.isInteger(trials) && trials >= 3)) fail(`${where}: trials`, "must be a whole number >= 3", trials);
  if (!(Number.isInteger(draws) && draws >= 10)) fail(`${where}: draws`, "must be a whole number >= 10", draws);
  if (looksMin.length === 0 || looksMin.some((look, at) => !(look > (looksMin[at - 1] ?? 0))))
    fail(`${where}: looksMin`, "must be times above 0 that rise", looksMin);
  const middle = Math.sqrt(timesMin[0] * timesMin[1]);
  const share = (medians: readonly [number, number]): { readonly seen: number; readonly undecided: number } => {
    const random = seededRandom(seed);
    let seen = 0;
    let undecided = 0;
    for (let draw = 0; draw < draws; draw++) {
      const pValue = pValueOf(drawnLog({ ...options, distribution }, medians, random), distribution);
      if (pValue === null) undecided++;
      else if (pValue < significance) seen++;
    }
    return { seen: seen / draws, undecided: undecided / draws };
  };
  const apart = share(timesMin);
  const alike = share([middle, middle]);
  const error = (part: number): number => Math.sqrt((part * (1 - part)) / draws);
  return freezeDeep({
    power: apart.seen,
    monteCarloError: error(apart.seen),
    falseAlarms: alike.seen,
    falseAlarmsError: error(alike.seen),
    undecided: apart.undecided,
    draws,
  });
}

interface DrawnLog {
  readonly lower: readonly number[];
  readonly upper: readonly number[];
  readonly product: readonly number[];
}

function drawnLog(
  {
    scale,
    distribution,
    looksMin,
    trials,
  }: Required<Pick<CensoredTimesPower, "scale" | "distribution" | "looksMin" | "trials">>,
  medians: readonly [number, number],
  random: SeededRandom,
): DrawnLog {
  const { quantile } = TIME_DISTRIBUTIONS[distribution];
  const log = { lower: [] as number[], upper: [] as number[], product: [] as number[] };
  for (const [product, median] of medians.entries())
    for (let trial = 0; trial < trials; trial++) {
      // off the very ends, where a quantile is not finite
      const probability = Math.min(1 - 1e-12, Math.max(1e-12, random.uniform()));
      const timeMin = median * Math.exp(scale * (quantile(probability) - quantile(0.5)));
      const after = looksMin.findIndex((look) => look >= timeMin);
      log.upper.push(after < 0 ? Number.POSITIVE_INFINITY : looksMin[after]);
      log.lower.push(after < 0 ? looksMin[looksMin.length - 1] : (looksMin[after - 1] ?? 0));
      log.product.push(product);
    }
  return log;
}

/** Of the difference between the products; null where the log carries no fit. */
function pValueOf({ lower, upper, product }: DrawnLog, distribution: TimeDistributionName): number | null {
  try {
    const { parameters, n } = fitCensoredTimes({ lower, upper, covariates: { product }, distribution });
    const { estimate, standardError } = parameters.product;
    if (standardError === null) return null;
    return studentTPValue((estimate / standardError) * Math.sqrt((n - 2) / n), n - 2);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
