import { freezeDeep } from "../../check/freeze-deep";
import { intervalsAround } from "../doubt/intervals-around";
import { designRow } from "../models/design-columns";
import type { LinearFit } from "./fit-linear";

/** A linear regression's mean at one case, with its doubt. */
export interface LinearPrediction {
  readonly value: number;
  readonly standardError: number;
  readonly confidence95: readonly [number, number];
  readonly prediction95: readonly [number, number];
  readonly extrapolated: boolean;
}

/**
 * A linear regression's mean at one case: x'b ± t √(x'Vx), and for one more observation ± t √(x'Vx + s²).
 *
 * @param at every covariate of the fit by name
 * @example
 * const fit = fitLinear({ covariates: { speed: [4, 7, 8, 10, 12] }, y: [2, 4, 16, 18, 24] });
 * predictLinear(fit, { speed: 9 }).value; // → 15.1304
 */
export function predictLinear(fit: LinearFit, at: Readonly<Record<string, number | string>>): LinearPrediction {
  const { row: entries, extrapolated } = designRow("predictLinear", fit, at);
  const row = fit.hasIntercept ? [1, ...entries] : entries;
  let value = 0;
  let variance = 0;
  for (let i = 0; i < row.length; i++) {
    value += row[i] * fit.parameters[fit.names[i]].estimate;
    for (let j = 0; j < row.length; j++) variance += row[i] * row[j] * fit.covariance[i][j];
  }
  variance = Math.max(0, variance);
  return freezeDeep({
    value,
    ...intervalsAround(fit, value, variance),
    extrapolated,
  });
}
