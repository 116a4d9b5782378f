import { positive, within } from "../../check/check";
import { enthalpyAt, temperatureFromEnthalpy } from "../../food/thermal/enthalpy";
import type { ThermalModel } from "../../food/thermal/thermal-properties";
import { coreTimeClosedForm } from "../../heat/formulas/core-time-closed-form";
import { EVAPORATION_KJKG } from "../../heat/formulas/crust-depth";
import { crustStart } from "../../heat/formulas/crust-start";
import { type BrowningTable, browningReach, browningSum, browningTable } from "./browning-table";

/** Temperature of the evaporating front (°C): the upper limit, see `crustDepthMm`. */
export const EVAPORATION_C = 100;
/** Conductivity of the dry crust (W/(m·K)), held fixed: weights and scores cannot tell it from the crust's water. */
export const CRUST_CONDUCTIVITY_WMK = 0.12;
/** The short form of the core time was fitted to this core temperature. */
const FITTED_CORE_C = 74;
/** The core warms faster just after thawing than in proportion to time; fitted to 12 runs of the slab solver [-]. */
const CORE_BULGE = 0.32;

/** What the clocks need that depends on the food, its start and the air only: worked out once, used many times. */
export interface ClockBasis {
  readonly food: ThermalModel;
  readonly startC: number;
  readonly airC: number;
  readonly limitC: number;
  /** a·h of the core's time to its limit (min·W/(m²·K)/mm) */
  readonly coreSurface: number;
  /** b of the core's time to its limit (min/mm²) */
  readonly coreInside: number;
  /** a·h and b of the core's time to 74 °C */
  readonly fittedSurface: number;
  readonly fittedInside: number;
  /** core temperature while the short form holds: enthalpy grows in proportion (kJ/kg from start to 74 °C) */
  readonly fittedHeatKJkg: number;
  readonly startHeatKJkg: number;
  /** heat to bring a slab to the evaporating temperature (J/m³) */
  readonly crustHeatJm3: number;
  /** soak-up lag (min/mm²) */
  readonly soak: number;
  /** mean surface temperature of a slab that warms all through alike (°C) */
  readonly uniformMeanC: number;
  /** h·ℓ/k for each W/(m²·K) and mm of thickness */
  readonly biot: number;
  /** relative rms error of the short forms against the solver [-] */
  readonly coreError: number;
  readonly browning: BrowningTable;
}

/** What `clockBasis` works from. */
export interface ClockBasisOptions {
  readonly food: ThermalModel;
  /** pieces when they go in (°C) */
  readonly startC: number;
  /** air of the appliance (°C) */
  readonly airC: number;
  /** core to reach (°C) */
  readonly limitC: number;
}

/** The constants of one slab in one appliance: measured, calibrated or drawn. */
export interface SlabConstants {
  /** at the pieces, for this load and turn (W/(m²·K)) */
  readonly coefficientWm2K: number;
  /** conductivity of the mix over what its composition gives [-] */
  readonly conductivityFactor: number;
  /** water that leaves for each volume of crust: within the coating, or throughout when `coatingMm` is Infinity (kg/m³) */
  readonly crustWaterKgM3: number;
  /** the same below the coating (kg/m³) */
  readonly innerWaterKgM3: number;
  /** thickness of the coating (mm); Infinity when one water density serves the whole crust */
  readonly coatingMm: number;
  /** crust depth from which a check says crisp (mm) */
  readonly crustMm: number;
  /** how gently the panel's score follows the crust depth (mm) */
  readonly panelWidthMm: number;
  /** browning constant at infinite temperature (1/s) */
  readonly browningPerS: number;
  /** mass lost as drip, of the mass before [-] */
  readonly dripFraction: number;
  /** error of the short forms: factors on the core's time and on the start of the crust [-] */
  readonly coreFactor: number;
  readonly crustStartFactor: number;
}

/**
 * The part of the closed forms of `heat/` that depends on neither coefficient nor thickness.
 *
 * Core: t = a·L + b·L² from `coreTimeClosedForm`, a ∝ 1/h, b ∝ 1/k. Crust: the start of `crustStart`, whose mean
 * surface temperature of an evenly warm slab is read off at a Biot number of nearly 0. A test holds the clocks to the
 * functions of `heat/` to 1e-9.
 */
