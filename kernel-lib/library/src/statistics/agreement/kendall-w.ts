import { freezeDeep } from "../../check/freeze-deep";
import { chiSquaredPValue } from "../distributions/chi-squared-distribution";
import { checkScores } from "./scores-table";

/** How far judges put things in the same order. */
export interface Concordance {
  /** 0: no more than chance can be told from none; 1: every judge has the same order [-]; NaN when no judge tells any two apart */
  readonly w: number;
  readonly chiSquared: number;
  readonly df: number;
  /** chance of a W this large when the orders have nothing in common; the χ² form is rough below about 8 things */
  readonly pValue: number;
}

/**
 * Kendall's coefficient of concordance W of m judges over n things, corrected for ties:
 * W = (12 ΣRᵢ² − 3m²n(n+1)²) / (m²n(n²−1) − m ΣTⱼ), Rᵢ the sum of the ranks of thing i, Tⱼ = Σ(t³ − t) over the groups of
 * t equal scores of judge j; χ² = m(n−1)W with n − 1 degrees of freedom.
 *
 * @param scores one row a thing, one column a judge; only each judge's order counts
 * @example
 * kendallW([[1, 2, 1], [2, 3, 3], [3, 4, 2], [4, 5, 4]]).w; // → 0.9111111
 *
 * Source: M. G. Kendall, J. D. Gibbons, Rank Correlation Methods, chapter 6 (from memory); checked against R's friedman.test.
 */
export function kendallW(scores: readonly (readonly number[])[]): Concordance {
  checkScores(scores, "kendallW");
  const things = scores.length;
  const judges = scores[0].length;
  const rankSums = new Float64Array(things);
  let ties = 0;
  for (let judge = 0; judge < judges; judge++) {
    const given = scores.map((row) => row[judge]);
    const order = given.map((_, thing) => thing).sort((a, b) => given[a] - given[b]);
    for (let from = 0; from < things; ) {
      let to = from + 1;
      while (to < things && given[order[to]] === given[order[from]]) to++;
      const equal = to - from;
      ties += equal ** 3 - equal;
      for (let at = from; at < to; at++) rankSums[order[at]] += (from + 1 + to) / 2;
      from = to;
    }
  }
  const squares = rankSums.reduce((sum, rank) => sum + rank * rank, 0);
  const w =
    (12 * squares - 3 * judges ** 2 * things * (things + 1) ** 2) /
    (judges ** 2 * things * (things ** 2 - 1) - judges * ties);
  const df = things - 1;
  const chiSquared = judges * df * w;
  return freezeDeep({ w, chiSquared, df, pValue: Number.isNaN(w) ? Number.NaN : chiSquaredPValue(chiSquared, df) });
}
