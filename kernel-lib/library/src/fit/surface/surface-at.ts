import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { intervalsAround } from "../doubt/intervals-around";
import { type SurfaceFit, termsOf } from "./fit-surface";

/** A surface's height at one point, with its doubt. */
export interface SurfaceHeight {
  readonly value: number;
  readonly standardError: number;
  readonly confidence95: readonly [number, number];
  readonly prediction95: readonly [number, number];
  /** some factor lies beyond the trials */
  readonly extrapolated: boolean;
}

/**
 * A surface's height at a point in coded units, the blocks counted alike: x'b ± t √(x'Vx), and for one more trial ± t √(x'Vx + s²).
 *
 * @example
 * const points = [[-1], [-1], [0], [0], [1], [1]];
 * const fit = fitSurface({ factors: ["air"], points, y: [1.1, 0.9, 3, 3.2, 1, 1.2] });
 * surfaceAt(fit, [0.5]).value; // → 2.6125
 */
export function surfaceAt(fit: SurfaceFit, point: readonly number[]): SurfaceHeight {
  checkPoint("surfaceAt", fit, point);
  const row = rowAt(fit, point);
  let value = 0;
  let variance = 0;
  for (let i = 0; i < row.length; i++) {
    value += row[i] * fit.parameters[fit.names[i]].estimate;
    for (let j = 0; j < row.length; j++) variance += row[i] * row[j] * fit.covariance[i][j];
  }
  const outside = fit.factors.some((name, at) => point[at] < fit.ranges[name][0] || point[at] > fit.ranges[name][1]);
  return freezeDeep({ value, ...intervalsAround(fit, value, Math.max(0, variance)), extrapolated: outside });
}

/** The entries that a fit's coefficients are multiplied by at a point; blocks in equal shares. */
export function rowAt(fit: SurfaceFit, point: readonly number[]): readonly number[] {
  const powers = new Map(termsOf(fit.factors, fit.form).map(({ name, powers: of }) => [name, of]));
  const blocks = Math.max(1, fit.levels.block?.length ?? 1);
  return fit.names.map((name) => {
    if (name === "intercept") return 1;
    return powers.get(name)?.reduce((product, at) => product * point[at], 1) ?? 1 / blocks;
  });
}

/** Throws where a point does not hold a number for every factor. */
export function checkPoint(where: string, fit: SurfaceFit, point: readonly number[]): void {
  if (point.length !== fit.factors.length || !point.every(Number.isFinite))
    fail(`${where}: point`, `must hold a finite number for each of ${fit.factors.join(", ")}`, point);
}
