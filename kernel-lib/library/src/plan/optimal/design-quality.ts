import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { largestOf } from "../../statistics/extremes";
import { inverseFrom } from "../../statistics/linear-algebra/cholesky";
import { type DesignModel, dependentTerm, factorOf, momentsOf, rowsOf } from "./design-model";

/** Runs to be judged. */
export interface DesignQualityOptions<Point = readonly number[]> {
  readonly points: readonly Point[];
  readonly model: DesignModel<Point>;
  /** where forecasts are wanted */
  readonly region: readonly Point[];
}

/** How well runs tell a model's coefficients. Variances are in units of one run's variance σ². */
export interface DesignQuality {
  readonly runs: number;
  /** |XᵀX| */
  readonly determinant: number;
  /** ln |XᵀX|, where the determinant itself is too large or small for a number */
  readonly logDeterminant: number;
  /** 100 |XᵀX|^(1/p)/n [%]; 100 for an orthogonal two-level plan, less for squares: compare plans of one model and region */
  readonly dEfficiency: number;
  /** mean of xᵀ(XᵀX)⁻¹x over the region, variance of a fitted value in σ² */
  readonly averageVariance: number;
  /** greatest of them */
  readonly largestVariance: number;
  /** standard error of each coefficient, in σ */
  readonly standardErrors: Readonly<Record<string, number>>;
}

/**
 * How well runs tell a model's coefficients and forecasts: |XᵀX|, D-efficiency, prediction variance xᵀ(XᵀX)⁻¹x over a region,
 * and √ of the diagonal of (XᵀX)⁻¹.
 *
 * @param options points, a model, the region
 * @returns the plan's quality; throws where its runs cannot tell the terms apart
 * @example
 * const points = fullFactorial({ levels: [3, 3] });
 * const model = termsModel({ factors: ["a", "b"], terms: polynomialTerms(["a", "b"]) });
 * designQuality({ points, model, region: points }).determinant; // → 5184
 */
export function designQuality<Point>(options: DesignQualityOptions<Point>): DesignQuality {
  const where = "designQuality";
  const { points, model, region } = options;
  const { terms } = model;
  const size = terms.length;
  if (region.length === 0) fail(`${where}: region`, "must hold at least one point", region);
  const rows = rowsOf(`${where}: points`, model, points);
  if (points.length < size)
    fail(
      `${where}: points`,
      `must be at least ${size} runs for the ${size} terms: add runs or leave terms out`,
      points.length,
    );
  const moments = momentsOf(rows, size);
  const factor =
    factorOf(moments, size) ??
    fail(
      `${where}: points`,
      `must tell "${terms[dependentTerm(moments, size)]}" from the terms before it: add runs at other levels, or leave the term out`,
      `${points.length} runs`,
    );
  let logDeterminant = 0;
  for (let i = 0; i < size; i++) logDeterminant += 2 * Math.log(factor[i * size + i]);
  const inverse = inverseFrom(factor, size);
  const variances = variancesAt(inverse, rowsOf(`${where}: region`, model, region), size);
  return freezeDeep({
    runs: points.length,
    determinant: Math.exp(logDeterminant),
    logDeterminant,
    dEfficiency: (100 * Math.exp(logDeterminant / size)) / points.length,
    averageVariance: variances.reduce((sum, one) => sum + one, 0) / region.length,
    largestVariance: largestOf(variances),
    standardErrors: Object.fromEntries(terms.map((term, at) => [term, Math.sqrt(inverse[at * size + at])])),
  });
}

/** zᵀ A z at every row. */
export function variancesAt(matrix: Float64Array, rows: Float64Array, size: number): Float64Array {
  const out = new Float64Array(rows.length / size);
  for (let row = 0; row < out.length; row++) {
    const at = row * size;
    let sum = 0;
    for (let i = 0; i < size; i++) {
      let inner = 0;
      for (let j = 0; j < size; j++) inner += matrix[i * size + j] * rows[at + j];
      sum += rows[at + i] * inner;
    }
    out[row] = sum;
  }
  return out;
}
