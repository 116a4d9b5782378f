import type { SurfaceFit } from "../../fit/surface/fit-surface";
import type { RidgePoint } from "../../fit/surface/ridge-path";
import type { Factor } from "../../plan/factor/factor";
import type { Table } from "../table/table";
import { surfaceAxes } from "./surface-axes";

/** What a ridge's figure and table show. */
export interface RidgeViewOptions {
  readonly fit: SurfaceFit;
  /** from `ridgePath` */
  readonly ridge: readonly RidgePoint[];
  /** what was measured, with its unit */
  readonly measured: string;
  /** real values of the coded units; coded ones are shown unless given */
  readonly factors?: readonly Factor[];
}

/**
 * A ridge, a row a distance from the middle of the plan: where to go, and what to expect there.
 *
 * @example
 * const points = [[-1, -1], [1, -1], [-1, 1], [1, 1], [-1, 0], [1, 0], [0, -1], [0, 1], [0, 0], [0, 0]];
 * const y = points.map(([a, b], at) => 5 + a - a * a - 2 * b * b + 0.02 * (at % 3));
 * const fit = fitSurface({ factors: ["air", "time"], points, y });
 * ridgeTable({ fit, ridge: ridgePath({ fit }), measured: "crispness" }).rows.length; // → 7
 */
export function ridgeTable({ fit, ridge, measured, factors }: RidgeViewOptions): Table {
  const axes = surfaceAxes("ridgeTable", fit, factors);
  return {
    kind: "table",
    title: `${measured}: the best at each distance from the middle`,
    columns: [
      { heading: "distance (coded)", decimals: 2 },
      ...axes.names.map((heading) => ({ heading, decimals: 2 })),
      { heading: measured, decimals: 2 },
      { heading: "95 % from", decimals: 2 },
      { heading: "to", decimals: 2 },
      { heading: "beyond the trials" },
    ],
    rows: ridge.map(({ radius, point, value, confidence95: [low, high], extrapolated }) => [
      radius,
      ...point.map((coded, at) => axes.real(at, coded)),
      value,
      low,
      high,
      extrapolated ? "yes" : "no",
    ]),
    notes: ["Run trials along it before you believe it: the further out, the less the surface knows."],
  };
}
