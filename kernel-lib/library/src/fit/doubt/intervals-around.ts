import type { Fit } from "../fit";
import { intervalFactor } from "./interval-factor";

/** What a prediction says of its doubt. */
export interface IntervalsAround {
  readonly standardError: number;
  /** 95 % interval for the curve: where the mean of many trials would lie */
  readonly confidence95: readonly [number, number];
  /** 95 % interval for one further trial of weight 1 */
  readonly prediction95: readonly [number, number];
}

/** The two 95 % intervals around a predicted value: ± t √variance for the curve, ± t √(variance + s²) for one more trial. */
export function intervalsAround(fit: Fit<string>, value: number, variance: number): IntervalsAround {
  const factor = intervalFactor(fit);
  const half = factor * Math.sqrt(variance);
  const wide = factor * Math.sqrt(variance + fit.residualSd ** 2);
  return {
    standardError: Math.sqrt(variance),
    confidence95: [value - half, value + half],
    prediction95: [value - wide, value + wide],
  };
}
