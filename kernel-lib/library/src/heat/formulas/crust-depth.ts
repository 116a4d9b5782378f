import { fail, notNegative, positive, within } from "../../check/check";

/** Air, coefficient and the crust's own constants. */
export interface CrustOptions {
  /** heat transfer coefficient at the face, radiation included [W/(m²·K)] */
  readonly coefficientWm2K: number;
  /** air of the appliance [°C] */
  readonly airC: number;
  /** water that must leave for each volume of crust [kg/m³]: density × water fraction of what dries */
  readonly crustWaterKgM3: number;
  /** conductivity of the dry crust [W/(m·K)]; default 0.12, within the 0.05 to 0.15 usual for porous dry food (from memory) */
  readonly crustConductivityWmK?: number;
  /** temperature of the evaporating front [°C]; default 100, the upper limit: it lies between wet-bulb and 100 */
  readonly evaporationC?: number;
}

/** Heat of evaporation of water at 100 °C [kJ/kg]. */
export const EVAPORATION_KJKG = 2257;

/** Relative rms error of `crustDepthMm`, counted from `crustStart`, against the moving-front solution [-]. */
export const CRUST_FORM_ERROR = 0.018;

/** The crust's constants in SI, checked once for the functions of this file. */
function crustConstants(options: CrustOptions, where: string) {
  const { airC, crustConductivityWmK = 0.12, evaporationC = 100 } = options;
  const h = positive(options.coefficientWm2K, `${where}: coefficientWm2K`, "W/(m²·K)");
  const k = within(crustConductivityWmK, 0.01, 2, `${where}: crustConductivityWmK`, "W/(m·K)");
  const water = positive(options.crustWaterKgM3, `${where}: crustWaterKgM3`, "kg/m³");
  within(evaporationC, 20, 130, `${where}: evaporationC`, "°C");
  if (!(airC > evaporationC)) fail(`${where}: airC`, `must be above the evaporating front at ${evaporationC} °C`, airC);
  return { h, k, airC, evaporationC, drivingK: airC - evaporationC, heat: water * EVAPORATION_KJKG * 1000 };
}

/**
 * Depth of dry crust after a time of drying, from the heat balance at a receding front.
 *
 * s(t) = (kc/h)·[√(1 + 2h²(Ta − Tev)t/(kc·ρw·Lv)) − 1], t counted from the start of the crust (`crustStart`).
 *
 * @param options minutes of drying and the constants of `CrustOptions`
 * @returns crust depth at one face [mm]
 *
 * Range: the core takes no more heat; one face. Against the full moving-front solution over 46 points (180 and 204 °C,
 * 30 and 60 W/(m²·K), 6 to 19 mm, to 30 min), counted from `crustStart`: rms error 1.8 %, worst 7.7 %.
 *
 * @example
 * const air = { coefficientWm2K: 40, airC: 204, crustWaterKgM3: 771.75 };
 * crustDepthMm({ ...air, dryingMin: 5 }); // → 0.646766
 * crustMin({ ...air, crustMm: 0.5 }); // → 3.780034
 *
 * Reference: heat balance of Farkas, Singh & Rumsey (1996), Journal of Food Engineering 29:211-226, without a core.
 */
export function crustDepthMm(options: CrustOptions & { readonly dryingMin: number }): number {
  const { h, k, drivingK, heat } = crustConstants(options, "crustDepthMm");
  const dryingS = 60 * notNegative(options.dryingMin, "crustDepthMm: dryingMin", "min");
  return 1000 * (k / h) * (Math.sqrt(1 + (2 * h * h * drivingK * dryingS) / (k * heat)) - 1);
}

/**
 * Minutes of drying until the crust has a depth: the inverse of `crustDepthMm`.
 *
 * t = ρw·Lv·(s/h + s²/2kc)/(Ta − Tev)
 *
 * @returns time from the start of the crust [min]; add `crustStart(...).startMin` for the time from the start of heating
 */
export function crustMin(options: CrustOptions & { readonly crustMm: number }): number {
  const { h, k, drivingK, heat } = crustConstants(options, "crustMin");
  const depthM = notNegative(options.crustMm, "crustMin: crustMm", "mm") / 1000;
  return (heat * (depthM / h + (depthM * depthM) / (2 * k))) / drivingK / 60;
}

/**
 * Temperature of the outer surface of a crust: Ta − (Ta − Tev)/(1 + h·s/kc).
 *
 * @returns surface temperature [°C]
 * @example
 * crustSurfaceC({ coefficientWm2K: 40, airC: 204, crustWaterKgM3: 771.75, crustMm: 1 }); // → 126
 */
export function crustSurfaceC(options: CrustOptions & { readonly crustMm: number }): number {
  const { h, k, airC, drivingK } = crustConstants(options, "crustSurfaceC");
  const depthM = notNegative(options.crustMm, "crustSurfaceC: crustMm", "mm") / 1000;
  return airC - drivingK / (1 + (h * depthM) / k);
}
