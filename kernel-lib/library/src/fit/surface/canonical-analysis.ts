import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { largestOf } from "../../statistics/extremes";
import { dot } from "../../statistics/linear-algebra/square-matrix";
import { symmetricEigen } from "../../statistics/linear-algebra/symmetric-eigen";
import { intervalFactor } from "../doubt/interval-factor";
import type { SurfaceFit } from "./fit-surface";
import { type SurfaceHeight, surfaceAt } from "./surface-at";

/** How a surface bends along one of its own axes. */
export interface CanonicalAxis {
  /** λ: y changes by λ·distance² from the stationary point along it */
  readonly bend: number;
  readonly standardError: number;
  readonly interval95: readonly [number, number];
  /** of length 1, a number a factor */
  readonly direction: readonly number[];
}

/** Where a quadratic surface is level, and how it bends there. */
export interface CanonicalAnalysis {
  /** the point at which the surface is level, in coded units */
  readonly stationary: readonly number[];
  readonly height: SurfaceHeight;
  /** from the middle of the plan, coded units */
  readonly distance: number;
  /** inside the trials' range of every factor */
  readonly inside: boolean;
  /** from the largest bend to the smallest */
  readonly axes: readonly CanonicalAxis[];
  /** "ridge" where the bend along some axis may as well be none (its interval holds 0) */
  readonly kind: "highest" | "lowest" | "saddle" | "ridge";
  /** one sentence */
  readonly reading: string;
}

/**
 * Canonical analysis of a quadratic surface (Box & Wilson 1951): the stationary point x_s = −½ B⁻¹ b, where the surface is level,
 * and the eigenvalues λ of B with their directions w: y = y_s + Σ λᵢ zᵢ², z being distances from x_s. The standard error of a λ is
 * that of w'Bw with w held (double linear regression, Bisgaard & Ankenman 1996, from memory).
 *
 * @throws for a form other than quadratic, and where the surface bends along no axis at all
 * @example
 * const points = [[-1, -1], [1, -1], [-1, 1], [1, 1], [-1, 0], [1, 0], [0, -1], [0, 1], [0, 0], [0, 0]];
 * const y = points.map(([a, b], at) => 5 + a - a * a - 2 * b * b + 0.01 * (at % 3));
 * canonicalAnalysis(fitSurface({ factors: ["air", "time"], points, y })).kind; // → "highest"
 */
export function canonicalAnalysis(fit: SurfaceFit): CanonicalAnalysis {
  const where = "canonicalAnalysis";
  if (fit.form !== "quadratic") fail(`${where}: fit`, "must be of a quadratic surface", fit.form);
  const { bends, slopes, factors } = fit;
  const { values, vectors } = symmetricEigen(bends);
  const most = largestOf(values.map(Math.abs));
  if (!values.every((value) => Math.abs(value) > 1e-12 * most))
    fail(`${where}: fit`, "must bend along every axis: this surface is level along one, follow its ridge", values);
  const stationary = factors.map((_, at) =>
    values.reduce((sum, value, axis) => sum - (vectors[axis][at] * dot(vectors[axis], slopes)) / (2 * value), 0),
  );
  const factor = intervalFactor(fit);
  const axes = values.map((bend, axis) => {
    const standardError = Math.sqrt(Math.max(0, bendVariance(fit, vectors[axis])));
    const interval95 = [bend - factor * standardError, bend + factor * standardError] as const;
    return { bend, standardError, interval95, direction: signed(vectors[axis]) };
  });
  const inside = factors.every(
    (name, at) => stationary[at] >= fit.ranges[name][0] && stationary[at] <= fit.ranges[name][1],
  );
  const isRidge = axes.some(({ interval95: [low, high] }) => low <= 0 && high >= 0);
  const kind = isRidge
    ? "ridge"
    : values.every((value) => value < 0)
      ? "highest"
      : values.every((value) => value > 0)
        ? "lowest"
        : "saddle";
  const height = surfaceAt(fit, stationary);
  return freezeDeep({
    stationary,
    height,
    distance: Math.sqrt(dot(stationary, stationary)),
    inside,
    axes,
    kind,
    reading: `${READINGS[kind]} ${inside ? "It lies among the trials." : "It lies beyond the trials: follow the ridge towards it, and do not trust it."}`,
  });
}

const READINGS: Readonly<Record<CanonicalAnalysis["kind"], string>> = {
  highest: "The surface has a top: it falls to every side of the stationary point.",
  lowest: "The surface has a bottom: it rises to every side of the stationary point.",
  saddle: "The surface is a saddle: from the stationary point it rises along one axis and falls along another.",
  ridge: "Along one axis the surface may as well not bend: its level point is a ridge, badly known along it.",
};

/** Variance of w'Bw over the coefficients, w held. */
function bendVariance(fit: SurfaceFit, w: readonly number[]): number {
  const row = fit.names.map((name) => {
    for (const [i, one] of fit.factors.entries()) {
      if (name === `${one}^2`) return w[i] * w[i];
      for (let j = i + 1; j < fit.factors.length; j++) if (name === `${one}*${fit.factors[j]}`) return w[i] * w[j];
    }
    return 0;
  });
  return row.reduce((sum, a, i) => sum + a * dot(row, fit.covariance[i]), 0);
}

/** The direction whose largest number is above zero: an axis has no sign of its own. */
function signed(direction: readonly number[]): readonly number[] {
  const largest = direction.reduce((most, one) => (Math.abs(one) > Math.abs(most) + 1e-12 ? one : most), 0);
  return direction.map((one) => (largest < 0 ? -one : one));
}