export function clockBasis(options: ClockBasisOptions): ClockBasis {
  const { food, startC, airC, limitC } = options;
  within(airC, EVAPORATION_C + 10, 320, "clockBasis: airC", "°C");
  within(startC, -40, 60, "clockBasis: startC", "°C");
  positive(limitC, "clockBasis: limitC", "°C");
  const one = { food, thicknessMm: 1, coefficientWm2K: 1, airC, startC };
  const core = coreTimeClosedForm({ ...one, limitC });
  const fitted = coreTimeClosedForm({ ...one, limitC: FITTED_CORE_C });
  const faint = 1e-9;
  const start = crustStart({ ...one, coefficientWm2K: faint });
  const crustHeatJm3 = food.densityKgM3 * 1000 * (enthalpyAt(food, EVAPORATION_C) - enthalpyAt(food, startC));
  return {
    food,
    startC,
    airC,
    limitC,
    coreSurface: core.perMm,
    coreInside: core.perMm2,
    fittedSurface: fitted.perMm,
    fittedInside: fitted.perMm2,
    fittedHeatKJkg: enthalpyAt(food, FITTED_CORE_C) - enthalpyAt(food, startC),
    startHeatKJkg: enthalpyAt(food, startC),
    crustHeatJm3,
    soak: start.soakMin,
    uniformMeanC: airC - (crustHeatJm3 * 0.0005) / faint / (60 * start.surfaceMin),
    biot: 0.0005 / food.thawedConductivityWmK,
    coreError: core.relativeError,
    browning: browningTable(airC, EVAPORATION_C),
  };
}

/** Time until the core reaches its limit (min). */
export function coreMin(basis: ClockBasis, slab: SlabConstants, thicknessMm: number): number {
  return (
    slab.coreFactor *
    thicknessMm *
    (basis.coreSurface / slab.coefficientWm2K + (basis.coreInside * thicknessMm) / slab.conductivityFactor)
  );
}

/**
 * Core temperature after a time (°C). Up to 74 °C heat grows in proportion to time, as the short form has it, with a
 * bulge of 0.32·T·(74 − T)/74 once thawed; after that the rest to 100 °C closes at the rate it has there, or at the rate
 * π²α/L² of a slab with its faces at 100 °C when that is slower (the two joined smoothly). From 55 °C on it is within
 * 6 K of the slab solver, rms below 2 K, over 12 runs (180 and 204 °C, 30 and 60 W/(m²·K), 6 to 16 mm).
 */
export function coreC(basis: ClockBasis, slab: SlabConstants, thicknessMm: number, timeMin: number): number {
  const { food } = basis;
  const fittedMin =
    slab.coreFactor *
    thicknessMm *
    (basis.fittedSurface / slab.coefficientWm2K + (basis.fittedInside * thicknessMm) / slab.conductivityFactor);
  if (timeMin <= fittedMin) {
    const evenC = temperatureFromEnthalpy(food, basis.startHeatKJkg + (basis.fittedHeatKJkg * timeMin) / fittedMin);
    return evenC + (evenC > 0 ? (CORE_BULGE * evenC * (FITTED_CORE_C - evenC)) / FITTED_CORE_C : 0);
  }
  const restK = EVAPORATION_C - FITTED_CORE_C;
  const ownPerMin = basis.fittedHeatKJkg / food.thawedSpecificHeatKJkgK / fittedMin / restK;
  const soakMin = (basis.soak * thicknessMm * thicknessMm) / slab.conductivityFactor;
  const heldPerMin = Math.PI ** 2 / (12 * soakMin);
  const perMin = (ownPerMin ** -4 + heldPerMin ** -4) ** -0.25;
  return EVAPORATION_C - restK * Math.exp(-perMin * (timeMin - fittedMin));
}

