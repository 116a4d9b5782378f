import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { normalCdf } from "../../statistics/distributions/normal-distribution";
import type { Fit } from "../fit";

/** Whether residuals follow one another. */
export interface SerialPattern {
  /** Durbin–Watson statistic [-]: near 2 without pattern, below it when neighbours are alike, above when they alternate */
  readonly durbinWatson: number;
  /** stretches of residuals of one sign */
  readonly runs: number;
  /** runs expected without pattern */
  readonly expectedRuns: number;
  /** two-sided p value of the runs test of Wald & Wolfowitz (1940), normal approximation */
  readonly pValue: number;
  /** one sentence */
  readonly reading: string;
}

/**
 * Looks for a pattern in residuals along an order, such as trial order through a day or thickness:
 * Durbin & Watson's d = Σ(eᵢ − eᵢ₋₁)²/Σeᵢ², and the runs test of their signs.
 *
 * @param fit the fit
 * @param order one number a point that says where it stands, ties kept as they come; the order of the data unless given
 * @example
 * const fit = fitCurve(curves.line, { x: [1, 2, 3, 4, 5, 6, 7, 8], y: [1.0, 2.3, 3.5, 4.6, 5.5, 6.3, 7.0, 7.6] });
 * serialPattern(fit).durbinWatson; // → 0.645603
 */
export function serialPattern(fit: Fit, order?: readonly number[]): SerialPattern {
  if (order && order.length !== fit.n)
    fail("serialPattern: order", `must hold one number for each of the ${fit.n} points`, order.length);
  const index = fit.residuals.map((_, i) => i);
  if (order) index.sort((i, j) => order[i] - order[j]);
  const residuals = index.map((i) => fit.residuals[i]);
  const total = residuals.reduce((sum, value) => sum + value * value, 0);
  if (!(total > 0)) fail("serialPattern: residuals", "must not all be zero", 0);
  let steps = 0;
  for (let i = 1; i < residuals.length; i++) steps += (residuals[i] - residuals[i - 1]) ** 2;
  const durbinWatson = steps / total;
  const signs = residuals.filter((value) => value !== 0).map((value) => value > 0);
  const above = signs.filter(Boolean).length;
  const below = signs.length - above;
  if (above === 0 || below === 0)
    fail("serialPattern: residuals", "must lie on both sides of the curve", [above, below]);
  let runs = 1;
  for (let i = 1; i < signs.length; i++) if (signs[i] !== signs[i - 1]) runs++;
  const count = above + below;
  const expectedRuns = 1 + (2 * above * below) / count;
  const variance = (2 * above * below * (2 * above * below - count)) / (count * count * (count - 1));
  const z = variance > 0 ? (runs - expectedRuns) / Math.sqrt(variance) : 0;
  const pValue = 2 * normalCdf(-Math.abs(z));
  const alike = runs < expectedRuns;
  const verdict =
    pValue < 0.05
      ? `neighbours are ${alike ? "alike: the curve bends differently, or the kitchen drifted" : "opposed more often than chance"}`
      : "no pattern beyond chance";
  return freezeDeep({
    durbinWatson,
    runs,
    expectedRuns,
    pValue,
    reading: `Durbin-Watson ${durbinWatson.toFixed(2)}, ${runs} runs against ${expectedRuns.toFixed(1)} expected (p = ${pValue.toPrecision(2)}): ${verdict}.`,
  });
}
