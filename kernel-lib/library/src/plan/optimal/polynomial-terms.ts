import { fail } from "../../check/check";

/** Up to lines, to products of two factors, or to squares as well. */
export type PolynomialForm = "linear" | "interactions" | "quadratic";

/**
 * Terms of a polynomial in factors, as `termsModel` reads them: 1; each x; each x*z ("interactions"); each x^2 ("quadratic"),
 * which makes (k + 1)(k + 2)/2 terms for k factors.
 *
 * @param factors names
 * @param form "quadratic" unless given
 * @example
 * polynomialTerms(["air", "time"]); // → ["1", "air", "time", "air*time", "air^2", "time^2"]
 */
export function polynomialTerms(factors: readonly string[], form: PolynomialForm = "quadratic"): readonly string[] {
  if (factors.length === 0) fail("polynomialTerms: factors", "must name at least one factor", factors);
  if (!["linear", "interactions", "quadratic"].includes(form))
    fail("polynomialTerms: form", 'must be "linear", "interactions" or "quadratic"', form);
  const products = factors.flatMap((one, at) => factors.slice(at + 1).map((other) => `${one}*${other}`));
  return Object.freeze([
    "1",
    ...factors,
    ...(form === "linear" ? [] : products),
    ...(form === "quadratic" ? factors.map((name) => `${name}^2`) : []),
  ]);
}