/** Time at which the crust starts to grow, soak-up lag included (min). */
export function crustStartMin(basis: ClockBasis, slab: SlabConstants, thicknessMm: number): number {
  const conductivity = slab.conductivityFactor;
  const soakMin = (basis.soak * thicknessMm * thicknessMm) / conductivity;
  const biot = (basis.biot * slab.coefficientWm2K * thicknessMm) / conductivity;
  const meanC = EVAPORATION_C - (EVAPORATION_C - basis.uniformMeanC) / (1 + 0.55 * biot);
  const heatMin = (basis.crustHeatJm3 * thicknessMm * 0.0005) / slab.coefficientWm2K / 60;
  const surfaceMin = (heatMin - (basis.airC - EVAPORATION_C) * soakMin) / (basis.airC - meanC);
  return slab.crustStartFactor * (Math.max(0, surfaceMin) + soakMin);
}

/** Minutes of drying from `fromMm` to `toMm` at one water density: ∫ρw·Lv·(1/h + s/kc)ds/(Ta − Tev). */
function dryingMin(basis: ClockBasis, slab: SlabConstants, waterKgM3: number, fromMm: number, toMm: number): number {
  const heat = waterKgM3 * EVAPORATION_KJKG * 1000;
  const surface = (toMm - fromMm) / 1000 / slab.coefficientWm2K;
  const crust = (toMm * toMm - fromMm * fromMm) / 1e6 / (2 * CRUST_CONDUCTIVITY_WMK);
  return (heat * (surface + crust)) / (basis.airC - EVAPORATION_C) / 60;
}

/**
 * Minutes of drying until the crust has a depth: the coating's water first, then the mix's.
 *
 * The front is at Tev; heat reaches it through the air film and the dry crust, and all of it evaporates water:
 * ρw·Lv·ds/dt = (Ta − Tev)/(1/h + s/kc), integrated over the depth.
 */
export function crustDryingMin(basis: ClockBasis, slab: SlabConstants, depthMm: number): number {
  const { coatingMm, crustWaterKgM3, innerWaterKgM3 } = slab;
  if (depthMm <= coatingMm) return dryingMin(basis, slab, crustWaterKgM3, 0, depthMm);
  return (
    dryingMin(basis, slab, crustWaterKgM3, 0, coatingMm) + dryingMin(basis, slab, innerWaterKgM3, coatingMm, depthMm)
  );
}

/** Depth of crust after minutes of drying (mm): the inverse of `crustDryingMin`. */
export function crustDepthAfter(basis: ClockBasis, slab: SlabConstants, minutes: number): number {
  if (minutes <= 0) return 0;
  const { coatingMm, crustWaterKgM3, innerWaterKgM3, coefficientWm2K } = slab;
  const throughMin =
    coatingMm === Number.POSITIVE_INFINITY ? coatingMm : dryingMin(basis, slab, crustWaterKgM3, 0, coatingMm);
  const below = minutes > throughMin;
  const fromMm = below ? coatingMm : 0;
  const water = below ? innerWaterKgM3 : crustWaterKgM3;
  const perH = CRUST_CONDUCTIVITY_WMK / coefficientWm2K;
  const from = perH + fromMm / 1000;
  const lasted = 60 * (below ? minutes - throughMin : minutes);
  const grown =
    (2 * CRUST_CONDUCTIVITY_WMK * (basis.airC - EVAPORATION_C) * lasted) / (water * EVAPORATION_KJKG * 1000);
  return 1000 * (Math.sqrt(from * from + grown) - perH);
}

/** Crust depth after a time in the appliance (mm); it ends where the wet core is used up. */
export function crustMmAt(basis: ClockBasis, slab: SlabConstants, thicknessMm: number, timeMin: number): number {
  const depthMm = crustDepthAfter(basis, slab, timeMin - crustStartMin(basis, slab, thicknessMm));
  return Math.min(depthMm, thicknessMm / 2);
}

/** Time until the crust is deep enough to be called crisp (min); Infinity when the piece would be dry through first. */
export function crispMin(basis: ClockBasis, slab: SlabConstants, thicknessMm: number): number {
  if (slab.crustMm > thicknessMm / 2) return Number.POSITIVE_INFINITY;
  return crustStartMin(basis, slab, thicknessMm) + crustDryingMin(basis, slab, slab.crustMm);
}

