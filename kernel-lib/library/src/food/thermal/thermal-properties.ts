import { fail, within } from "../../check/check";
import { type Composition, checkComposition } from "../composition/composition";
import { choiOkos } from "./choi-okos";
import { type ConductivityModel, mixConductivity } from "./conductivity";
import { boundWaterFraction, type FreezingPointOptions, freezingPoint } from "./freezing-point";
import { componentMasses, mixDensity } from "./mix-density";

/**
 * The constants of one food that the freezing and heating models need: its enthalpy curve, its conductivity and its
 * density. `thermalProperties` makes it from a composition; a food with measured values can be written down by hand.
 */
export interface ThermalModel {
  /** density of the mix, air included [kg/m³] */
  readonly densityKgM3: number;
  /** all water by mass [-] */
  readonly waterFraction: number;
  /** temperature at which the first ice forms [°C], below 0 */
  readonly freezingPointC: number;
  /** heat taken up when all freezable water melts [kJ/kg of food]; 0 for a food without ice */
  readonly latentKJkg: number;
  readonly thawedSpecificHeatKJkgK: number;
  /** with all freezable water frozen */
  readonly frozenSpecificHeatKJkgK: number;
  readonly thawedConductivityWmK: number;
  /** with all freezable water frozen: the value that deep cold tends to */
  readonly frozenConductivityWmK: number;
}

/** A `ThermalModel` derived from a composition, with what it rests on. */
export interface ThermalProperties extends ThermalModel {
  /** water that never freezes, by mass [-] */
  readonly boundWaterFraction: number;
  /** standard error of the freezing point [K]; 0 when the user gave the value */
  readonly freezingPointStandardErrorK: number;
  /** series and parallel bounds of the thawed conductivity [W/(m·K)] */
  readonly thawedConductivityRangeWmK: readonly [number, number];
  /** series and parallel bounds of the frozen conductivity [W/(m·K)] */
  readonly frozenConductivityRangeWmK: readonly [number, number];
  readonly notes: readonly string[];
}

/** Choices of `thermalProperties`. */
export interface ThermalPropertiesOptions extends FreezingPointOptions {
  /** measured initial freezing point [°C]; default: estimated from what is dissolved (`freezingPoint`) */
  readonly freezingPointC?: number;
  /** air by volume of the mix [-]; default 0 */
  readonly airFraction?: number;
  /** temperature at which thawed specific heat and conductivity are read [°C]; default 37, midway from thaw to 74 */
  readonly thawedAtC?: number;
  /** default `"levy"` */
  readonly conductivityModel?: ConductivityModel;
}

/** Heat of fusion of water at 0 °C [kJ/kg]. */
export const FUSION_KJKG = 333.6;

/** Frozen properties are read at this temperature: a common freezer setting. */
const FROZEN_AT_C = -18;

/**
 * Everything that the freezing and heating models need to know about a food, from its composition.
 *
 * Components after Choi & Okos (1986); density at 20 °C; freezable water = water − 0.4·protein, frozen to the
 * fraction 1 − Tf/T; latent heat = freezable water · 333.6 kJ/kg; frozen specific heat at −18 °C with all freezable
 * water as ice; frozen conductivity so that the curve passes through the mix's value at −18 °C with the ice it then
 * holds: kf = [k(−18) − ku·Tf/(−18)]/[1 − Tf/(−18)].
 *
 * @param composition mass fractions [-]
 * @param options freezingPointC [°C] or what is dissolved, airFraction [-], thawedAtC [°C], conductivityModel
 * @returns the constants of the food and the bounds of its conductivities
 *
 * Range: −40 to about 100 °C. One value of thawed specific heat and conductivity serves all thawed temperatures:
 * between 5 and 74 °C they move by about 1 % and ±7 %; take `thawedAtC: 5` for a freezer.
 *
 * @example
 * const formed = { waterFraction: 0.62, proteinFraction: 0.17, fatFraction: 0.09, carbohydrateFraction: 0.095, fibreFraction: 0.007, ashFraction: 0.018 };
 * const mix = thermalProperties(formed, { freezingPointC: -2 });
 * mix.latentKJkg; // → 184.1
 * mix.densityKgM3; // → 1084.5
 *
 * Reference: ASHRAE Handbook - Refrigeration (2006), chapter 9; ice curve after Schwartzberg (1976).
 */
