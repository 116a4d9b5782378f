import { fail, positive } from "../../check/check";
import { LOOSE_LOAD } from "../../crisp/clocks/load-effect";
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
  /** loads of at most that many */
  readonly loads: number;
  /** rated power over the mass of the load (W/kg); null without a rating */
  readonly wattsPerKg: number | null;
}

/** Pieces of a plan area (mm²) that cover no more than a share of an appliance's floor. */
export function piecesOnFloor(appliance: Appliance, loadFraction: number, pieceMm2: number): number {
  return Math.floor((loadFraction * appliance.floorCm2 * 100) / pieceMm2);
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
 */
export function loadPlan(options: LoadPlanOptions): LoadPlan {
  const { appliance, pieces } = options;
  const pieceMm2 =
    positive(options.lengthMm, "loadPlan: lengthMm", "mm") * positive(options.widthMm, "loadPlan: widthMm", "mm");
  const pieceG = positive(options.pieceG, "loadPlan: pieceG", "g");
  if (!(Number.isInteger(pieces) && pieces >= 1)) fail("loadPlan: pieces", "must be a whole number >= 1", pieces);
  const floorMm2 = appliance.floorCm2 * 100;
  const loosePieces = piecesOnFloor(appliance, LOOSE_LOAD, pieceMm2);
  if (loosePieces < 1) fail("loadPlan: a piece", `must fit on ${LOOSE_LOAD} of the floor (${floorMm2} mm²)`, pieceMm2);
  return Object.freeze({
    loadFraction: (pieces * pieceMm2) / floorMm2,
    loosePieces,
    loads: Math.ceil(pieces / loosePieces),
    wattsPerKg: appliance.powerW === null ? null : appliance.powerW / ((pieces * pieceG) / 1000),
  });
}
