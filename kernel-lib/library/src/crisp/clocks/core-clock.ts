import { enthalpyAt, temperatureFromEnthalpy } from "../../food/thermal/enthalpy";
import { type ClockBasis, FITTED_CORE_C } from "./clock-basis";
import { edgeSpeed } from "./edge-speed";
import { MIDDLE_MM, type PieceConstants } from "./piece-constants";

/** The core warms faster just after thawing than in proportion to time; fitted to 12 runs of the slab solver [-]. */
const CORE_BULGE = 0.32;

/** The core's climb slows down this far below its plateau at the latest (K). */
const SLOW_K = 12;

/** From chilled, without ice to melt first, heat goes in more evenly by this factor on the power; fitted to the slab solver [-]. */
const CHILLED_BEND = 0.78;

/** A rest gives the core all of its gain so far below the plateau (K), and less above: its faces then give off vapour; our judgement. */
const REST_K = 40;

/** How one core climbs: with the heat it takes up until it slows down, then the rest to its plateau exponentially. */
interface Climb {
  /** time to 74 °C if it did not slow down before (min) */
  readonly fittedMin: number;
  /** power of the share of the heat to 74 °C with which time grows [-] */
  readonly bend: number;
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
  const fittedMin = fittedMinOf(basis, piece, thicknessMm);
  const bend = bendOf(basis, piece);
  const slowC = Math.min(FITTED_CORE_C, plateauC - SLOW_K);
  const even = evenOf(slowC);
  const share = heatShare(basis, slowC);
  const slowMin = fittedMin * share ** bend;
  const restK = plateauC - slowC;
  const steep = even > 0 ? 1 + (CORE_BULGE * (FITTED_CORE_C - 2 * even)) / FITTED_CORE_C : 1;
  const climbing = slowC < FITTED_CORE_C ? steep : 1;
  const heatPerMin = basis.fittedHeatKJkg / (fittedMin * bend * share ** (bend - 1));
  const ownPerMin = (climbing * heatPerMin) / food.thawedSpecificHeatKJkgK / restK;
  const heldPerMin = Math.PI ** 2 / (12 * soakMinOf(basis, piece, thicknessMm));
  return { fittedMin, bend, slowC, slowMin, plateauC, perMin: (ownPerMin ** -4 + heldPerMin ** -4) ** -0.25 };
}

/** Temperature of a slab that is warm all through alike when its core is at T: the inverse of the bulge (°C). */
function evenOf(coreC: number): number {
  if (coreC <= 0 || coreC >= FITTED_CORE_C) return coreC;
  const steep = 1 + CORE_BULGE;
  const bend = CORE_BULGE / FITTED_CORE_C;
  return (steep - Math.sqrt(steep * steep - 4 * bend * coreC)) / (2 * bend);
}

function bendOf({ frozen }: ClockBasis, { coreBend }: PieceConstants): number {
  return frozen ? coreBend : CHILLED_BEND * coreBend;
}

/** Heat that a piece has taken up when its core is at T, on what it takes to 74 °C [-]. */
function heatShare(basis: ClockBasis, coreC: number): number {
  return (enthalpyAt(basis.food, evenOf(coreC)) - basis.startHeatKJkg) / basis.fittedHeatKJkg;
}

/**
 * Time until the core reaches the limit of the basis (min): F·(L/10 mm)^ε·(a·L/h + b·L²/k)/E·x^p, E from `edgeSpeed`, x the
 * heat taken up then on that to 74 °C, p how the heating slackens; where the limit is within 12 K of the plateau, what the
 * slower climb there takes is added. Infinity above the plateau.
 */
export function coreMin(basis: ClockBasis, piece: PieceConstants, thicknessMm: number): number {
  const { limitC } = basis;
  const { plateauC } = piece;
  if (limitC <= FITTED_CORE_C && limitC <= plateauC - SLOW_K)
    return fittedMinOf(basis, piece, thicknessMm) * heatShare(basis, limitC) ** bendOf(basis, piece);
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

/** Time to 74 °C (min). */
function fittedMinOf(basis: ClockBasis, piece: PieceConstants, thicknessMm: number): number {
  const { fittedSurface: surface, fittedInside: inside } = basis;
  const { coefficientWm2K, conductivityFactor, coreFactor, coreByThickness, sides, sideShare } = piece;
  const slabMin = thicknessMm * (surface / coefficientWm2K + (inside * thicknessMm) / conductivityFactor);
  const biot = (basis.biot * coefficientWm2K * thicknessMm) / conductivityFactor;
  const edges = edgeSpeed(sides, thicknessMm, biot, sideShare, basis.frozen);
  return (coreFactor * (thicknessMm / MIDDLE_MM) ** coreByThickness * slabMin) / edges;
}

/**
 * Core temperature after a time (°C). Up to 74 °C, or 12 K below a lower plateau, heat grows with time to the power 1/p, with
 * a bulge of 0.32·T·(74 − T)/74 once thawed: p = 1 is the short form, in which heat goes in evenly; under a face that warms and
 * gives off water it slackens; after that the rest to the plateau closes at the rate
 * it has there, or at the rate π²α/L² of a slab with its faces at the plateau when that is slower (the two joined
 * smoothly). With a plateau of 100 °C and p = 1 it is within 6 K of the slab solver from 55 °C on, rms below 2 K, over 12 runs (180
 * and 204 °C, 30 and 60 W/(m²·K), 6 to 16 mm).
 */
export function coreAtC(basis: ClockBasis, piece: PieceConstants, thicknessMm: number, timeMin: number): number {
  return coreAt(basis, timeMin, climbOf(basis, piece, thicknessMm));
}

function coreAt(basis: ClockBasis, timeMin: number, climb: Climb): number {
  const { fittedMin, bend, slowC, slowMin, plateauC, perMin } = climb;
  if (timeMin <= slowMin) {
    const heat = basis.startHeatKJkg + basis.fittedHeatKJkg * (timeMin / fittedMin) ** (1 / bend);
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
 * share of that, counted for half the piece since its edges cool: gain·rate·(ℓ²/3α)/2, and the less the hotter it is, as its
 * faces go on giving off vapour: (plateau − core)/40 K of it. A probe beside the coldest point
 * reads warmer, the less so the more even the piece.
 */
export function coreReadingC(
  basis: ClockBasis,
  piece: PieceConstants,
  thicknessMm: number,
  timeMin: number,
  rested: boolean,
): number {
  return coreProbe(basis, piece, thicknessMm)(timeMin, rested);
}

/** The readings of one piece, as `coreReadingC` has them, for several times. */
export function coreProbe(
  basis: ClockBasis,
  piece: PieceConstants,
  thicknessMm: number,
): (timeMin: number, rested: boolean) => number {
  const climb = climbOf(basis, piece, thicknessMm);
  const halfSoakMin = 0.5 * soakMinOf(basis, piece, thicknessMm);
  const stepMin = 0.02 * climb.fittedMin;
  return (timeMin, rested) => {
    const outC = coreAt(basis, timeMin, climb);
    const belowK = Math.max(0, climb.plateauC - outC);
    const readC = outC + piece.probeWarmK * Math.min(1, belowK / 20);
    if (!rested) return readC;
    const perMin = (coreAt(basis, timeMin + stepMin, climb) - outC) / stepMin;
    return readC + Math.min(12, (belowK / REST_K) * piece.restGain * perMin * halfSoakMin);
  };
}
