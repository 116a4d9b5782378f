import { fail, notNegative, positive, within } from "../../check/check";

/** Heat capacity of air [J/(kg·K)] and Lewis number of water vapour in it [-]. */
const AIR_HEAT = 1010;
const LEWIS = 0.857;
const ATMOSPHERE_PA = 101325;

/**
 * Vapour pressure over water, after Buck (1996): 611.21·exp[(18.678 − T/234.5)·T/(257.14 + T)].
 *
 * @returns [Pa]
 * @example
 * saturationPressurePa(100); // → 101307.8
 */
export function saturationPressurePa(temperatureC: number): number {
  within(temperatureC, -40, 150, "saturationPressurePa: temperatureC", "°C");
  return saturation(temperatureC);
}

/** `saturationPressurePa` without its checks, for inner loops [Pa]. */
export function saturation(temperatureC: number): number {
  return 611.21 * Math.exp(((18.678 - temperatureC / 234.5) * temperatureC) / (257.14 + temperatureC));
}

/** kg of vapour for each kg of dry air at a vapour pressure; grows without bound towards boiling. */
export function humidity(vapourPa: number): number {
  return (0.622 * vapourPa) / Math.max(ATMOSPHERE_PA - vapourPa, 1);
}

/** Heat of evaporation of water [J/kg]. */
export function evaporationHeat(temperatureC: number): number {
  return 2.5008e6 - 2360 * temperatureC;
}

/** How `humidity` over water rises with temperature [1/K]. */
export function humiditySlope(temperatureC: number, saturationPa: number): number {
  const slope =
    (18.678 - (2 * temperatureC) / 234.5) / (257.14 + temperatureC) -
    ((18.678 - temperatureC / 234.5) * temperatureC) / (257.14 + temperatureC) ** 2;
  return (0.622 * ATMOSPHERE_PA * saturationPa * slope) / Math.max(ATMOSPHERE_PA - saturationPa, 1) ** 2;
}

/** What holds back vapour from a wet front: the air film by Lewis, cp·Le^⅔/h, and the dry crust over it [m²·s/kg]. */
export function vapourResistance(convectionWm2K: number, crustM: number, crustVapourKgMs: number): number {
  return (AIR_HEAT * LEWIS ** (2 / 3)) / convectionWm2K + crustM / crustVapourKgMs;
}

/** Vapour that leaves a wet surface [kg/(m²·s)]: Lewis, (h/(cp·Le^⅔))·(Ys − Y∞). */
export function vapourFlux(surfaceC: number, vapourPa: number, convectionWm2K: number): number {
  return (humidity(saturation(surfaceC)) - humidity(vapourPa)) / vapourResistance(convectionWm2K, 0, 1);
}

/** A surface that stays wet in hot air. */
export interface WetSurfaceOptions {
  /** [°C] */
  readonly airC: number;
  /** water vapour in the air [Pa]; default 1200, a kitchen's air brought in and heated */
  readonly vapourPa?: number;
  /** convection alone [W/(m²·K)]; default 40 */
  readonly convectionWm2K?: number;
  /** radiation as a coefficient [W/(m²·K)]; default 0 */
  readonly radiationWm2K?: number;
}

/** Where a wet surface settles and what it loses. */
export interface WetSurface {
  /** [°C] */
  readonly surfaceC: number;
  /** water lost [g/(m²·min)] */
  readonly lossGm2min: number;
}

/**
 * Temperature at which a fully wet surface settles in hot air (its wet-bulb), and how fast it dries there.
 *
 * (h + hr)(Ta − Ts) = ṁ·Lv; ṁ = h/(cp·Le^⅔)·(Ys − Y∞), Y = 0.622·p/(P − p); cp 1010 J/(kg·K), Le 0.857,
 * Lv = 2.5008e6 − 2360·T.
 *
 * @returns temperature [°C], loss [g/(m²·min)]
 *
 * Range: air of 30 to 300 °C at sea level, drier than saturated. It holds while the surface is wet; a thin coating dries
 * within a minute or two and the front then recedes.
 *
 * @example
 * wetSurface({ airC: 204 }).surfaceC; // → 45.714
 *
 * Reference: Lewis analogy as in Bird, Stewart & Lightfoot, Transport Phenomena; vapour pressure after Buck (1996).
 */
export function wetSurface(options: WetSurfaceOptions): WetSurface {
  const { airC, vapourPa = 1200, convectionWm2K = 40, radiationWm2K = 0 } = options;
  within(airC, 30, 300, "wetSurface: airC", "°C");
  positive(convectionWm2K, "wetSurface: convectionWm2K", "W/(m²·K)");
  notNegative(radiationWm2K, "wetSurface: radiationWm2K", "W/(m²·K)");
  notNegative(vapourPa, "wetSurface: vapourPa", "Pa");
  if (vapourPa >= saturation(Math.min(airC, 99)))
    fail("wetSurface: vapourPa", `must be below saturation at ${airC} °C`, vapourPa);
  let low = 0;
  let high = Math.min(airC, 99.99);
  for (let halving = 0; halving < 60; halving++) {
    const middle = (low + high) / 2;
    const spent = vapourFlux(middle, vapourPa, convectionWm2K) * evaporationHeat(middle);
    if ((convectionWm2K + radiationWm2K) * (airC - middle) > spent) low = middle;
    else high = middle;
  }
  const surfaceC = (low + high) / 2;
  return Object.freeze({
    surfaceC,
    lossGm2min: vapourFlux(surfaceC, vapourPa, convectionWm2K) * 60000,
  });
}