/**
 * Mass lost to evaporation from both faces and to drip after the crust has a depth (% of the mass before):
 * 100·[2·∫ρw ds/(ρ·L) + drip]. Edges are left out: what they lose is in the calibrated water of the faces.
 */
export function lossPercentOf(basis: ClockBasis, slab: SlabConstants, thicknessMm: number, depthMm: number): number {
  const { coatingMm, crustWaterKgM3, innerWaterKgM3 } = slab;
  const coatedMm = Math.min(depthMm, coatingMm);
  const waterMm = crustWaterKgM3 * coatedMm + innerWaterKgM3 * (depthMm - coatedMm);
  return 100 * ((2 * waterMm) / (basis.food.densityKgM3 * thicknessMm) + slab.dripFraction);
}

/** Minutes of drying until the loss reaches a limit, or until the piece is dry through when that is sooner. */
export function dryDryingMin(basis: ClockBasis, slab: SlabConstants, thicknessMm: number, lossPercent: number): number {
  const { coatingMm, crustWaterKgM3, innerWaterKgM3, dripFraction } = slab;
  const waterMm = ((lossPercent / 100 - dripFraction) * basis.food.densityKgM3 * thicknessMm) / 2;
  if (waterMm <= 0) return Number.NEGATIVE_INFINITY;
  const coatedMm = waterMm / crustWaterKgM3;
  const depthMm =
    coatedMm <= coatingMm ? coatedMm : coatingMm + (waterMm - coatingMm * crustWaterKgM3) / innerWaterKgM3;
  return crustDryingMin(basis, slab, Math.min(depthMm, thicknessMm / 2));
}

/**
 * Browning ∫k dt when the crust has a depth [-], k = k0·exp(−E/RTs) at the outer surface Ts = Ta − (Ta − Tev)/(1 + h·s/kc);
 * before the crust starts the surface is below Tev and counts as 0. The sums are those of `browningTable`.
 */
export function browningOf(basis: ClockBasis, slab: SlabConstants, depthMm: number): number {
  const perU = perUnit(basis, slab);
  const u = 1 + (slab.coefficientWm2K * depthMm) / 1000 / CRUST_CONDUCTIVITY_WMK;
  if (depthMm <= slab.coatingMm) return slab.crustWaterKgM3 * perU * browningSum(basis.browning, u);
  const through = browningSum(basis.browning, coatingU(slab));
  return perU * (slab.crustWaterKgM3 * through + slab.innerWaterKgM3 * (browningSum(basis.browning, u) - through));
}

/** Minutes of drying until browning ∫k dt reaches a limit: the same for every thickness. */
export function brownDryingMin(basis: ClockBasis, slab: SlabConstants, limit: number): number {
  const wanted = limit / perUnit(basis, slab);
  let u = browningReach(basis.browning, wanted / slab.crustWaterKgM3);
  if (slab.coatingMm !== Number.POSITIVE_INFINITY && u > coatingU(slab)) {
    const through = browningSum(basis.browning, coatingU(slab));
    u = browningReach(basis.browning, through + (wanted - slab.crustWaterKgM3 * through) / slab.innerWaterKgM3);
  }
  const depthMm = ((u - 1) * 1000 * CRUST_CONDUCTIVITY_WMK) / slab.coefficientWm2K;
  return crustDryingMin(basis, slab, depthMm);
}

function coatingU(slab: SlabConstants): number {
  return 1 + (slab.coefficientWm2K * slab.coatingMm) / 1000 / CRUST_CONDUCTIVITY_WMK;
}

/** k0·(kc/h²)·Lv/(Ta − Tev): browning for each unit of F and kg/m³ of water. */
function perUnit(basis: ClockBasis, slab: SlabConstants): number {
  const { coefficientWm2K: h } = slab;
  return (
    (slab.browningPerS * CRUST_CONDUCTIVITY_WMK * EVAPORATION_KJKG * 1000) / (h * h * (basis.airC - EVAPORATION_C))
  );
}
