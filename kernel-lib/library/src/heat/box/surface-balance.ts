import { evaporationHeat, humidity, humiditySlope, saturation, vapourResistance } from "../coefficient/wet-surface";
import { EVAPORATION_KJKG } from "../formulas/crust-depth";

/** How water leaves a face. */
export type DryingLaw = "none" | "boiling-surface" | "receding-front" | "wet-front";

/** Constants of drying, in SI. */
export interface DryingConstants {
  readonly law: DryingLaw;
  readonly evaporationC: number;
  /** conductivity of the dry crust [W/(m·K)] */
  readonly crustWmK: number;
  /** vapour pressure of the air [Pa] */
  readonly vapourPa: number;
  /** share of the coefficient that is convection, for Lewis [-] */
  readonly convectionShare: number;
  /** what a crust lets through of vapour: density of air × diffusivity in it [kg/(m·s)] */
  readonly crustVapourKgMs: number;
}

/** What crosses one face, for each m² of it. */
export interface FaceFlow {
  /** heat from the air [W/m²] */
  heatIn: number;
  /** heat that goes on into the wet core [W/m²] */
  heatToCore: number;
  /** at the edge of the wet core [°C] */
  frontC: number;
  /** vapour that leaves [kg/(m²·s)] */
  vapour: number;
  /** where to look first for a wet front [°C] */
  guessC: number;
}

/**
 * Heat balance of one face: air - film - dry crust - front - half a cell - its middle, water boiling off or drying at
 * the front. Writes into `flow`.
 */
export function surfaceBalance(
  flow: FaceFlow,
  drying: DryingConstants,
  airC: number,
  coefficient: number,
  crustM: number,
  cellConductance: number,
  cellC: number,
): void {
  if (coefficient === 0) {
    flow.heatIn = 0;
    flow.heatToCore = 0;
    flow.frontC = cellC;
    flow.vapour = 0;
    return;
  }
  const outer = 1 / coefficient + crustM / drying.crustWmK;
  const dryHeat = (airC - cellC) / (outer + 1 / cellConductance);
  const dryFrontC = cellC + dryHeat / cellConductance;
  flow.heatIn = dryHeat;
  flow.heatToCore = dryHeat;
  flow.frontC = dryFrontC;
  flow.vapour = 0;
  if (drying.law === "none" || airC <= cellC) return;
  if (drying.law === "wet-front" && cellC < WETTEST_C) {
    wetFront(flow, drying, airC, coefficient, crustM, cellConductance, cellC, outer);
    return;
  }
  if (dryFrontC <= drying.evaporationC) return;
  flow.frontC = drying.evaporationC;
  flow.heatIn = (airC - drying.evaporationC) / outer;
  flow.heatToCore = cellConductance * (drying.evaporationC - cellC);
  flow.vapour = (flow.heatIn - flow.heatToCore) / (1000 * EVAPORATION_KJKG);
}

/** Above this the humid air of the Lewis analogy is all vapour and the front boils instead (°C). */
const WETTEST_C = 99.9;

/**
 * Finds the front temperature at which heat in = heat on into the core + heat of the vapour that leaves, by Newton's
 * steps inside a bracket, starting from `flow.guessC`.
 */
function wetFront(
  flow: FaceFlow,
  drying: DryingConstants,
  airC: number,
  coefficient: number,
  crustM: number,
  cellConductance: number,
  cellC: number,
  outer: number,
): void {
  let low = cellC;
  let high = Math.min(flow.frontC, WETTEST_C);
  const resistance = vapourResistance(coefficient * drying.convectionShare, crustM, drying.crustVapourKgMs);
  const inAir = humidity(drying.vapourPa);
  let frontC = flow.guessC > low && flow.guessC < high ? flow.guessC : 0.5 * (low + high);
  for (let step = 0; step < 60; step++) {
    const pressure = saturation(frontC);
    const excess = humidity(pressure) - inAir;
    const heat = evaporationHeat(frontC);
    const surplus =
      (airC - frontC) / outer - cellConductance * (frontC - cellC) - (Math.max(0, excess) / resistance) * heat;
    if (surplus > 0) low = frontC;
    else high = frontC;
    const slope =
      -1 / outer - cellConductance - (excess > 0 ? (humiditySlope(frontC, pressure) * heat) / resistance : 0);
    let next = frontC - surplus / slope;
    if (!(next > low && next < high)) next = (low + high) / 2;
    const moved = Math.abs(next - frontC);
    frontC = next;
    if (moved < 1e-8) break;
  }
  flow.guessC = frontC;
  flow.frontC = frontC;
  flow.heatIn = (airC - frontC) / outer;
  flow.heatToCore = cellConductance * (frontC - cellC);
  flow.vapour = Math.max(0, (flow.heatIn - flow.heatToCore) / evaporationHeat(frontC));
}
