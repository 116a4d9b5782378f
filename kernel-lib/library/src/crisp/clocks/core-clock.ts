import { temperatureFromEnthalpy } from "../../food/thermal/enthalpy";
import { type ClockBasis, FITTED_CORE_C } from "./clock-basis";
import { edgeSpeed } from "./edge-speed";
import { MIDDLE_MM, type PieceConstants } from "./piece-constants";

/** The core warms faster just after thawing than in proportion to time; fitted to 12 runs of the slab solver [-]. */
const CORE_BULGE = 0.32;

/** Time until the core reaches the limit of the basis (min): F·(L/10 mm)^ε·(a·L/h + b·L²/k)/E, E from `edgeSpeed`. */
export function coreMin(basis: ClockBasis, piece: PieceConstants, thicknessMm: number): number {
  return scaled(basis, piece, thicknessMm, basis.coreSurface, basis.coreInside);
}

function scaled(
  basis: ClockBasis,
  piece: PieceConstants,
  thicknessMm: number,
  surface: number,
  inside: number,
): number {
  const { coefficientWm2K, conductivityFactor, coreFactor, coreByThickness, sides, sideShare } = piece;
  const slabMin = thicknessMm * (surface / coefficientWm2K + (inside * thicknessMm) / conductivityFactor);
  const biot = (basis.biot * coefficientWm2K * thicknessMm) / conductivityFactor;
  const edges = edgeSpeed(sides, thicknessMm, biot, sideShare, basis.frozen);
  return (coreFactor * (thicknessMm / MIDDLE_MM) ** coreByThickness * slabMin) / edges;
}

/**
 * Core temperature after a time (°C). Up to 74 °C heat grows in proportion to time, as the short form has it, with a
 * bulge of 0.32·T·(74 − T)/74 once thawed; after that the rest to the plateau closes at the rate it has there, or at the
 * rate π²α/L² of a slab with its faces at the plateau when that is slower (the two joined smoothly). With a plateau of
 * 100 °C it is within 6 K of the slab solver from 55 °C on, rms below 2 K, over 12 runs (180 and 204 °C, 30 and 60
 * W/(m²·K), 6 to 16 mm).
 */
export function coreC(basis: ClockBasis, piece: PieceConstants, thicknessMm: number, timeMin: number): number {
  return coreAt(basis, piece, thicknessMm, timeMin, fittedMinOf(basis, piece, thicknessMm));
}

function fittedMinOf(basis: ClockBasis, piece: PieceConstants, thicknessMm: number): number {
  return scaled(basis, piece, thicknessMm, basis.fittedSurface, basis.fittedInside);
}

function coreAt(
  basis: ClockBasis,
  piece: PieceConstants,
  thicknessMm: number,
  timeMin: number,
  fittedMin: number,
): number {
  const { food } = basis;
  if (timeMin <= fittedMin) {
    const evenC = temperatureFromEnthalpy(food, basis.startHeatKJkg + (basis.fittedHeatKJkg * timeMin) / fittedMin);
    return evenC + (evenC > 0 ? (CORE_BULGE * evenC * (FITTED_CORE_C - evenC)) / FITTED_CORE_C : 0);
  }
  const restK = Math.max(4, piece.plateauC - FITTED_CORE_C);
  const ownPerMin = basis.fittedHeatKJkg / food.thawedSpecificHeatKJkgK / fittedMin / restK;
  const heldPerMin = Math.PI ** 2 / (12 * soakMinOf(basis, piece, thicknessMm));
  const perMin = (ownPerMin ** -4 + heldPerMin ** -4) ** -0.25;
  return FITTED_CORE_C + restK * (1 - Math.exp(-perMin * (timeMin - fittedMin)));
}

/** ℓ²/3α, the soak-up lag of the piece (min). */
function soakMinOf(basis: ClockBasis, piece: PieceConstants, thicknessMm: number): number {
  return (basis.soak * thicknessMm * thicknessMm) / piece.conductivityFactor;
}

/**
 * What a probe reads in a piece taken out after a time (°C), at once or at the highest within two minutes of rest.
 *
 * While it heats, the mean of a slab is above its core by rate·ℓ²/6α (a parabola of depth ℓ); resting, the core gains a
 * share of that, counted for half the piece since its edges cool: gain·rate·(ℓ²/3α)/2.
 */
export function coreReadingC(
  basis: ClockBasis,
  piece: PieceConstants,
  thicknessMm: number,
  timeMin: number,
  rested: boolean,
): number {
  const fittedMin = fittedMinOf(basis, piece, thicknessMm);
  const outC = coreAt(basis, piece, thicknessMm, timeMin, fittedMin);
  if (!rested) return outC;
  const stepMin = 0.02 * fittedMin;
  const perMin = (coreAt(basis, piece, thicknessMm, timeMin + stepMin, fittedMin) - outC) / stepMin;
  return outC + Math.min(12, 0.5 * piece.restGain * perMin * soakMinOf(basis, piece, thicknessMm));
}
