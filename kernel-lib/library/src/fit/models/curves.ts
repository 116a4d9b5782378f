import type { CurveModel } from "./curve-model";
import { arrhenius } from "./curves/arrhenius";
import { exponentialApproach } from "./curves/exponential-approach";
import { firstOrderDecay } from "./curves/first-order-decay";
import { hyperbola } from "./curves/hyperbola";
import { line } from "./curves/line";
import { polynomial } from "./curves/polynomial";
import { powerLaw } from "./curves/power-law";
import { fermi, logistic } from "./curves/sigmoid";
import { hendersonPabis, lewis, page } from "./curves/thin-layer-drying";
import { SLAB_POWER_MODEL, SLAB_TIME_MODEL } from "./slab-time-model";

/** The ready curves, each for `fitCurve` and `predictCurve`. */
export interface Curves {
  /** y = a + b x */
  readonly line: CurveModel<"a" | "b">;
  /** y = b0 + b1 x + … up to the degree given */
  readonly polynomial: (degree: number) => CurveModel<string>;
  /** y = a x^p */
  readonly powerLaw: CurveModel<"a" | "p">;
  /** y = end + (start − end) e^(−rate x) */
  readonly exponentialApproach: CurveModel<"end" | "start" | "rate">;
  /** y = bottom + (top − bottom)/(1 + e^((middle − x)/width)) */
  readonly logistic: CurveModel<"bottom" | "top" | "middle" | "width">;
  /** y = top/(1 + e^((x − middle)/width)) */
  readonly fermi: CurveModel<"top" | "middle" | "width">;
  /** Michaelis–Menten: y = top x/(half + x) */
  readonly hyperbola: CurveModel<"top" | "half">;
  /** y = start e^(−rate x) */
  readonly firstOrderDecay: CurveModel<"start" | "rate">;
  /** thin-layer drying: y = e^(−rate x) */
  readonly lewis: CurveModel<"rate">;
  /** thin-layer drying: y = e^(−rate x^power) */
  readonly page: CurveModel<"rate" | "power">;
  /** thin-layer drying: y = start e^(−rate x) */
  readonly hendersonPabis: CurveModel<"start" | "rate">;
  /** slab time: t = c0 + a x + b x², all ≥ 0; what `fitSlabTime` fits but for its power law */
  readonly slabTime: CurveModel<"c0" | "a" | "b">;
  /** slab time: t = a x^p, both ≥ 0 */
  readonly slabTimePower: CurveModel<"a" | "p">;
  /** y = rate e^(−(E/R)(1/T − 1/Tref)), x in °C */
  readonly arrhenius: (options: { readonly referenceC: number }) => CurveModel<"rate" | "activationKJ">;
}

/**
 * The ready curves by name.
 *
 * @example
 * const fit = fitCurve(curves.hyperbola, { x: [0.1, 0.2, 0.5, 1, 2], y: [49, 71, 112, 131, 148] });
 * fit.parameters.top.estimate; // → 165.921
 */
export const curves: Curves = Object.freeze({
  line,
  polynomial,
  powerLaw,
  exponentialApproach,
  logistic,
  fermi,
  hyperbola,
  firstOrderDecay,
  lewis,
  page,
  hendersonPabis,
  arrhenius,
  slabTime: SLAB_TIME_MODEL,
  slabTimePower: SLAB_POWER_MODEL,
});
