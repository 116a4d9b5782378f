/** One input quantity of a measurement: its value and how well it is known. */
export interface UncertainInput {
  readonly value: number;
  /** standard uncertainty, in the unit of `value`; 0 for an exact number */
  readonly standardUncertainty: number;
  /** degrees of freedom behind the uncertainty; left out: known without limit */
  readonly degreesOfFreedom?: number;
  /** shape of the doubt, for Monte Carlo: `"normal"` unless given; `"rectangular"` for a reading to the nearest step */
  readonly shape?: "normal" | "rectangular" | "triangular";
}

/**
 * An input known only to lie within ± half a width, every value alike: u = a/√3 (JCGM 100:2008, 4.3.7). A scale that
 * reads to 1 g has a half-width of 0.5 g.
 *
 * @example
 * rectangularInput(20, 0.1).standardUncertainty; // → 0.057735
 */
export function rectangularInput(value: number, halfWidth: number): UncertainInput {
  return Object.freeze({ value, standardUncertainty: Math.abs(halfWidth) / Math.sqrt(3), shape: "rectangular" });
}

/**
 * An input known to lie within ± half a width, most likely near its middle: u = a/√6 (JCGM 100:2008, 4.3.9).
 *
 * @example
 * triangularInput(20, 0.1).standardUncertainty; // → 0.040825
 */
export function triangularInput(value: number, halfWidth: number): UncertainInput {
  return Object.freeze({ value, standardUncertainty: Math.abs(halfWidth) / Math.sqrt(6), shape: "triangular" });
}
