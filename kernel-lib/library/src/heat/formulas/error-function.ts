import { incompleteGamma } from "../../statistics/distributions/incomplete-gamma";

/** Error function erf x = P(½, x²), for x ≥ 0. */
export function errorFunction(x: number): number {
  return incompleteGamma(0.5, x * x).lower;
}

/** Complementary error function erfc x = Q(½, x²), for x ≥ 0; keeps its digits where it is small. */
export function complementaryError(x: number): number {
  return incompleteGamma(0.5, x * x).upper;
}
