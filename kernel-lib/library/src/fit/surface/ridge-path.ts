import { fail, notNegative } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { dot } from "../../statistics/linear-algebra/square-matrix";
import { symmetricEigen } from "../../statistics/linear-algebra/symmetric-eigen";
import type { SurfaceFit } from "./fit-surface";
import { type SurfaceHeight, surfaceAt } from "./surface-at";

/** What `ridgePath` works from. */
export interface RidgePathOptions {
  readonly fit: SurfaceFit;
  /** distances from the middle of the plan, coded units; 0, 0.25, … 1.5 unless given */
  readonly radii?: readonly number[];
  /** "highest" unless given */
  readonly towards?: "highest" | "lowest";
}

/** The best point at one distance from the middle. */
export interface RidgePoint extends SurfaceHeight {
  readonly radius: number;
  /** coded units */
  readonly point: readonly number[];
}

const USUAL_RADII: readonly number[] = [0, 0.25, 0.5, 0.75, 1, 1.25, 1.5];

/**
 * Ridge of a surface: its highest (or lowest) point at each distance R from the middle (Hoerl 1959; Draper 1963, from memory).
 * With Lagrange's μ above the largest eigenvalue of B, x = −½ (B − μ1)⁻¹ b, and |x| falls as μ grows: the μ that gives R is found by
 * bisection. Where the slope has no part along the largest axis, the rest of R is gone along that axis. A surface without bends gives
 * the steepest ascent.
 *
 * @returns a point a radius, with the surface's height there and its doubt
 * @example
 * const points = [[-1, -1], [1, -1], [-1, 1], [1, 1], [-1, 0], [1, 0], [0, -1], [0, 1], [0, 0], [0, 0]];
 * const y = points.map(([a, b], at) => 5 + a + b - a * a - 2 * b * b + 0.01 * (at % 3));
 * ridgePath({ fit: fitSurface({ factors: ["air", "time"], points, y }), radii: [0.5] })[0].point; // → [0.442, 0.234]
 */
export function ridgePath(options: RidgePathOptions): readonly RidgePoint[] {
  const where = "ridgePath";
  const { fit, radii = USUAL_RADII, towards = "highest" } = options;
  if (towards !== "highest" && towards !== "lowest")
    fail(`${where}: towards`, 'must be "highest" or "lowest"', towards);
  const sign = towards === "highest" ? 1 : -1;
  const bends = fit.bends.map((row) => row.map((value) => sign * value));
  const slopes = fit.slopes.map((value) => sign * value);
  const { values, vectors } = symmetricEigen(bends);
  const along = vectors.map((vector) => dot(vector, slopes));
  return freezeDeep(
    radii.map((radius) => {
      notNegative(radius, `${where}: radii`, "");
      const parts = radius === 0 ? values.map(() => 0) : partsAt(values, along, radius);
      const point = fit.factors.map((_, at) => parts.reduce((sum, part, axis) => sum + part * vectors[axis][at], 0));
      return { radius, point, ...surfaceAt(fit, point) };
    }),
  );
}

/** How far to go along each axis for the highest point at a radius: partᵢ = slopeᵢ / (2 (μ − λᵢ)). */
function partsAt(values: readonly number[], along: readonly number[], radius: number): readonly number[] {
  const top = values[0];
  const size = lengthOf(along);
  const parts = (mu: number): readonly number[] => values.map((value, axis) => along[axis] / (2 * (mu - value)));
  const tiny = 1e-12 * Math.max(1e-300, Math.abs(top), size);
  const onTop = values.map((value) => top - value <= tiny);
  // without a slope along the top axis |x| stays short even at μ = λ: the rest goes along that axis
  if (along.every((slope, axis) => !onTop[axis] || Math.abs(slope) <= tiny)) {
    const below = values.map((value, axis) => (onTop[axis] ? 0 : along[axis] / (2 * (top - value))));
    const rest = radius * radius - dot(below, below);
    if (rest >= 0) return below.map((part, axis) => (axis === 0 ? Math.sqrt(rest) : part));
  }
  let low = top;
  // at this μ every part is short enough
  let high = top + size / (2 * radius) + tiny;
  for (let step = 0; step < 200; step++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (lengthOf(parts(middle)) > radius) low = middle;
    else high = middle;
  }
  const found = parts(high);
  const share = radius / lengthOf(found);
  return found.map((part) => part * share);
}

function lengthOf(parts: readonly number[]): number {
  return Math.sqrt(dot(parts, parts));
}
