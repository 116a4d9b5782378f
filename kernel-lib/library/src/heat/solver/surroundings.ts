import { fail, notNegative, within } from "../../check/check";
import type { ThermalModel } from "../../food/thermal/thermal-properties";
import type { AirPoint } from "../box/face-air";
import type { DryingConstants, DryingLaw } from "../box/surface-balance";

/** What is around the food: above and, unless said otherwise, also below and at the sides. */
export interface Surroundings {
  /** air [°C], or how it runs over time: pre-heat, door openings */
  readonly airC: number | readonly AirPoint[];
  /** heat transfer coefficient, radiation included [W/(m²·K)]; 0 insulates */
  readonly coefficientWm2K: number;
  /** below: on a pan, a rack, a basket [W/(m²·K)]; default as above; 0 insulates */
  readonly coefficientBelowWm2K?: number;
  /** air, plate or counter below [°C]; default as above */
  readonly airBelowC?: number | readonly AirPoint[];
  /** when the food is turned over [min] */
  readonly flipMin?: number | readonly number[];
}

/** How a face loses water while it heats, and what its crust is like. */
export interface Drying {
  /**
   * `"none"`; `"boiling-surface"`: the surface stays at evaporationC and dries without a crust; `"receding-front"`
   * (default): a front at evaporationC recedes under a dry crust; `"wet-front"`: the front dries below 100 °C too, by
   * Lewis's analogy
   */
  readonly law?: DryingLaw;
  /** default 0.12 W/(m·K), within the 0.05 to 0.15 usual for porous dry food (from memory) */
  readonly crustConductivityWmK?: number;
  /** water that leaves for each volume of crust [kg/m³]; default density × water fraction */
  readonly crustWaterKgM3?: number;
  /** front temperature of the first two laws [°C]; default 100 */
  readonly evaporationC?: number;
  /** wet-front: water vapour of the air [Pa]; default 1200, a kitchen's air brought in and heated */
  readonly vapourPa?: number;
  /** wet-front: share of the coefficient that is convection [-]; default 1 */
  readonly convectionShare?: number;
  /** wet-front: what a crust lets through, air density × vapour diffusivity in it [kg/(m·s)]; default 5e-6, our judgement */
  readonly crustVapourKgMs?: number;
}

/** Flip times in seconds, checked. */
export function flipsS(flipMin: number | readonly number[] | undefined, where: string): readonly number[] {
  const flips = flipMin === undefined ? [] : typeof flipMin === "number" ? [flipMin] : flipMin;
  return flips.map((flip) => 60 * notNegative(flip, `${where}: flipMin`, "min"));
}

/** Drying constants in SI, checked, with the defaults that need the food. */
export function dryingConstants(
  drying: DryingLaw | Drying | undefined,
  food: ThermalModel,
  where: string,
): { readonly constants: DryingConstants; readonly crustWaterKgM3: number } {
  const given: Drying = typeof drying === "string" ? { law: drying } : (drying ?? {});
  const law = food.waterFraction > 0 ? (given.law ?? "receding-front") : "none";
  if (!["none", "boiling-surface", "receding-front", "wet-front"].includes(law))
    fail(`${where}: drying`, "must be none, boiling-surface, receding-front or wet-front", law);
  const crustWaterKgM3 = given.crustWaterKgM3 ?? food.densityKgM3 * food.waterFraction;
  if (law !== "none") {
    const most = food.densityKgM3 * food.waterFraction * 1.000001;
    if (!(crustWaterKgM3 > 0 && crustWaterKgM3 <= most))
      fail(
        `${where}: drying.crustWaterKgM3`,
        `must be > 0 and at most the food's own ${most.toFixed(0)} kg/m³`,
        crustWaterKgM3,
      );
  }
  return {
    constants: {
      law,
      evaporationC: within(given.evaporationC ?? 100, 20, 130, `${where}: drying.evaporationC`, "°C"),
      crustWmK: within(given.crustConductivityWmK ?? 0.12, 0.01, 2, `${where}: drying.crustConductivityWmK`, "W/(m·K)"),
      vapourPa: within(given.vapourPa ?? 1200, 0, 90000, `${where}: drying.vapourPa`, "Pa"),
      convectionShare: within(given.convectionShare ?? 1, 0.05, 1, `${where}: drying.convectionShare`, ""),
      crustVapourKgMs: within(
        given.crustVapourKgMs ?? 5e-6,
        1e-8,
        1e-3,
        `${where}: drying.crustVapourKgMs`,
        "kg/(m·s)",
      ),
    },
    crustWaterKgM3,
  };
}
