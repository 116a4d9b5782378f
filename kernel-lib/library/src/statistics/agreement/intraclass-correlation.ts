import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { fQuantile } from "../distributions/f-distribution";
import { checkScores } from "./scores-table";

/** Mean squares below this share of the others are rounding. */
const FLAT = 1e-12;

/** A share of the scatter that lies between the things, not the judges. */
export interface Correlation {
  readonly value: number;
  readonly confidence95: readonly [number, number];
}

/** How far judges' scores may stand for each other. */
export interface IntraclassCorrelation {
  /** of one judge's score with another's, as numbers: a judge who is a point higher counts against it */
  readonly agreement: Correlation;
  /** the same when each judge's level is taken off first */
  readonly consistency: Correlation;
  /** of the mean of all these judges, with their levels counted */
  readonly agreementOfMean: number;
  /** of the mean of all these judges, their levels taken off */
  readonly consistencyOfMean: number;
  /** mean squares of the two-way table: between things, between judges, what is left */
  readonly meanSquares: { readonly things: number; readonly judges: number; readonly rest: number };
}

/**
 * Intraclass correlations of n things scored by the same k judges, two-way without replicates, from the mean squares MSR
 * (things), MSC (judges) and MSE (rest): agreement (MSR − MSE)/(MSR + (k−1)MSE + k(MSC − MSE)/n), consistency
 * (MSR − MSE)/(MSR + (k−1)MSE); of the mean of k judges (MSR − MSE)/(MSR + (MSC − MSE)/n) and (MSR − MSE)/MSR. Intervals
 * from F, that of agreement with Satterthwaite's degrees of freedom, k − 1 at least.
 *
 * @param scores one row a thing, one column a judge
 * @example
 * intraclassCorrelation([[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]]).agreement.value; // → 0.2897638
 *
 * Source: K. O. McGraw, S. P. Wong, Psychological Methods 1 (1996) 30 to 46, cases A and C (formulas from memory); the
 * example is that of P. E. Shrout, J. L. Fleiss, Psychological Bulletin 86 (1979) 420 to 428, which gives 0.29 and 0.71.
 */
export function intraclassCorrelation(scores: readonly (readonly number[])[]): IntraclassCorrelation {
  checkScores(scores, "intraclassCorrelation");
  const n = scores.length;
  const k = scores[0].length;
  const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const things = scores.map(meanOf);
  const judges = scores[0].map((_, judge) => meanOf(scores.map((row) => row[judge])));
  const mean = meanOf(things);
  const squares = (values: readonly number[]): number => values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const rest = scores.flatMap((row, thing) => row.map((score, judge) => score - things[thing] - judges[judge] + mean));
  const msr = (k * squares(things)) / (n - 1);
  const msc = (n * squares(judges)) / (k - 1);
  const mse = rest.reduce((sum, value) => sum + value * value, 0) / ((n - 1) * (k - 1));
  if (!(mse > FLAT * (msr + msc)))
    fail("intraclassCorrelation: scores", "must scatter about what thing and judge explain", "none that do");

  const agreement = (msr - mse) / (msr + (k - 1) * mse + (k * (msc - mse)) / n);
  const ratio = (k * agreement) / (n * (1 - agreement));
  const weight = 1 + ratio * (n - 1);
  const satterthwaite =
    (ratio * msc + weight * mse) ** 2 / ((ratio * msc) ** 2 / (k - 1) + (weight * mse) ** 2 / ((n - 1) * (k - 1)));
  // two parts that are both positive have no fewer than the smaller; a negative estimate may have none
  const df = Number.isNaN(satterthwaite) ? k - 1 : Math.max(satterthwaite, k - 1);
  const low = fQuantile(0.975, n - 1, df);
  const high = fQuantile(0.975, df, n - 1);
  const others = k * msc + (k * n - k - n) * mse;
  const f = msr / mse;
  const fLow = f / fQuantile(0.975, n - 1, (n - 1) * (k - 1));
  const fHigh = f * fQuantile(0.975, (n - 1) * (k - 1), n - 1);
  return freezeDeep({
    agreement: {
      value: agreement,
      confidence95: [
        (n * (msr - low * mse)) / (low * others + n * msr),
        (n * (high * msr - mse)) / (others + n * high * msr),
      ],
    },
    consistency: {
      value: (msr - mse) / (msr + (k - 1) * mse),
      confidence95: [(fLow - 1) / (fLow + k - 1), (fHigh - 1) / (fHigh + k - 1)],
    },
    agreementOfMean: (msr - mse) / (msr + (msc - mse) / n),
    consistencyOfMean: (msr - mse) / msr,
    meanSquares: { things: msr, judges: msc, rest: mse },
  });
}
