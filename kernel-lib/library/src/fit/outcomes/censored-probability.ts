import { positive } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { normalQuantile } from "../../statistics/distributions/normal-distribution";
import { valuesOf, varianceOf } from "../doubt/delta-method";
import { designRow } from "../models/design-columns";
import { censoredLine } from "./censored-line";
import type { CensoredTimesFit } from "./fit-censored-times";
import { TIME_DISTRIBUTIONS } from "./time-distribution";

/** The probability that it is so by a time, with a 95 % interval taken on the standard scale of the fit's law. */
export interface CensoredProbability {
  readonly probability: number;
  readonly confidence95: readonly [number, number];
  readonly extrapolated: boolean;
}

/**
 * The share of trials that are so by `time`: F((log time − line)/scale).
 *
 * @param time in the unit of the fit
 * @param at every covariate of the fit by name; none unless the fit has some
 * @example
 * const fit = fitCensoredTimes({ lower: [8, 8, 10, 10, 12, 8], upper: [10, 10, 12, 12, 14, 10] });
 * censoredProbability(fit, 12).probability; // → 0.898132
 */
export function censoredProbability(
  fit: CensoredTimesFit,
  time: number,
  at: Readonly<Record<string, number | string>> = {},
): CensoredProbability {
  positive(time, "censoredProbability: time", "");
  const { row, extrapolated } = designRow("censoredProbability", fit, at);
  const law = TIME_DISTRIBUTIONS[fit.distribution];
  const place = (values: Readonly<Record<string, number>>): number =>
    (Math.log(time) - censoredLine(fit, row, values)) / values.scale;
  const centre = place(valuesOf(fit));
  const half = normalQuantile(0.975) * Math.sqrt(varianceOf(fit, place));
  return freezeDeep({
    probability: law.below(centre),
    confidence95: [law.below(centre - half), law.below(centre + half)],
    extrapolated,
  });
}
