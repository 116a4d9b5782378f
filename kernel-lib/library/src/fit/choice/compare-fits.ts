import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { smallestOf } from "../../statistics/extremes";
import type { Estimates, Fit } from "../fit";

/** One fit among several of the same data. */
export interface ComparedFit {
  readonly name: string;
  /** estimated parameters, the residual sd not counted, nor those that rest at a bound */
  readonly parameterCount: number;
  /** names that rest at a bound */
  readonly atBound: readonly string[];
  /** the narrower fit whose curve this one is again, as what sets them apart rests at a bound; its weight then counts there */
  readonly sameAs: string | null;
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
  const counts = usable.map(([, fit]) => n - fit.degreesOfFreedom - restingOf(fit).length);
  const sameAs = usable.map(([, fit], i) => {
    if (restingOf(fit).length === 0) return null;
    const twin = usable.findIndex(
      ([, other], j) =>
        counts[j] === counts[i] &&
        other.degreesOfFreedom > fit.degreesOfFreedom &&
        restingOf(other).length === 0 &&
        Math.abs(other.logLikelihood - fit.logLikelihood) < 1e-6 * (1 + Math.abs(fit.logLikelihood)),
    );
    return twin < 0 ? null : usable[twin][0];
  });
  const lowest = smallestOf(usable.map(([, fit]) => fit.aicc));
  const shares = usable.map(([, fit], i) =>
    Number.isFinite(fit.aicc) && sameAs[i] === null ? Math.exp(-0.5 * (fit.aicc - lowest)) : 0,
  );
  const total = shares.reduce((sum, share) => sum + share, 0);
  const rows = usable
    .map(([name, fit], i): ComparedFit => {
      const squares = "leverage" in fit ? (fit as Fit) : null;
      return {
        name,
        parameterCount: counts[i],
        atBound: restingOf(fit),
        sameAs: sameAs[i],
        rss: squares?.rss ?? null,
        residualSd: squares?.residualSd ?? null,
        aicc: fit.aicc,
        deltaAicc: Number.isFinite(fit.aicc) ? fit.aicc - lowest : Number.POSITIVE_INFINITY,
        weight: total > 0 ? shares[i] / total : 0,
        bic: fit.bic,
        leaveOneOutError: squares ? leaveOneOutError(squares) : null,
      };
    })
    .sort(byAicc);
  const left = entries.filter(([, fit]) => !fit.converged).map(([name]) => `${name} did not converge and is left out.`);
  const rest = usable.flatMap(([name, fit], i) => {
    const resting = restingOf(fit);
    if (resting.length === 0) return [];
    const bounds = resting.map((one) => `${one} = ${fit.parameters[one].estimate}`).join(", ");
    return sameAs[i] === null
      ? [`${name} rests at ${bounds}, which its count of parameters leaves out.`]
      : [
          `${name} rests at ${bounds}: it is the curve of ${sameAs[i]} again, with as many parameters, and its weight counts there.`,
        ];
  });
  const [best, second] = rows.filter((row) => row.sameAs === null);
  const reading =
    second === undefined
      ? `Only ${best.name} could be compared.`
      : `AICc is lowest for ${best.name}; ${second.name} comes next, ${second.deltaAicc.toFixed(1)} above it${second.deltaAicc < 2 ? ", too close to tell apart" : ""}.`;
  return freezeDeep({ kind: "comparison", n, rows, best: best.name, reading, notes: [...left, ...rest] });
}

/** Names of the parameters that rest at a bound. */
function restingOf(fit: Estimates): string[] {
  return fit.names.filter((name) => fit.parameters[name].atBound !== null);
}

/** The lowest AICc first; of one curve under two names the narrower form. */
function byAicc(one: ComparedFit, other: ComparedFit): number {
  if (one.sameAs === other.name) return 1;
  if (other.sameAs === one.name) return -1;
  return one.aicc - other.aicc || one.parameterCount - other.parameterCount;
}

function leaveOneOutError(fit: Fit): number {
  let sum = 0;
  fit.residuals.forEach((residual, i) => {
    sum += (residual / (1 - fit.leverage[i])) ** 2;
  });
  return Math.sqrt(sum / fit.n);
}
