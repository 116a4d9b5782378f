import { lackOfFit } from "../../fit/doubt/lack-of-fit";
import { canonicalAnalysis } from "../../fit/surface/canonical-analysis";
import type { SurfaceFit } from "../../fit/surface/fit-surface";
import { studentTPValue } from "../../statistics/distributions/student-t-distribution";
import type { Table } from "../table/table";

/**
 * The terms of a surface with their doubt; below them how the surface bends and whether it misses repeated trials.
 *
 * @param measured what was measured, with its unit
 * @example
 * const points = [[-1, -1], [1, -1], [-1, 1], [1, 1], [-1, 0], [1, 0], [0, -1], [0, 1], [0, 0], [0, 0]];
 * const y = points.map(([a, b], at) => 5 + a - a * a - 2 * b * b + 0.02 * (at % 3));
 * surfaceTable(fitSurface({ factors: ["air", "time"], points, y }), "crispness").rows.length; // → 6
 */
export function surfaceTable(fit: SurfaceFit, measured: string): Table {
  return {
    kind: "table",
    title: `${measured}: the terms of its surface, coded units`,
    columns: [
      { heading: "term" },
      { heading: "estimate", decimals: 4 },
      { heading: "standard error", decimals: 4 },
      { heading: "95 % from", decimals: 4 },
      { heading: "to", decimals: 4 },
      { heading: "p", decimals: 4 },
    ],
    rows: fit.names.map((name) => {
      const { estimate, standardError, interval95 } = fit.parameters[name];
      const pValue = standardError === null ? null : studentTPValue(estimate / standardError, fit.degreesOfFreedom);
      return [name, estimate, standardError, interval95?.[0] ?? null, interval95?.[1] ?? null, pValue];
    }),
    notes: [
      `${fit.n} trials, residual scatter ${fit.residualSd.toPrecision(3)} on ${fit.degreesOfFreedom} degrees of freedom, R² ${fit.rSquared.toFixed(3)}.`,
      ...(fit.form === "quadratic" ? [bendsOf(fit)] : []),
      repeatsOf(fit),
    ],
  };
}

function bendsOf(fit: SurfaceFit): string {
  const { axes, reading } = canonicalAnalysis(fit);
  const bends = axes.map(
    ({ bend, interval95: [low, high] }) => `${bend.toFixed(3)} (${low.toFixed(3)} to ${high.toFixed(3)})`,
  );
  return `Bends along its own axes: ${bends.join(", ")}. ${reading}`;
}

function repeatsOf(fit: SurfaceFit): string {
  const places = new Set(fit.x.map((one) => JSON.stringify(one))).size;
  if (places === fit.n)
    return "No trial was repeated in its block: nothing tells whether the surface misses. Repeat its middle.";
  try {
    return lackOfFit(fit).reading;
  } catch (error) {
    if (error instanceof RangeError) return "Too few places were tried to tell whether the surface misses.";
    throw error;
  }
}
