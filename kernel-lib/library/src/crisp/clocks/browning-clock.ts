import { EVAPORATION_KJKG } from "../../heat/formulas/crust-depth";
import { type BrowningTable, browningReach, browningSum, browningTable } from "./browning-table";
import { type ClockBasis, EVAPORATION_C } from "./clock-basis";
import { CRUST_CONDUCTIVITY_WMK, crustDryingMin } from "./crust-clock";
import { MIDDLE_MM, type PieceConstants } from "./piece-constants";

/** The table of browning sums of a piece: for its air and its activation energy. */
export function browningTableOf(basis: ClockBasis, piece: PieceConstants): BrowningTable {
  return browningTable(basis.airC, EVAPORATION_C, piece.browningKJmol);
}

/**
 * Browning ∫k dt when the crust has a depth [-], k = k150·exp[−E/R·(1/Ts − 1/423 K)] at the outer surface
 * Ts = Ta − (Ta − Tev)/(1 + h·s/kc); before the crust starts the surface is below Tev and counts as 0.
 */
export function browningOf(
  basis: ClockBasis,
  piece: PieceConstants,
  thicknessMm: number,
  depthMm: number,
  table: BrowningTable = browningTableOf(basis, piece),
): number {
  const perU = perUnit(basis, piece, thicknessMm);
  const u = 1 + (piece.coefficientWm2K * depthMm) / 1000 / CRUST_CONDUCTIVITY_WMK;
  if (depthMm <= piece.coatingMm) return piece.crustWaterKgM3 * perU * browningSum(table, u);
  const through = browningSum(table, coatingU(piece));
  return perU * (piece.crustWaterKgM3 * through + piece.innerWaterKgM3 * (browningSum(table, u) - through));
}

/** Minutes of drying on the crust's own clock until browning reaches a limit. */
export function brownDryingMin(
  basis: ClockBasis,
  piece: PieceConstants,
  thicknessMm: number,
  limit: number,
  table: BrowningTable = browningTableOf(basis, piece),
): number {
  const wanted = limit / perUnit(basis, piece, thicknessMm);
  let u = browningReach(table, wanted / piece.crustWaterKgM3);
  if (piece.coatingMm !== Number.POSITIVE_INFINITY && u > coatingU(piece)) {
    const through = browningSum(table, coatingU(piece));
    u = browningReach(table, through + (wanted - piece.crustWaterKgM3 * through) / piece.innerWaterKgM3);
  }
  const depthMm = ((u - 1) * 1000 * CRUST_CONDUCTIVITY_WMK) / piece.coefficientWm2K;
  return crustDryingMin(basis, piece, depthMm);
}

function coatingU(piece: PieceConstants): number {
  return 1 + (piece.coefficientWm2K * piece.coatingMm) / 1000 / CRUST_CONDUCTIVITY_WMK;
}

/** k·(kc/h²)·Lv/(Ta − Tev): browning for each unit of F and kg/m³ of water. */
function perUnit(basis: ClockBasis, piece: PieceConstants, thicknessMm: number): number {
  const { coefficientWm2K: h, browningPerS, brownByThickness } = piece;
  const rate = browningPerS * (thicknessMm / MIDDLE_MM) ** brownByThickness;
  return (rate * CRUST_CONDUCTIVITY_WMK * EVAPORATION_KJKG * 1000) / (h * h * (basis.airC - EVAPORATION_C));
}
