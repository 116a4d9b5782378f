import { largestOf, smallestOf } from "../../statistics/extremes";
import { choleskyOrNull, solveLower, solveUpper } from "../../statistics/linear-algebra/cholesky";
import { dot } from "../../statistics/linear-algebra/square-matrix";
import { intervalFactor } from "../doubt/interval-factor";
import type { SlabTimeFit } from "./fit-slab-time";

/**
 * 95 % profile-likelihood interval of t = c0 + aL + bL² at one thickness: the least and the greatest time there of all curves
 * with c0, a, b ≥ 0 whose weighted sum of squares passes the fit's by no more than s² t² (Bates & Watts 1988, sect. 6.1). Where
 * no bound is near it is the usual ± t standard errors; where a term rests at its bound it lets the term leave it.
 *
 * Coverage of such intervals under bounds is not exact (Batlle, Patil & Stark 2023 on Burrus's conjecture); simulated
 * kitchens give 92 to 99.9 % (`predict-slab-time.test.ts`).
 *
 * The ends lie on the faces of the allowed region, each of which is solved directly: a curve on it with some terms at zero.
 */
export function slabTimeBand(fit: SlabTimeFit, thicknessMm: number): readonly [number, number] {
  const unitMm = fit.x.reduce((sum, x) => sum + x, 0) / fit.n;
  const { gram, pull } = normalEquations(fit, unitMm);
  const at = TERMS.map((_, power) => (thicknessMm / unitMm) ** power);
  const own = TERMS.map((name, power) => fit.parameters[name].estimate * unitMm ** power);
  const held = TERMS.map((name) => fit.bandForm !== "full" && fit.parameters[name].fixed);
  const room = (intervalFactor(fit) * fit.residualSd) ** 2;
  const ends = [dot(at, own)];
  for (const face of FACES) {
    if (face.some((k) => held[k])) continue;
    const size = face.length;
    const lower = choleskyOrNull(Float64Array.from(face.flatMap((i) => face.map((j) => gram[i][j]))), size, SINGULAR);
    if (lower === null) continue;
    const solve = (right: readonly number[]): number[] =>
      Array.from(solveUpper(lower, size, solveLower(lower, size, Float64Array.from(right))));
    // the steps that bring the other terms to zero, and then the best curve with these terms
    const off = TERMS.map((_, k) => (face.includes(k) ? 0 : -own[k]));
    const right = face.map((i) => pull[i] - dot(gram[i], off));
    const best = solve(right);
    const rise =
      dot(
        off,
        gram.map((row) => dot(row, off)),
      ) -
      2 * dot(pull, off) -
      dot(right, best);
    if (rise > room) continue;
    const along = face.map((k) => at[k]);
    const direction = solve(along);
    const reach = Math.sqrt((room - rise) / dot(direction, along));
    for (const side of [-1, 1]) {
      const curve = face.map((k, i) => own[k] + best[i] + side * reach * direction[i]);
      if (curve.every((value) => value >= 0)) ends.push(dot(along, curve));
    }
  }
  return [smallestOf(ends), largestOf(ends)];
}

const TERMS = ["c0", "a", "b"] as const;
/** Which terms are above zero. */
const FACES: readonly (readonly number[])[] = [[0, 1, 2], [0, 1], [0, 2], [1, 2], [0], [1], [2], []];
/** Pivots below this share of their column are rounding: two thicknesses leave one direction of the full form open. */
const SINGULAR = 1e-11;

/** XᵀWX and XᵀWr, r the residuals, with lengths in `unitMm`; trials seen from one side by what stands for them. */
function normalEquations(fit: SlabTimeFit, unitMm: number): { gram: number[][]; pull: number[] } {
  const gram = TERMS.map(() => TERMS.map(() => 0));
  const pull = TERMS.map(() => 0);
  const add = (x: number, weight: number, residual: number): void => {
    const row = TERMS.map((_, power) => (x / unitMm) ** power);
    row.forEach((left, i) => {
      pull[i] += weight * left * residual;
      row.forEach((right, j) => {
        gram[i][j] += weight * left * right;
      });
    });
  };
  fit.x.forEach((x, i) => {
    add(x, fit.weights[i], fit.residuals[i]);
  });
  for (const { thicknessMm, weight, residual } of fit.oneSided) add(thicknessMm, weight, residual);
  return { gram, pull };
}
