import { enthalpyAt, temperatureFromEnthalpy } from "../../food/thermal/enthalpy";
import { type ClockBasis, FITTED_CORE_C } from "./clock-basis";
import { edgeSpeed } from "./edge-speed";
import { MIDDLE_MM, type PieceConstants } from "./piece-constants";

/** The core warms faster just after thawing than in proportion to time; fitted to 12 runs of the slab solver [-]. */
const CORE_BULGE = 0.32;

/** The core's climb slows down this far below its plateau at the latest (K). */
const SLOW_K = 12;

/** How one core climbs: in proportion to heat until it slows down, then the rest to its plateau exponentially. */
interface Climb {
  /** time to 74 °C if heat went on growing in proportion to time (min) */
  readonly fittedMin: number;
  /** where it slows down: 74 °C, or 12 K below a low plateau (°C), and when (min) */
  readonly slowC: number;
  readonly slowMin: number;
  readonly plateauC: number;
  /** rate of the rest (1/min) */
  readonly perMin: number;
}

function climbOf(basis: ClockBasis, piece: PieceConstants, thicknessMm: number): Climb {
  const { food } = basis;
  const { plateauC } = piece;
  const fittedMin = scaled(basis, piece, thicknessMm, basis.fittedSurface, basis.fittedInside);
  const slowC = Math.min(FITTED_CORE_C, plateauC - SLOW_K);
  const even = evenOf(slowC);
  const slowMin = (fittedMin * (enthalpyAt(food, even) - basis.startHeatKJkg)) / basis.fittedHeatKJkg;
  const restK = plateauC - slowC;
  const steep = even > 0 ? 1 + (CORE_BULGE * (FITTED_CORE_C - 2 * even)) / FITTED_CORE_C : 1;
  const climbing = slowC < FITTED_CORE_C ? steep : 1;
  const ownPerMin = (climbing * basis.fittedHeatKJkg) / food.thawedSpecificHeatKJkgK / fittedMin / restK;
  const heldPerMin = Math.PI ** 2 / (12 * soakMinOf(basis, piece, thicknessMm));
  return { fittedMin, slowC, slowMin, plateauC, perMin: (ownPerMin ** -4 + heldPerMin ** -4) ** -0.25 };
}

/** Temperature of a slab that is warm all through alike when its core is at T: the inverse of the bulge (°C). */
function evenOf(coreC: number): number {
  if (coreC <= 0 || coreC >= FITTED_CORE_C) return coreC;
  const steep = 1 + CORE_BULGE;
  const bend = CORE_BULGE / FITTED_CORE_C;
  return (steep - Math.sqrt(steep * steep - 4 * bend * coreC)) / (2 * bend);
}

/**
 * Time until the core reaches the limit of the basis (min): F·(L/10 mm)^ε·(a·L/h + b·L²/k)/E, E from `edgeSpeed`; where
 * the limit is within 12 K of the plateau, what the slower climb there takes is added. Infinity above the plateau.
 */
export function coreMin(basis: ClockBasis, piece: PieceConstants, thicknessMm: number): number {
  const { limitC } = basis;
  const { plateauC } = piece;
  if (limitC <= FITTED_CORE_C && limitC <= plateauC - SLOW_K)
    return scaled(basis, piece, thicknessMm, basis.coreSurface, basis.coreInside);
  if (limitC >= plateauC) return Number.POSITIVE_INFINITY;
  const { slowC, slowMin, perMin } = climbOf(basis, piece, thicknessMm);
  return slowMin + Math.log((plateauC - slowC) / (plateauC - limitC)) / perMin;
}

/** By how many percent the core's time falls when the coefficient rises by one [-]: the surface's share of it, 0 to 1. */
export function coreElasticity(basis: ClockBasis, piece: PieceConstants, thicknessMm: number): number {
  const more = { ...piece, coefficientWm2K: 1.02 * piece.coefficientWm2K };
  const ratio = coreMin(basis, piece, thicknessMm) / coreMin(basis, more, thicknessMm);
  return Number.isFinite(ratio) ? Math.min(1, Math.max(0.3, Math.log(ratio) / Math.log(1.02))) : 1;
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
 * Core temperature after a time (°C). Up to 74 °C, or 12 K below a lower plateau, heat grows in proportion to time, as the
 * short form has it, with a bulge of 0.32·T·(74 − T)/74 once thawed; after that the rest to the plateau closes at the rate
 * it has there, or at the rate π²α/L² of a slab with its faces at the plateau when that is slower (the two joined
 * smoothly). With a plateau of 100 °C it is within 6 K of the slab solver from 55 °C on, rms below 2 K, over 12 runs (180
 * and 204 °C, 30 and 60 W/(m²·K), 6 to 16 mm).
 */
export function coreAtC(basis: ClockBasis, piece: PieceConstants, thicknessMm: number, timeMin: number): number {
  return coreAt(basis, timeMin, climbOf(basis, piece, thicknessMm));
}

function coreAt(basis: ClockBasis, timeMin: number, climb: Climb): number {
  const { fittedMin, slowC, slowMin, plateauC, perMin } = climb;
  if (timeMin <= slowMin) {
    const heat = basis.startHeatKJkg + (basis.fittedHeatKJkg * timeMin) / fittedMin;
    const evenC = temperatureFromEnthalpy(basis.food, heat);
    return evenC + (evenC > 0 ? (CORE_BULGE * evenC * (FITTED_CORE_C - evenC)) / FITTED_CORE_C : 0);
  }
  return plateauC - (plateauC - slowC) * Math.exp(-perMin * (timeMin - slowMin));
}

/** ℓ²/3α, the soak-up lag of the piece (min). */
function soakMinOf(basis: ClockBasis, piece: PieceConstants, thicknessMm: number): number {
  return (basis.soak * thicknessMm * thicknessMm) / piece.conductivityFactor;
}

/**
 * What a probe reads in a piece taken out after a time (°C), at once or at the highest within two minutes of rest.
 *
 * While it heats, the mean of a slab is above its core by rate·ℓ²/6α (a parabola of depth ℓ); resting, the core gains a
 * share of that, counted for half the piece since its edges cool: gain·rate·(ℓ²/3α)/2. A probe beside the coldest point
 * reads warmer, the less so the more even the piece.
 */
export function coreReadingC(
  basis: ClockBasis,
  piece: PieceConstants,
  thicknessMm: number,
  timeMin: number,
  rested: boolean,
): number {
  const climb = climbOf(basis, piece, thicknessMm);
  const outC = coreAt(basis, timeMin, climb);
  const warmK = piece.probeWarmK * Math.min(1, Math.max(0, (climb.plateauC - outC) / 20));
  if (!rested) return outC + warmK;
  const stepMin = 0.02 * climb.fittedMin;
  const perMin = (coreAt(basis, timeMin + stepMin, climb) - outC) / stepMin;
  return outC + warmK + Math.min(12, 0.5 * piece.restGain * perMin * soakMinOf(basis, piece, thicknessMm));
}
