import { fail, positive, within } from "../../check/check";
import { largestOf, smallestOf } from "../../statistics/extremes";

/** Shapes that Plank's equation has constants for. */
export type FreezingShape = "slab" | "cylinder" | "sphere" | "brick";

/** What Plank's freezing time depends on. */
export interface FreezingTimePlankOptions {
  /** default `"slab"`, frozen from both faces */
  readonly shape?: FreezingShape;
  /** full thickness of the slab, diameter, or shortest side of the brick [mm] */
  readonly thicknessMm: number;
  /** the brick's other two sides over its shortest [-], each at least 1 */
  readonly sideRatios?: readonly [number, number];
  readonly densityKgM3: number;
  /** heat of freezing, for each kg of food [kJ/kg] */
  readonly latentKJkg: number;
  /** [°C] */
  readonly freezingPointC: number;
  /** [°C], below the freezing point */
  readonly airC: number;
  readonly coefficientWm2K: number;
  /** conductivity of the frozen food [W/(m·K)] */
  readonly frozenConductivityWmK: number;
}

/** Plank's two shape constants [-]. */
export interface PlankConstants {
  /** share of the surface resistance */
  readonly p: number;
  /** share of the inner resistance */
  readonly r: number;
}

/**
 * Plank's constants: 1/2, 1/8 slab; 1/4, 1/16 cylinder; 1/6, 1/24 sphere; a brick from its two side ratios.
 *
 * @example
 * plankConstants("brick", [2, 3]).r; // → 0.07764589
 */
export function plankConstants(shape: FreezingShape, sideRatios: readonly [number, number] = [1, 1]): PlankConstants {
  switch (shape) {
    case "slab":
      return { p: 1 / 2, r: 1 / 8 };
    case "cylinder":
      return { p: 1 / 4, r: 1 / 16 };
    case "sphere":
      return { p: 1 / 6, r: 1 / 24 };
    case "brick":
      return brick(smallestOf(sideRatios), largestOf(sideRatios));
    default:
      return fail("plankConstants: shape", "must be slab, cylinder, sphere or brick", shape as unknown);
  }
}

function brick(b1: number, b2: number): PlankConstants {
  within(b1, 1, 1e4, "plankConstants: sideRatios[0]", "");
  within(b2, 1, 1e4, "plankConstants: sideRatios[1]", "");
  const p = (b1 * b2) / (2 * (b1 * b2 + b1 + b2));
  const root = Math.sqrt((b1 - b2) * (b1 - 1) + (b2 - 1) ** 2);
  if (root < 1e-4) return { p, r: 1 / 24 };
  const big = (b1 + b2 + 1 + root) / 3;
  const small = (b1 + b2 + 1 - root) / 3;
  const term = (m: number): number => {
    const product = (m - 1) * (b1 - m) * (b2 - m);
    return product === 0 ? 0 : product * Math.log(m / (m - 1));
  };
  const q = 1 / (4 * root);
  return { p, r: (q / 2) * (term(big) - term(small)) + (2 * b1 + 2 * b2 - 1) / 72 };
}

/**
 * Freezing time after Plank (1913): all heat is latent, the food starts at its freezing point.
 *
 * t = ρ·L/(Tf − Ta)·(P·D/h + R·D²/k)
 *
 * @returns time until the centre is frozen [min]
 *
 * Range: a lower bound. It leaves out cooling before and after: about 19 % short of the solver for a slab of mix from
 * 5 °C to −10 °C at its centre in −18 °C air.
 *
 * @example
 * freezingTimePlank({ thicknessMm: 60, densityKgM3: 1050, latentKJkg: 250, freezingPointC: -1.75, airC: -30, coefficientWm2K: 30, frozenConductivityWmK: 1.108 }); // → 217.7646
 *
 * Reference: Plank R. (1913); as in ASHRAE Handbook - Refrigeration, chapter 10.
 */
export function freezingTimePlank(options: FreezingTimePlankOptions): number {
  const { shape = "slab", sideRatios, freezingPointC, airC } = options;
  const where = "freezingTimePlank";
  const thicknessM = positive(options.thicknessMm, `${where}: thicknessMm`, "mm") / 1000;
  const density = positive(options.densityKgM3, `${where}: densityKgM3`, "kg/m³");
  const latentJkg = positive(options.latentKJkg, `${where}: latentKJkg`, "kJ/kg") * 1000;
  const h = positive(options.coefficientWm2K, `${where}: coefficientWm2K`, "W/(m²·K)");
  const k = positive(options.frozenConductivityWmK, `${where}: frozenConductivityWmK`, "W/(m·K)");
  if (!(airC < freezingPointC))
    fail(`${where}: airC`, `must be below the freezing point of ${freezingPointC} °C`, airC);
  if (shape === "brick" && !sideRatios) fail(`${where}: sideRatios`, "must be given for a brick", sideRatios);
  const { p, r } = plankConstants(shape, sideRatios);
  return ((density * latentJkg) / (freezingPointC - airC) / 60) * ((p * thicknessM) / h + (r * thicknessM ** 2) / k);
}
