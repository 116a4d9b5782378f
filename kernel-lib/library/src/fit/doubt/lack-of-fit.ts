import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { fPValue } from "../../statistics/distributions/f-distribution";
import type { CurveFit } from "../curve/fit-curve";

/** What a test for lack of fit looks at: where, what, how much it counts. */
export type TestedFit<X> = Pick<CurveFit<string, X>, "x" | "y" | "weights" | "n" | "degreesOfFreedom" | "rss">;

/** A lack-of-fit test. */
export interface LackOfFit {
  readonly pureErrorSs: number;
  readonly pureErrorDf: number;
  readonly lackOfFitSs: number;
  readonly lackOfFitDf: number;
  /** mean square of lack of fit over mean square of pure error */
  readonly f: number;
  readonly pValue: number;
  /** one sentence */
  readonly reading: string;
}

/**
 * Tests a curve against its replicates: F = (lack of fit / its df) / (pure error / its df), pure error being the scatter
 * among trials at the same x (Draper & Smith, Applied Regression Analysis, ch. 2).
 *
 * @param fit a curve or surface fit with trials repeated at one or more x
 * @example
 * const x = [1, 1, 2, 2, 3, 3];
 * lackOfFit(fitCurve(curves.line, { x, y: [2.0, 2.2, 3.0, 3.1, 5.1, 4.9] })).pValue; // → 0.018074
 */
export function lackOfFit<X>(fit: TestedFit<X>): LackOfFit {
  const groups = new Map<string, number[]>();
  fit.x.forEach((x, i) => {
    const key = JSON.stringify(x);
    const group = groups.get(key);
    if (group) group.push(i);
    else groups.set(key, [i]);
  });
  const pureErrorDf = fit.n - groups.size;
  const lackOfFitDf = groups.size - (fit.n - fit.degreesOfFreedom);
  if (pureErrorDf === 0) {
    fail("lackOfFit: x", "must hold some value more than once: repeat a trial at the same x", fit.n);
  }
  if (lackOfFitDf <= 0) {
    fail(
      "lackOfFit: x",
      "must hold more different values than the fit has parameters: log trials at another x",
      groups.size,
    );
  }
  let pureErrorSs = 0;
  for (const group of groups.values()) {
    const total = group.reduce((sum, i) => sum + fit.weights[i], 0);
    const mean = group.reduce((sum, i) => sum + fit.weights[i] * fit.y[i], 0) / total;
    pureErrorSs += group.reduce((sum, i) => sum + fit.weights[i] * (fit.y[i] - mean) ** 2, 0);
  }
  if (!(pureErrorSs > 0)) {
    fail(
      "lackOfFit: y",
      "must differ somewhere among repeated trials: without scatter there is nothing to judge by",
      0,
    );
  }
  const lackOfFitSs = fit.rss - pureErrorSs;
  const f = lackOfFitSs / lackOfFitDf / (pureErrorSs / pureErrorDf);
  const pValue = fPValue(f, lackOfFitDf, pureErrorDf);
  const verdict =
    pValue < 0.05
      ? "the fit misses the means by more than repeated trials differ: try another form"
      : "the fit misses the means by no more than repeated trials differ";
  return freezeDeep({
    pureErrorSs,
    pureErrorDf,
    lackOfFitSs,
    lackOfFitDf,
    f,
    pValue,
    reading: `Lack of fit F(${lackOfFitDf}, ${pureErrorDf}) = ${f.toPrecision(3)}, p = ${pValue.toPrecision(2)}: ${verdict}.`,
  });
}
