import { FUSION_KJKG, type ThermalModel } from "../../food/thermal/thermal-properties";

/** A food's constants in SI. */
export interface BoxFood {
  readonly densityKgM3: number;
  readonly thawedJkgK: number;
  readonly frozenJkgK: number;
  readonly latentJkg: number;
  readonly freezingC: number;
  readonly thawedWmK: number;
  readonly frozenWmK: number;
  /** frozen conductivity is frozenWmK + slopeWm/T [W/m] */
  readonly slopeWm: number;
  /** water by mass [-] */
  readonly waterFraction: number;
}

/** Brings a food's constants to SI. */
export function boxFood(food: ThermalModel): BoxFood {
  return {
    densityKgM3: food.densityKgM3,
    thawedJkgK: food.thawedSpecificHeatKJkgK * 1000,
    frozenJkgK: food.frozenSpecificHeatKJkgK * 1000,
    latentJkg: food.latentKJkg * 1000,
    freezingC: food.freezingPointC,
    thawedWmK: food.thawedConductivityWmK,
    frozenWmK: food.frozenConductivityWmK,
    slopeWm: (food.thawedConductivityWmK - food.frozenConductivityWmK) * food.freezingPointC,
    waterFraction: food.waterFraction,
  };
}

/** `enthalpyAt` in J/kg. */
export function enthalpyOf(food: BoxFood, c: number): number {
  const above = c - food.freezingC;
  return above >= 0 ? food.thawedJkgK * above : food.frozenJkgK * above - food.latentJkg * (1 - food.freezingC / c);
}

/** Change of the enthalpy with temperature [J/(kg·K)]. */
export function capacityOf(food: BoxFood, c: number): number {
  return c >= food.freezingC ? food.thawedJkgK : food.frozenJkgK - (food.latentJkg * food.freezingC) / (c * c);
}

/** `conductivityAt` in W/(m·K). */
export function conductivityOf(food: BoxFood, c: number): number {
  return c >= food.freezingC ? food.thawedWmK : food.frozenWmK + food.slopeWm / c;
}

/** Kirchhoff's potential, the conductivity summed up from the freezing point: heat flows along its slope [W/m]. */
export function potentialOf(food: BoxFood, c: number): number {
  const above = c - food.freezingC;
  return above >= 0 ? food.thawedWmK * above : food.frozenWmK * above + food.slopeWm * Math.log(c / food.freezingC);
}

/** `iceFraction` of frozen food [-]. */
export function iceShareOf(food: BoxFood, c: number): number {
  return (food.latentJkg * (1 - food.freezingC / c)) / (1000 * FUSION_KJKG);
}
