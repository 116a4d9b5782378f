import type { CurveModel } from "./curve-model";

/**
 * The forms in which a slab's time depends on its thickness L:
 * `full` t = c0 + aL + bL², `noConstant` t = aL + bL², `linear` t = c0 + aL, `powerLaw` t = aLᵖ, `slopeOnly` t = aL.
 */
export type SlabTimeForm = "full" | "noConstant" | "linear" | "powerLaw" | "slopeOnly";

/** In the order of their size, the widest first. */
export const SLAB_TIME_FORMS: readonly SlabTimeForm[] = ["full", "noConstant", "linear", "powerLaw", "slopeOnly"];

/** How each form is written. */
export const SLAB_TIME_EQUATIONS: Readonly<Record<SlabTimeForm, string>> = {
  full: "t = c0 + aL + bL²",
  noConstant: "t = aL + bL²",
  linear: "t = c0 + aL",
  powerLaw: "t = aLᵖ",
  slopeOnly: "t = aL",
};

/** t = c0 + aL + bL², c0 (min), a (min/mm), b (min/mm²) all ≥ 0; the restrictions fix c0 or b at zero. */
export const SLAB_TIME_MODEL: CurveModel<"c0" | "a" | "b"> = {
  name: "slab time",
  equation: SLAB_TIME_EQUATIONS.full,
  parameters: { c0: { lower: 0 }, a: { lower: 0 }, b: { lower: 0 } },
  evaluate: (x, { c0, a, b }) => c0 + x * (a + b * x),
  gradient: (x) => [1, x, x * x],
  guess: (x, y) => {
    const thickness = x.reduce((sum, value) => sum + value, 0);
    const time = y.reduce((sum, value) => sum + value, 0);
    const perMm = time / thickness;
    return { c0: (0.1 * time) / x.length, a: 0.8 * perMm, b: (0.1 * perMm * x.length) / thickness };
  },
};

/** t = aLᵖ, a (min at 1 mm) ≥ 0, p [-] ≥ 0. */
export const SLAB_POWER_MODEL: CurveModel<"a" | "p"> = {
  name: "slab time power law",
  equation: SLAB_TIME_EQUATIONS.powerLaw,
  parameters: { a: { lower: 0 }, p: { lower: 0 } },
  evaluate: (x, { a, p }) => a * x ** p,
  gradient: (x, { a, p }) => [x ** p, a * x ** p * Math.log(x)],
  guess: (x, y) => {
    const logs = x.map((value, i) => [Math.log(value), Math.log(Math.max(y[i], 1e-9))]);
    const meanX = logs.reduce((sum, [u]) => sum + u, 0) / logs.length;
    const meanY = logs.reduce((sum, [, v]) => sum + v, 0) / logs.length;
    const top = logs.reduce((sum, [u, v]) => sum + (u - meanX) * (v - meanY), 0);
    const bottom = logs.reduce((sum, [u]) => sum + (u - meanX) ** 2, 0);
    const p = Math.max(0.01, top / bottom);
    return { a: Math.exp(meanY - p * meanX), p };
  },
};