export function thermalProperties(composition: Composition, options: ThermalPropertiesOptions = {}): ThermalProperties {
  const { airFraction = 0, thawedAtC = 37, conductivityModel = "levy" } = options;
  checkComposition(composition, "thermalProperties");
  within(thawedAtC, 0, 100, "thermalProperties: thawedAtC", "°C");
  const notes: string[] = [];
  const estimate = options.freezingPointC === undefined ? freezingPoint(composition, options) : undefined;
  const freezingPointC = estimate?.freezingPointC ?? (options.freezingPointC as number);
  if (!(freezingPointC < 0 && freezingPointC >= -20))
    fail("thermalProperties: freezingPointC", "must be below 0 °C and at least -20 °C", freezingPointC);
  if (estimate)
    notes.push(
      `Freezing point ${freezingPointC.toFixed(1)} °C ± ${estimate.standardErrorK.toFixed(1)} K: ${estimate.source}.`,
    );
  if (estimate?.tooDry) notes.push("So dry a mix hardly freezes; its freezing point is only a floor.");

  const bound = boundWaterFraction(composition);
  const freezable = composition.waterFraction - bound;
  const stillLiquid = freezingPointC / FROZEN_AT_C;
  const iceAtFreezer = freezable * Math.max(0, 1 - stillLiquid);
  const conductivityBy = (model: ConductivityModel): readonly [number, number] => {
    const thawed = mixConductivity(composition, { temperatureC: thawedAtC, airFraction, model });
    const cold = mixConductivity(composition, {
      temperatureC: FROZEN_AT_C,
      airFraction,
      iceFraction: iceAtFreezer,
      model,
    });
    return [thawed, stillLiquid < 1 ? (cold - thawed * stillLiquid) / (1 - stillLiquid) : thawed];
  };
  const [thawedConductivityWmK, frozenConductivityWmK] = conductivityBy(conductivityModel);
  const series = conductivityBy("series");
  const parallel = conductivityBy("parallel");
  return Object.freeze({
    densityKgM3: mixDensity(composition, { airFraction }),
    waterFraction: composition.waterFraction,
    freezingPointC,
    latentKJkg: freezable * FUSION_KJKG,
    thawedSpecificHeatKJkgK: specificHeat(composition, thawedAtC, 0),
    frozenSpecificHeatKJkgK: specificHeat(composition, FROZEN_AT_C, freezable),
    thawedConductivityWmK,
    frozenConductivityWmK,
    boundWaterFraction: bound,
    freezingPointStandardErrorK: estimate?.standardErrorK ?? 0,
    thawedConductivityRangeWmK: [series[0], parallel[0]] as const,
    frozenConductivityRangeWmK: [series[1], parallel[1]] as const,
    notes,
  });
}

function specificHeat(composition: Composition, temperatureC: number, iceFraction: number): number {
  return componentMasses(composition, iceFraction).reduce(
    (sum, [component, mass]) => sum + mass * choiOkos(component, temperatureC).specificHeatKJkgK,
    0,
  );
}

/** Returns the model unchanged when each of its constants is physically possible; otherwise throws, naming it. */
export function checkThermalModel(model: ThermalModel, where: string): ThermalModel {
  within(model.densityKgM3, 50, 3000, `${where}: densityKgM3`, "kg/m³");
  within(model.waterFraction, 0, 1, `${where}: waterFraction`, "");
  if (!(model.freezingPointC < 0 && model.freezingPointC >= -40))
    fail(`${where}: freezingPointC`, "must be below 0 °C and at least -40 °C", model.freezingPointC);
  within(model.latentKJkg, 0, 334, `${where}: latentKJkg`, "kJ/kg");
  within(model.thawedSpecificHeatKJkgK, 0.5, 5, `${where}: thawedSpecificHeatKJkgK`, "kJ/(kg·K)");
  within(model.frozenSpecificHeatKJkgK, 0.5, 5, `${where}: frozenSpecificHeatKJkgK`, "kJ/(kg·K)");
  within(model.thawedConductivityWmK, 0.01, 5, `${where}: thawedConductivityWmK`, "W/(m·K)");
  within(model.frozenConductivityWmK, 0.01, 5, `${where}: frozenConductivityWmK`, "W/(m·K)");
  return model;
}
