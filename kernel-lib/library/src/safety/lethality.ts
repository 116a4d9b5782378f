import { fail, finite, positive } from "../check/check";

/** What `lethality` integrates: a predicted or measured core temperature over time. */
export interface LethalityOptions {
  /** times, rising (min) */
  readonly timesMin: readonly number[];
  /** core temperature at each time (°C); between two times it is taken as a straight line */
  readonly temperaturesC: readonly number[];
  /** temperature that the result is stated at (°C) */
  readonly referenceC: number;
  /** rise in temperature that makes the kill ten times faster (K) */
  readonly zK: number;
  /** time at the reference temperature for one tenfold reduction (min); left out, no reduction is given */
  readonly decimalMin?: number;
}

/** Heat treatment of a core, as information: it never replaces the core limit. */
export interface Lethality {
  readonly kind: "lethality";
  /** minutes at the reference temperature that would do as much (min) */
  readonly equivalentMin: number;
  /** tenfold reductions [-]; `null` without `decimalMin` */
  readonly logReduction: number | null;
  readonly peakC: number;
  readonly referenceC: number;
  readonly zK: number;
  readonly caution: string;
}

/**
 * Equivalent minutes at a reference temperature (F-value) over a temperature trace, after Bigelow.
 *
 * F = ∫10^((T − Tref)/z) dt, exact for a trace of straight lines: a segment that rises by m (K/min) gives
 * z/(m·ln 10)·[10^((T₂ − Tref)/z) − 10^((T₁ − Tref)/z)].
 *
 * @param options timesMin [min], temperaturesC [°C], referenceC [°C], zK [K], decimalMin [min]
 * @returns equivalent minutes, and tenfold reductions when a decimal reduction time is given
 *
 * Range: any trace. Information only: no advice of this library uses it to go below a `coreLimit`.
 *
 * @example
 * const ramp = lethality({ timesMin: [0, 15], temperaturesC: [60, 75], referenceC: 70, zK: 7.5 });
 * ramp.equivalentMin; // → 14.967437
 * lethality({ timesMin: [0, 10], temperaturesC: [65, 65], referenceC: 70, zK: 7.5 }).equivalentMin; // → 2.154435
 *
 * Reference: Bigelow W.D. (1921), Journal of Infectious Diseases 29:528-536.
 */
export function lethality(options: LethalityOptions): Lethality {
  const { timesMin, temperaturesC } = options;
  const referenceC = finite(options.referenceC, "lethality: referenceC", "°C");
  const zK = positive(options.zK, "lethality: zK", "K");
  if (timesMin.length < 2 || timesMin.length !== temperaturesC.length)
    fail(
      "lethality: timesMin and temperaturesC",
      "must hold two or more readings each, as many of one as of the other",
      [timesMin.length, temperaturesC.length],
    );
  let equivalentMin = 0;
  let peakC = finite(temperaturesC[0], "lethality: temperature 1", "°C");
  for (let at = 1; at < timesMin.length; at++) {
    const stepMin = timesMin[at] - timesMin[at - 1];
    if (!(stepMin > 0)) fail(`lethality: time ${at + 1}`, "must be later than the one before (min)", timesMin[at]);
    const toC = finite(temperaturesC[at], `lethality: temperature ${at + 1}`, "°C");
    peakC = Math.max(peakC, toC);
    equivalentMin += stepMin * meanRate((temperaturesC[at - 1] - referenceC) / zK, (toC - referenceC) / zK);
  }
  const logReduction =
    options.decimalMin === undefined
      ? null
      : equivalentMin / positive(options.decimalMin, "lethality: decimalMin", "min");
  return Object.freeze({
    kind: "lethality",
    equivalentMin,
    logReduction,
    peakC,
    referenceC,
    zK,
    caution: "Information only: the core limit stands, whatever the integral says.",
  });
}

/** Mean of 10^x while x goes in a straight line; the series of sinh serves where both ends nearly agree. */
function meanRate(from: number, to: number): number {
  const half = ((to - from) * Math.LN10) / 2;
  const middle = 10 ** ((from + to) / 2);
  return middle * (Math.abs(half) < 1e-4 ? 1 + (half * half) / 6 : Math.sinh(half) / half);
}
