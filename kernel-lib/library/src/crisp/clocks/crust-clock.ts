import { EVAPORATION_KJKG } from "../../heat/formulas/crust-depth";
import { type ClockBasis, EVAPORATION_C } from "./clock-basis";
import { surfaceShare } from "./edge-speed";
import { MIDDLE_MM, MIDDLE_SURFACE, type PieceConstants } from "./piece-constants";

/** Conductivity of the dry crust (W/(m·K)), held fixed: weights and scores cannot tell it from the crust's water. */
export const CRUST_CONDUCTIVITY_WMK = 0.12;

/**
 * The clock of the crust runs slower or faster than its formula by this factor [-]: F·(L/10 mm)^ε·(S/1.3)^−q, S the
 * surface of the piece over that of its two faces. Edges dry from two sides and brown first, and a panel tastes the whole piece.
 */
export function crustPace(piece: PieceConstants, thicknessMm: number): number {
  const { crustFactor, crustByThickness, edgeCrust, sides, sideShare } = piece;
  const edges = (surfaceShare(sides, thicknessMm, sideShare) / MIDDLE_SURFACE) ** -edgeCrust;
  return crustFactor * (thicknessMm / MIDDLE_MM) ** crustByThickness * edges;
}

/**
 * Time on the crust's own clock at which it starts to grow, soak-up lag included (min): `crustStart` of the slab, of which
 * a share waits for the whole piece (a coating dries while the inside is still cold).
 */
export function crustStartMin(basis: ClockBasis, piece: PieceConstants, thicknessMm: number): number {
  const { conductivityFactor, coefficientWm2K, warmShare } = piece;
  const soakMin = (basis.soak * thicknessMm * thicknessMm) / conductivityFactor;
  const biot = (basis.biot * coefficientWm2K * thicknessMm) / conductivityFactor;
  const meanC = EVAPORATION_C - (EVAPORATION_C - basis.uniformMeanC) / (1 + 0.55 * biot);
  const heatMin = (basis.crustHeatJm3 * thicknessMm * 0.0005) / coefficientWm2K / 60;
  const surfaceMin = (heatMin - (basis.airC - EVAPORATION_C) * soakMin) / (basis.airC - meanC);
  return warmShare * (Math.max(0, surfaceMin) + soakMin);
}

/** Minutes of drying from `fromMm` to `toMm` at one water density: ∫ρw·Lv·(1/h + s/kc)ds/(Ta − Tev). */
function dryingMin(basis: ClockBasis, piece: PieceConstants, waterKgM3: number, fromMm: number, toMm: number): number {
  const heat = waterKgM3 * EVAPORATION_KJKG * 1000;
  const surface = (toMm - fromMm) / 1000 / piece.coefficientWm2K;
  const crust = (toMm * toMm - fromMm * fromMm) / 1e6 / (2 * CRUST_CONDUCTIVITY_WMK);
  return (heat * (surface + crust)) / (basis.airC - EVAPORATION_C) / 60;
}

/**
 * Minutes of drying on the crust's own clock until it has a depth: the coating's water first, then the mix's.
 *
 * The front is at Tev; heat reaches it through the air film and the dry crust, and all of it evaporates water:
 * ρw·Lv·ds/dt = (Ta − Tev)/(1/h + s/kc), integrated over the depth.
 */
export function crustDryingMin(basis: ClockBasis, piece: PieceConstants, depthMm: number): number {
  const { coatingMm, crustWaterKgM3, innerWaterKgM3 } = piece;
  if (depthMm <= coatingMm) return dryingMin(basis, piece, crustWaterKgM3, 0, depthMm);
  return (
    dryingMin(basis, piece, crustWaterKgM3, 0, coatingMm) + dryingMin(basis, piece, innerWaterKgM3, coatingMm, depthMm)
  );
}

/** Depth of crust after minutes of drying (mm): the inverse of `crustDryingMin`. */
export function crustDepthAfter(basis: ClockBasis, piece: PieceConstants, minutes: number): number {
  if (minutes <= 0) return 0;
  const { coatingMm, crustWaterKgM3, innerWaterKgM3, coefficientWm2K } = piece;
  const throughMin =
    coatingMm === Number.POSITIVE_INFINITY ? coatingMm : dryingMin(basis, piece, crustWaterKgM3, 0, coatingMm);
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
export function crustMmAt(basis: ClockBasis, piece: PieceConstants, thicknessMm: number, timeMin: number): number {
  const own = timeMin / crustPace(piece, thicknessMm);
  const depthMm = crustDepthAfter(basis, piece, own - crustStartMin(basis, piece, thicknessMm));
  return Math.min(depthMm, thicknessMm / 2);
}

/** Time until the crust is deep enough to be called crisp (min); Infinity when the piece would be dry through first. */
export function crispMin(basis: ClockBasis, piece: PieceConstants, thicknessMm: number): number {
  if (piece.crustMm > thicknessMm / 2) return Number.POSITIVE_INFINITY;
  const own = crustStartMin(basis, piece, thicknessMm) + crustDryingMin(basis, piece, piece.crustMm);
  return crustPace(piece, thicknessMm) * own;
}

/**
 * Mass lost to evaporation from all faces and to drip after the crust has a depth (% of the mass before):
 * 100·[2·∫ρw ds/(ρ·L)·S + drip], S the surface of the piece over that of its two faces (`surfaceShare`).
 */
export function lossPercentOf(basis: ClockBasis, piece: PieceConstants, thicknessMm: number, depthMm: number): number {
  const { coatingMm, crustWaterKgM3, innerWaterKgM3, sides, sideShare, dripFraction } = piece;
  const coatedMm = Math.min(depthMm, coatingMm);
  const waterMm = crustWaterKgM3 * coatedMm + innerWaterKgM3 * (depthMm - coatedMm);
  const surface = surfaceShare(sides, thicknessMm, sideShare);
  return 100 * ((2 * surface * waterMm) / (basis.food.densityKgM3 * thicknessMm) + dripFraction);
}

/** Minutes of drying until the loss reaches a limit, or until the piece is dry through when that is sooner. */
export function dryDryingMin(
  basis: ClockBasis,
  piece: PieceConstants,
  thicknessMm: number,
  lossPercent: number,
): number {
  const { coatingMm, crustWaterKgM3, innerWaterKgM3, sides, sideShare, dripFraction } = piece;
  const surface = surfaceShare(sides, thicknessMm, sideShare);
  const waterMm = ((lossPercent / 100 - dripFraction) * basis.food.densityKgM3 * thicknessMm) / (2 * surface);
  if (waterMm <= 0) return Number.NEGATIVE_INFINITY;
  const coatedMm = waterMm / crustWaterKgM3;
  const depthMm =
    coatedMm <= coatingMm ? coatedMm : coatingMm + (waterMm - coatingMm * crustWaterKgM3) / innerWaterKgM3;
  return crustDryingMin(basis, piece, Math.min(depthMm, thicknessMm / 2));
}
