import { fail } from "../../check/check";
import { solveLower } from "../../statistics/linear-algebra/cholesky";
import { seededRandom } from "../../statistics/random/seeded-random";
import { type DesignModel, dependentTerm, factorOf, momentsOf, rowsOf } from "./design-model";
import { type DesignQuality, designQuality } from "./design-quality";
import { type Exchanged, type ExchangeProblem, exchangeRuns } from "./exchange-runs";
import { startRuns } from "./start-runs";

/** What to choose runs from, and for what. */
export interface OptimalDesignOptions<Point = readonly number[]> {
  /** every point that may be run: any list, such as a grid without what is not allowed */
  readonly candidates: readonly Point[];
  /** `termsModel({ … })`, `gradientModel({ … })`, or `{ terms, row }` of one's own */
  readonly model: DesignModel<Point>;
  /** how many runs to choose; a candidate may be chosen more than once */
  readonly runs: number;
  /** "D" (unless given) for well-known coefficients, "I" for well-known forecasts over the region */
  readonly criterion?: "D" | "I";
  /** runs that were made, or are settled, and count; none unless given */
  readonly kept?: readonly Point[];
  /** where forecasts are wanted; the candidates unless given */
  readonly region?: readonly Point[];
  /** how many times the search begins anew; 20 unless given */
  readonly starts?: number;
  /** 1 unless given; the same seed gives the same plan everywhere */
  readonly seed?: number;
}

/** The best plan that was found. */
export interface OptimalDesign<Point = readonly number[]> {
  /** the chosen runs, in the order of the candidates; `kept` is not repeated */
  readonly points: readonly Point[];
  /** place of each among the candidates, from 0 */
  readonly chosen: readonly number[];
  readonly criterion: "D" | "I";
  /** of kept and chosen runs together */
  readonly quality: DesignQuality;
  readonly starts: number;
  /** starts that ended in a plan as good as this one: where few did, a better one may be missed; give more starts */
  readonly startsAgreeing: number;
}

/**
 * Chooses runs from candidates by exchange, from several random starts: "D" makes |XᵀX| as great as it can, "I" the mean of
 * xᵀ(XᵀX)⁻¹x over the region as small as it can (Fedorov 1972). An exchange ends where no single run can be bettered, which
 * need not be the best plan of all: hence the starts.
 *
 * @param options candidates, model, how many runs
 * @returns the runs, their quality, how many starts agree; throws one sentence where no plan can be made
 * @example
 * const factors = ["air", "time"];
 * const model = termsModel({ factors, terms: polynomialTerms(factors) });
 * optimalDesign({ candidates: fullFactorial({ levels: [3, 3] }), model, runs: 7 }).quality.determinant; // → 960
 *
 * Reference: Fedorov, Theory of Optimal Experiments, 1972; Cook & Nachtsheim (1980), Technometrics 22, 315.
 */
export function optimalDesign<Point>(options: OptimalDesignOptions<Point>): OptimalDesign<Point> {
  const where = "optimalDesign";
  const { candidates, model, runs, criterion = "D", kept = [], region = candidates, starts = 20 } = options;
  if (candidates.length === 0)
    fail(
      `${where}: candidates`,
      "must hold at least one point: loosen what is allowed, or refine the grid",
      candidates,
    );
  if (criterion !== "D" && criterion !== "I") fail(`${where}: criterion`, 'must be "D" or "I"', criterion);
  if (region.length === 0) fail(`${where}: region`, "must hold at least one point", region);
  if (!(Number.isInteger(starts) && starts >= 1 && starts <= 10_000))
    fail(`${where}: starts`, "must be a whole number from 1 to 10000", starts);
  const size = model.terms.length;
  if (!(Number.isInteger(runs) && runs >= 1)) fail(`${where}: runs`, "must be a whole number >= 1", runs);
  if (runs + kept.length < size)
    fail(
      `${where}: runs`,
      `must be at least ${size - kept.length} for the ${size} terms${kept.length > 0 ? `, beside ${kept.length} kept` : ""}: give more runs or leave terms out`,
      runs,
    );
  const problem = problemOf(where, { candidates, model, kept, region, criterion });
  const { best, agreeing } = search(problem, runs, starts, options.seed ?? 1);
  if (best === null)
    fail(
      `${where}: runs`,
      `must be more, as the ${kept.length} kept runs repeat themselves: give more runs or leave terms out`,
      runs,
    );
  const chosen = [...best.chosen].sort((a, b) => a - b);
  const points = chosen.map((at) => candidates[at]);
  return Object.freeze({
    points: Object.freeze(points),
    chosen: Object.freeze(chosen),
    criterion,
    quality: designQuality({ points: [...kept, ...points], model, region }),
    starts,
    startsAgreeing: agreeing,
  });
}

/**
 * Rows in coordinates in which candidates and kept runs have mean z zᵀ = 1: neither the search nor its rounding then knows
 * the units of the terms. z = L⁻¹x multiplies every determinant by the same number.
 */
function problemOf<Point>(
  where: string,
  {
    candidates,
    model,
    kept,
    region,
    criterion,
  }: Required<Pick<OptimalDesignOptions<Point>, "candidates" | "model" | "kept" | "region" | "criterion">>,
): ExchangeProblem {
  const size = model.terms.length;
  const rows = rowsOf(`${where}: candidates`, model, candidates);
  const keptRows = rowsOf(`${where}: kept`, model, kept);
  const moments = new Float64Array(size * size);
  for (const part of [momentsOf(rows, size), momentsOf(keptRows, size)])
    for (let i = 0; i < moments.length; i++) moments[i] += part[i] / (candidates.length + kept.length);
  const lower =
    factorOf(moments, size) ??
    fail(
      `${where}: candidates`,
      `must tell "${model.terms[dependentTerm(moments, size)]}" from the terms before it: give candidates at more levels, or leave the term out`,
      `${candidates.length} candidates`,
    );
  const turned = (list: Float64Array): Float64Array => {
    for (let at = 0; at < list.length; at += size) solveLower(lower, size, list.subarray(at, at + size));
    return list;
  };
  const weightOf = (): Float64Array =>
    momentsOf(turned(rowsOf(`${where}: region`, model, region)), size).map((sum) => sum / region.length);
  return {
    rows: turned(rows),
    size,
    kept: momentsOf(turned(keptRows), size),
    weight: criterion === "I" ? weightOf() : null,
  };
}

function search(
  problem: ExchangeProblem,
  runs: number,
  starts: number,
  seed: number,
): { best: Exchanged | null; agreeing: number } {
  const random = seededRandom(seed);
  let best: Exchanged | null = null;
  let agreeing = 0;
  for (let start = 0; start < starts; start++) {
    // the first draws none, so that it finds a plan wherever there is one
    const drawn = start === 0 ? 0 : 1 + random.integer(Math.max(1, Math.ceil(Math.min(runs, problem.size) / 2)));
    const found = exchangeRuns(problem, startRuns(problem, runs, drawn, random));
    if (found === null) continue;
    const lead = best === null ? 1 : found.value - best.value;
    const near = best === null ? 0 : 1e-7 * Math.max(1, Math.abs(best.value));
    if (lead > near) agreeing = 1;
    else if (lead > -near) agreeing++;
    if (lead > 0) best = found;
  }
  return { best, agreeing };
}
