import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { fPValue } from "../../statistics/distributions/f-distribution";
import type { Fit } from "../fit";

/** A test of a fit against a restriction of it. */
export interface NestedTest {
  readonly f: number;
  readonly numeratorDf: number;
  readonly denominatorDf: number;
  readonly pValue: number;
  /** one sentence */
  readonly reading: string;
}

/**
 * Extra-sum-of-squares F test of a wide form against a narrow one that is a restriction of it:
 * F = ((rss₁ − rss₂)/(df₁ − df₂)) / (rss₂/df₂) (Bates & Watts 1988, sect. 3.10).
 *
 * @param narrow the restricted fit
 * @param wide the fit with more parameters, to the same points
 * @example
 * const data = { x: [1, 2, 3, 4, 5, 6], y: [1.2, 3.9, 9.3, 15.7, 25.2, 35.8] };
 * compareNested(fitCurve(curves.line, data), fitCurve(curves.polynomial(2), data)).f; // → 418.091
 */
export function compareNested(narrow: Fit, wide: Fit): NestedTest {
  if (narrow.n !== wide.n) fail("compareNested: fits", "must rest on the same points", [narrow.n, wide.n]);
  const numeratorDf = narrow.degreesOfFreedom - wide.degreesOfFreedom;
  if (numeratorDf <= 0) fail("compareNested: wide", "must have more parameters than narrow", -numeratorDf);
  if (!(wide.rss <= narrow.rss * (1 + 1e-9))) {
    fail(
      "compareNested: wide",
      `must fit at least as closely as narrow (rss ${narrow.rss}), or it does not contain it`,
      wide.rss,
    );
  }
  const denominatorDf = wide.degreesOfFreedom;
  const f = Math.max(0, narrow.rss - wide.rss) / numeratorDf / (wide.rss / denominatorDf);
  const pValue = fPValue(f, numeratorDf, denominatorDf);
  const terms = numeratorDf === 1 ? "extra term is" : `${numeratorDf} extra terms are`;
  return freezeDeep({
    f,
    numeratorDf,
    denominatorDf,
    pValue,
    reading: `F(${numeratorDf}, ${denominatorDf}) = ${f.toPrecision(3)}, p = ${pValue.toPrecision(2)}: the ${terms} ${pValue < 0.05 ? "supported" : "not supported"} by these ${wide.n} trials.`,
  });
}
