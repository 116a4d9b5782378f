import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { intervalsAround } from "../doubt/intervals-around";
import type { PolynomialFit } from "./fit-polynomial";
import type { Prediction } from "./predict-curve";

/**
 * A fitted polynomial at x with 95 % intervals for the curve and for one more trial.
 *
 * @example
 * const fit = fitPolynomial({ x: [1, 2, 3, 4, 5], y: [1.1, 3.9, 9.2, 15.8, 25.1], degree: 2 });
 * predictPolynomial(fit, 2.5).value; // → 6.2375
 */
export function predictPolynomial(fit: PolynomialFit, x: number): Prediction {
  if (!Number.isFinite(x)) fail("predictPolynomial: x", "must be a finite number", x);
  const { centre, halfRange, coefficients, covariance } = fit.scaled;
  const z = (x - centre) / halfRange;
  const powers = coefficients.map((_, k) => z ** k);
  const value = powers.reduce((sum, power, k) => sum + power * coefficients[k], 0);
  let variance = 0;
  for (let i = 0; i < powers.length; i++) {
    for (let j = 0; j < powers.length; j++) variance += powers[i] * powers[j] * covariance[i][j];
  }
  variance = Math.max(0, variance);
  const [low, high] = fit.rangeX as readonly [number, number];
  return freezeDeep({
    x,
    value,
    ...intervalsAround(fit, value, variance),
    extrapolated: x < low || x > high,
  });
}
