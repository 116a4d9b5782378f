import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { smallestOf } from "../../statistics/extremes";
import type { Estimates, Fit } from "../fit";

/** One fit among several of the same data. */
export interface ComparedFit {
  readonly name: string;
  /** estimated parameters, the residual sd not counted */
  readonly parameterCount: number;
  /** null for a fit that is not by least squares, as are the residual sd and the leave-one-out error */
  readonly rss: number | null;
  readonly residualSd: number | null;
  readonly aicc: number;
  /** above the lowest AICc */
  readonly deltaAicc: number;
  /** Akaike weight [-]: the share of the evidence that falls to this form */
  readonly weight: number;
  readonly bic: number;
  /** root mean square error of each point predicted without itself, from residual and leverage (exact for a linear model) */
  readonly leaveOneOutError: number | null;
}

/** Fits of the same data side by side, the lowest AICc first. */
export interface FitComparison {
  readonly kind: "comparison";
  readonly n: number;
  readonly rows: readonly ComparedFit[];
  /** name of the fit with the lowest AICc */
  readonly best: string;
  /** one sentence that says what the comparison shows */
  readonly reading: string;
  readonly notes: readonly string[];
}

/**
 * Compares fits of the same observations by AICc, BIC and leave-one-out error, after Burnham & Anderson (2002). All of one
 * kind: curves with curves, or times seen at checks with the same.
 *
 * @param fits by the name each is to have in the result
 * @example
 * const data = { x: [1, 2, 3, 4, 5, 6], y: [2.1, 3.9, 6.2, 7.8, 10.1, 11.8] };
 * const through0 = curveModel({ name: "through zero", evaluate: (x, { b }) => b * x, start: { b: 1 } });
 * const free = curveModel({ name: "line", evaluate: (x, { a, b }) => a + b * x, start: { a: 0, b: 1 } });
 * compareFits({ through0: fitCurve(through0, data), free: fitCurve(free, data) }).best; // → "through0"
 */
export function compareFits(fits: Readonly<Record<string, Estimates>>): FitComparison {
  const entries = Object.entries(fits);
  if (entries.length === 0) fail("compareFits: fits", "must hold at least one fit", fits);
  const n = entries[0][1].n;
  for (const [name, fit] of entries) {
    if (fit.n !== n) fail(`compareFits: ${name}`, `must rest on the same observations as the others (${n})`, fit.n);
  }
  if (new Set(entries.map(([, fit]) => fit.sdKnown)).size > 1) {
    fail(
      "compareFits: fits",
      "must be of one kind, as likelihoods of different kinds do not compare",
      entries.map(([, fit]) => fit.model),
    );
  }
  const usable = entries.filter(([, fit]) => fit.converged);
  if (usable.length === 0)
    fail(
      "compareFits: fits",
      "must hold at least one that converged",
      entries.map(([name]) => name),
    );
  const lowest = smallestOf(usable.map(([, fit]) => fit.aicc));
  const shares = usable.map(([, fit]) => (Number.isFinite(fit.aicc) ? Math.exp(-0.5 * (fit.aicc - lowest)) : 0));
  const total = shares.reduce((sum, share) => sum + share, 0);
  const rows = usable
    .map(([name, fit], i): ComparedFit => {
      const squares = "leverage" in fit ? (fit as Fit) : null;
      return {
        name,
        parameterCount: n - fit.degreesOfFreedom,
        rss: squares?.rss ?? null,
        residualSd: squares?.residualSd ?? null,
        aicc: fit.aicc,
        deltaAicc: Number.isFinite(fit.aicc) ? fit.aicc - lowest : Number.POSITIVE_INFINITY,
        weight: total > 0 ? shares[i] / total : 0,
        bic: fit.bic,
        leaveOneOutError: squares ? leaveOneOutError(squares) : null,
      };
    })
    .sort((one, other) => one.aicc - other.aicc || one.parameterCount - other.parameterCount);
  const left = entries.filter(([, fit]) => !fit.converged).map(([name]) => `${name} did not converge and is left out.`);
  const [best, second] = rows;
  const reading =
    second === undefined
      ? `Only ${best.name} could be compared.`
      : `AICc is lowest for ${best.name}; ${second.name} comes next, ${second.deltaAicc.toFixed(1)} above it${second.deltaAicc < 2 ? ", too close to tell apart" : ""}.`;
  return freezeDeep({ kind: "comparison", n, rows, best: best.name, reading, notes: left });
}

function leaveOneOutError(fit: Fit): number {
  let sum = 0;
  fit.residuals.forEach((residual, i) => {
    sum += (residual / (1 - fit.leverage[i])) ** 2;
  });
  return Math.sqrt(sum / fit.n);
}
