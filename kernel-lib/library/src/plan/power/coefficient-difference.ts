import { fail, positive } from "../../check/check";
import type { DesignModel } from "../optimal/design-model";
import { designQuality } from "../optimal/design-quality";
import { solveTrials } from "./solve-trials";
import { powerOfT } from "./two-means";

/** A difference between two curves, each tried at the same points, in one of their coefficients. */
export interface CoefficientDifference<Point = readonly number[]> {
  /** `termsModel({ … })`, or `gradientModel({ … })` for a curve near current estimates */
  readonly model: DesignModel<Point>;
  /** where each of the two is tried, once through */
  readonly points: readonly Point[];
  /** which coefficient, by the name of its term or parameter */
  readonly term: string;
  /** the smallest difference worth seeing, in the coefficient's unit */
  readonly difference: number;
  /** standard deviation of one trial, in the unit of what is measured */
  readonly sd: number;
  /** chance of seeing a difference that is not there [-]; 0.05 unless given */
  readonly significance?: number;
}

/**
 * Chance that a two-sided t test sees that one coefficient of two curves differs, when both are tried at the same points r
 * times over: with c the coefficient's diagonal element of (XᵀX)⁻¹, noncentral t with noncentrality
 * difference/(sd √(2c/r)) and 2(rn − p) degrees of freedom. Exact for coefficients that enter linearly; for a curve's
 * parameters as good as its derivatives at the estimates are (delta method).
 *
 * @param replicates how often each goes through the points; need not be whole
 * @example
 * const model = termsModel({ factors: ["thickness"], terms: ["1", "thickness"] });
 * powerOfCoefficientDifference({ model, points: [[-1], [0], [1]], term: "thickness", difference: 1, sd: 0.5 }, 2); // → 0.6985
 */
export function powerOfCoefficientDifference<Point>(design: CoefficientDifference<Point>, replicates: number): number {
  const where = "powerOfCoefficientDifference";
  const { share, runs, terms } = settled(where, design);
  const degreesOfFreedom = 2 * (replicates * runs - terms);
  if (!(degreesOfFreedom > 0))
    fail(`${where}: replicates`, `must be > ${terms / runs}, to leave some scatter to judge by`, replicates);
  return powerOfT({
    where,
    noncentrality: share * Math.sqrt(replicates / 2),
    degreesOfFreedom,
    significance: design.significance ?? 0.05,
  });
}

/**
 * How often each of two curves must go through the points until the difference is seen with the given chance; round up.
 *
 * @param power chance of seeing it [-]; 0.9 unless given
 * @example
 * const model = termsModel({ factors: ["thickness"], terms: ["1", "thickness"] });
 * replicatesForCoefficientDifference({ model, points: [[-1], [0], [1]], term: "thickness", difference: 1, sd: 0.5 }); // → 3.0361
 */
export function replicatesForCoefficientDifference<Point>(design: CoefficientDifference<Point>, power = 0.9): number {
  const where = "replicatesForCoefficientDifference";
  const { runs, terms } = settled(where, design);
  const least = Math.max(1, (terms + 0.5) / runs);
  return solveTrials(where, power, (replicates) => powerOfCoefficientDifference(design, replicates), least);
}

/** The difference over its standard deviation with one trial a curve's worth of knowledge, and how many runs and terms. */
function settled<Point>(
  where: string,
  { model, points, term, difference, sd }: CoefficientDifference<Point>,
): { readonly share: number; readonly runs: number; readonly terms: number } {
  if (!model.terms.includes(term)) fail(`${where}: term`, `must be one of ${model.terms.join(", ")}`, term);
  positive(Math.abs(difference), `${where}: difference`, "");
  positive(sd, `${where}: sd`, "");
  const { standardErrors } = designQuality({ points, model, region: points });
  return { share: Math.abs(difference) / (sd * standardErrors[term]), runs: points.length, terms: model.terms.length };
}
