import { fail, positive } from "../../check/check";
import { LOOSE_LOAD } from "../../crisp/clocks/load-effect";
import { wholePieces } from "../../pan/whole-pieces";
import type { Appliance } from "../../trials/appliance";

/** What `loadPlan` works from. */
export interface LoadPlanOptions {
  readonly appliance: Appliance;
  /** longer side of a piece as it lies (mm) */
  readonly lengthMm: number;
  /** shorter side (mm) */
  readonly widthMm: number;
  /** one piece (g) */
  readonly pieceG: number;
  /** pieces to reheat */
  readonly pieces: number;
}

/** How full the floor is, and how many loads would be loose. */
export interface LoadPlan {
  /** plan area of the pieces over the floor [-] */
  readonly loadFraction: number;
  /** most pieces in a loose single layer, `LOOSE_LOAD` of the floor */
  readonly loosePieces: number;
  /** most whole pieces that lie flat beside each other; null where only the floor's area is known */
  readonly wholePieces: number | null;
  /** loads of at most that many */
  readonly loads: number;
  /** rated power over the mass of the load (W/kg); null without a rating */
  readonly wattsPerKg: number | null;
}

/** Pieces (longer and shorter side, mm) that cover no more than a share of an appliance's floor, and whole ones where its shape is known. */
export function piecesOnFloor(
  appliance: Appliance,
  loadFraction: number,
  [lengthMm, widthMm]: readonly [number, number],
): number {
  const byArea = Math.floor((loadFraction * appliance.floorCm2 * 100) / (lengthMm * widthMm) + 1e-9);
  return Math.min(byArea, wholeOnFloor(appliance, [lengthMm, widthMm]) ?? byArea);
}

/** Pieces smaller than this are counted by area: the edge of the floor costs few of them (mm); our judgement. */
const LEAST_SIDE_MM = 5;

/** Whole pieces on an appliance's floor in one layer; null where its shape is not known. */
export function wholeOnFloor({ floorShape }: Appliance, [lengthMm, widthMm]: readonly [number, number]): number | null {
  return floorShape == null || Math.min(lengthMm, widthMm) < LEAST_SIDE_MM
    ? null
    : wholePieces({ floor: floorShape, piece: { lengthMm, widthMm } }).pieces;
}

/**
 * Load of a basket or rack: the area that the pieces cover over the floor, and the power for each kilogram.
 *
 * @example
 * const basket = { applianceId: "basket", name: "basket", kind: "air fryer", floorCm2: 420, powerW: 1500, note: null } as const;
 * const load = loadPlan({ appliance: basket, lengthMm: 41, widthMm: 40, pieceG: 14, pieces: 20 });
 * load.loadFraction; // → 0.781
 * load.loosePieces; // → 15
 * load.loads; // → 2
 * loadPlan({ appliance: { ...basket, floorCm2: 408, floorShape: { shape: "round", diameterMm: 228 } }, lengthMm: 40, widthMm: 40, pieceG: 14, pieces: 20 }).wholePieces; // → 19
 */
export function loadPlan(options: LoadPlanOptions): LoadPlan {
  const { appliance, pieces } = options;
  const sidesMm = [
    positive(options.lengthMm, "loadPlan: lengthMm", "mm"),
    positive(options.widthMm, "loadPlan: widthMm", "mm"),
  ] as const;
  const pieceMm2 = sidesMm[0] * sidesMm[1];
  const pieceG = positive(options.pieceG, "loadPlan: pieceG", "g");
  if (!(Number.isInteger(pieces) && pieces >= 1)) fail("loadPlan: pieces", "must be a whole number >= 1", pieces);
  const floorMm2 = appliance.floorCm2 * 100;
  const loosePieces = piecesOnFloor(appliance, LOOSE_LOAD, sidesMm);
  if (loosePieces < 1) fail("loadPlan: a piece", `must fit on ${LOOSE_LOAD} of the floor (${floorMm2} mm²)`, pieceMm2);
  return Object.freeze({
    loadFraction: (pieces * pieceMm2) / floorMm2,
    loosePieces,
    wholePieces: wholeOnFloor(appliance, sidesMm),
    loads: Math.ceil(pieces / loosePieces),
    wattsPerKg: appliance.powerW === null ? null : appliance.powerW / ((pieces * pieceG) / 1000),
  });
}
