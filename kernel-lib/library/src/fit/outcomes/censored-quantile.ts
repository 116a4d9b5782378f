import { within } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { normalQuantile } from "../../statistics/distributions/normal-distribution";
import { valuesOf, varianceOf } from "../doubt/delta-method";
import { designRow } from "../models/design-columns";
import { censoredLine } from "./censored-line";
import type { CensoredTimesFit } from "./fit-censored-times";
import { TIME_DISTRIBUTIONS } from "./time-distribution";

/** Which quantile, and for which case. */
export interface CensoredQuantileOptions {
  /** share of trials that are so by the time [-]; 0.5 (the median) unless given */
  readonly probability?: number;
  /** every covariate of the fit by name; none unless the fit has some */
  readonly at?: Readonly<Record<string, number | string>>;
}

/** A quantile of the time, with its doubt. */
export interface CensoredQuantile {
  readonly time: number;
  readonly standardError: number;
  /** of log time, which the interval is taken on */
  readonly standardErrorLog: number;
  readonly confidence95: readonly [number, number];
  readonly extrapolated: boolean;
}

/**
 * The time by which a share of trials is so, t = exp(line + scale · W⁻¹(probability)), with a 95 % interval by the delta
 * method on log time.
 *
 * @example
 * const fit = fitCensoredTimes({ lower: [8, 8, 10, 10, 12, 8], upper: [10, 10, 12, 12, 14, 10] });
 * censoredQuantile(fit, { probability: 0.9 }).time; // → 12.0187
 */
export function censoredQuantile(fit: CensoredTimesFit, options: CensoredQuantileOptions = {}): CensoredQuantile {
  const { probability = 0.5, at = {} } = options;
  within(probability, 1e-6, 1 - 1e-6, "censoredQuantile: probability", "");
  const { row, extrapolated } = designRow("censoredQuantile", fit, at);
  const place = TIME_DISTRIBUTIONS[fit.distribution].quantile(probability);
  const logTime = (values: Readonly<Record<string, number>>): number =>
    censoredLine(fit, row, values) + place * values.scale;
  const centre = logTime(valuesOf(fit));
  const standardErrorLog = Math.sqrt(varianceOf(fit, logTime));
  const half = normalQuantile(0.975) * standardErrorLog;
  return freezeDeep({
    time: Math.exp(centre),
    standardError: Math.exp(centre) * standardErrorLog,
    standardErrorLog,
    confidence95: [Math.exp(centre - half), Math.exp(centre + half)],
    extrapolated,
  });
}
