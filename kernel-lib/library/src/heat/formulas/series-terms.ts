import { fail, positive } from "../../check/check";
import { ownValue } from "../../check/own-value";
import { besselJ } from "./bessel";

/** Shapes with an exact series for constant properties. */
export type SeriesShape = "slab" | "cylinder" | "sphere";

/** One term of a series: its root ζ and its coefficient C. */
export interface SeriesTerm {
  readonly root: number;
  readonly coefficient: number;
}

const ROOT_CONDITION: Readonly<Record<SeriesShape, (root: number, biot: number) => number>> = {
  slab: (z, biot) => z * Math.sin(z) - biot * Math.cos(z),
  cylinder: (z, biot) => z * besselJ(1, z) - biot * besselJ(0, z),
  sphere: (z, biot) => (1 - biot) * Math.sin(z) - z * Math.cos(z),
};

const COEFFICIENT: Readonly<Record<SeriesShape, (root: number) => number>> = {
  slab: (z) => (4 * Math.sin(z)) / (2 * z + Math.sin(2 * z)),
  cylinder: (z) => ((2 / z) * besselJ(1, z)) / (besselJ(0, z) ** 2 + besselJ(1, z) ** 2),
  sphere: (z) => (4 * (Math.sin(z) - z * Math.cos(z))) / (2 * z - Math.sin(2 * z)),
};

/**
 * Roots and coefficients of the series for a slab, long cylinder or sphere that is put into air of another temperature.
 *
 * Slab ζ·tan ζ = Bi, C = 4 sin ζ/(2ζ + sin 2ζ); cylinder ζ·J1(ζ) = Bi·J0(ζ), C = (2/ζ)·J1/(J0² + J1²); sphere
 * 1 − ζ·cot ζ = Bi, C = 4(sin ζ − ζ cos ζ)/(2ζ − sin 2ζ). Bi = hℓ/k, ℓ half the thickness or the radius.
 *
 * @param shape slab, cylinder or sphere
 * @param biot Bi [-]
 * @param count number of terms
 * @returns the first `count` roots with their coefficients
 *
 * @example
 * seriesTerms("slab", 1, 1)[0].root; // → 0.8603336
 *
 * Reference: Carslaw H.S., Jaeger J.C. (1959), Conduction of Heat in Solids, 2nd ed., sections 3.11, 7.7, 9.4.
 */
export function seriesTerms(shape: SeriesShape, biot: number, count: number): readonly SeriesTerm[] {
  positive(biot, "seriesTerms: biot", "");
  const condition =
    ownValue(ROOT_CONDITION, shape) ?? fail("seriesTerms: shape", "must be slab, cylinder or sphere", shape as unknown);
  const terms: SeriesTerm[] = [];
  const stride = 0.05;
  let low = 1e-9;
  let atLow = condition(low, biot);
  while (terms.length < count) {
    const high = low + stride;
    const atHigh = condition(high, biot);
    if (atLow < 0 !== atHigh < 0) {
      const root = bisect((z) => condition(z, biot), low, high);
      if (root > 1e-6) terms.push({ root, coefficient: COEFFICIENT[shape](root) });
    }
    low = high;
    atLow = atHigh;
  }
  return terms;
}

function bisect(condition: (z: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  const rising = condition(low) < 0;
  for (let halving = 0; halving < 60; halving++) {
    const middle = (low + high) / 2;
    if (condition(middle) < 0 === rising) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
