import type { CrispCalibration } from "../calibration/calibrate-crisp";
import { PLACE_CORE_SPREAD, SETTING_MISFIT, SLAB_SPREAD } from "../calibration/crisp-noise";
import { pieceAt } from "../calibration/piece-at";
import { browningTableOf } from "../clocks/browning-clock";
import type { BrowningTable } from "../clocks/browning-table";
import type { ClockBasis } from "../clocks/clock-basis";
import { crispMin } from "../clocks/crust-clock";
import type { PieceConstants } from "../clocks/piece-constants";
import { modePiece } from "../window/draw-pieces";
import { loadFactor } from "../window/load-safety";
import { MISFIT_GROWTH, type Misfit, misfitAt } from "../window/misfit-at";
import { scatterAt } from "../window/success-over-time";
import { basisOf, momentsOf, type SettledSetting } from "../window/window-setting";
import type { MatchedDraws } from "./matched-draws";

/** The pieces of a calibration's draws at one setting: what may be learnt of them, without what no trial takes away. */
export interface PlaceDraws {
  readonly draws: MatchedDraws;
  readonly setting: SettledSetting;
  readonly basis: ClockBasis;
  readonly misfit: Misfit;
  /** sd of the part of the drift that is this setting's alone, which the pieces do not have */
  readonly ownDrift: { readonly core: number; readonly crust: number; readonly brown: number };
  readonly pieces: readonly PieceConstants[];
  readonly tables: readonly BrowningTable[];
  /** ln of the time until each is crisp (min) */
  readonly crispLogs: Float64Array;
  /** at the most probable constants */
  readonly middle: PieceConstants;
  readonly middleTable: BrowningTable;
}

/** Drawn pieces whose activation energies round to the same half kJ/mol share one table. */
const TABLES_A_KJMOL = 2;

/** How a setting stands to those that are asked about. */
export interface PlaceStanding {
  /** correlation of its drift with theirs; default 1 */
  readonly sharedDrift?: number;
}

/** Puts the draws of a calibration to one setting. */
export function placeDraws(
  draws: MatchedDraws,
  setting: SettledSetting,
  { sharedDrift = 1 }: PlaceStanding = {},
): PlaceDraws {
  const { calibration, values, drift } = draws;
  const { food, coatingMm, applianceIds } = calibration;
  const basis = basisOf(calibration, setting);
  const misfit = misfitAt(calibration, setting, basis.coreError);
  const innerWaterKgM3 = food.densityKgM3 * food.waterFraction;
  const tables = new Map<number, BrowningTable>();
  const pieces: PieceConstants[] = [];
  const own: BrowningTable[] = [];
  for (let at = 0; at < values.length; at++) {
    const piece = pieceAt({
      values: values[at],
      applianceIds,
      place: setting,
      coatingMm: coatingMm ?? Number.POSITIVE_INFINITY,
      innerWaterKgM3,
    });
    const key = Math.round(TABLES_A_KJMOL * piece.browningKJmol);
    const table = tables.get(key) ?? browningTableOf(basis, { ...piece, browningKJmol: key / TABLES_A_KJMOL });
    tables.set(key, table);
    const by = (clock: "core" | "crust" | "brown"): number =>
      sharedDrift * MISFIT_GROWTH[clock] * misfit.distance * drift[clock][at];
    pieces.push(missedBy(piece, { core: by("core"), crust: by("crust"), brown: by("brown") }));
    own.push(table);
  }
  const middle = modePiece(calibration, setting);
  const alone = Math.sqrt(Math.max(0, 1 - sharedDrift * sharedDrift)) * misfit.distance;
  return {
    draws,
    setting,
    basis,
    misfit,
    ownDrift: {
      core: alone * MISFIT_GROWTH.core,
      crust: alone * MISFIT_GROWTH.crust,
      brown: alone * MISFIT_GROWTH.brown,
    },
    pieces,
    tables: own,
    crispLogs: Float64Array.from(pieces, (piece) => crispLogOf(basis, piece, setting.thicknessMm)),
    middle,
    middleTable: browningTableOf(basis, middle),
  };
}

/** A piece that is never crisp counts as crisp after so long (min). */
const LONG_MIN = 1e3;

/** ln of the time until a piece is crisp (min). */
export function crispLogOf(basis: ClockBasis, piece: PieceConstants, thicknessMm: number): number {
  return Math.log(Math.min(LONG_MIN, crispMin(basis, piece, thicknessMm)));
}

/** A piece whose clocks are missed by so much (logarithms of core and crust times, and of the browning rate). */
export function missedBy(
  piece: PieceConstants,
  { core = 0, crust = 0, brown = 0 }: { readonly core?: number; readonly crust?: number; readonly brown?: number },
): PieceConstants {
  return {
    ...piece,
    coreFactor: piece.coreFactor * Math.exp(core),
    crustFactor: piece.crustFactor * Math.exp(crust),
    browningPerS: piece.browningPerS * Math.exp(brown),
  };
}

/** The moments that a decision hangs on, in this order. */
export const MOMENTS = ["core", "crisp", "brown", "dry"] as const;

/** Logarithms of the moments at one setting, and how what no trial takes away scatters them. */
export interface MomentDraws {
  /** ln of core, crisp, too brown and too dry (min) of the typical piece, draw by draw, within what a grid of times holds */
  readonly logs: Float64Array;
  /** change of each over one standard deviation of: run, thickness, a piece's core, a piece's crust, and the three misses */
  readonly scatter: readonly (readonly number[])[];
  /** sd of the part of ln core that the clocks miss here whatever is logged, and of how far loads scatter */
  readonly coreMissed: number;
  /** ln of the factor on the typical core's time after which whole loads are safe */
  readonly logLoad: number;
}

/** How many ways there are to scatter. */
export const SCATTERS = 7;

/** The moments of drawn pieces at their setting. */
export function momentDraws(place: PlaceDraws): MomentDraws {
  const { draws, setting, basis, misfit, pieces, tables, middle, middleTable } = place;
  const { noise, unevenness } = draws.calibration;
  const [least, most] = [Math.log(0.2), Math.log(4 * setting.longestMin)];
  const inside = (min: number): number => Math.min(most, Math.max(least, min > 0 ? Math.log(min) : least));
  const logsOf = (piece: PieceConstants, thicknessMm: number, table: BrowningTable): number[] => {
    const { coreMin, crispMin, brownMin, dryMin } = momentsOf(basis, piece, thicknessMm, setting, table);
    return [coreMin, crispMin, brownMin, dryMin].map(inside);
  };
  const logs = new Float64Array(4 * pieces.length);
  for (let at = 0; at < pieces.length; at++) logs.set(logsOf(pieces[at], setting.thicknessMm, tables[at]), 4 * at);
  const here = logsOf(middle, setting.thicknessMm, middleTable);
  const change = (piece: PieceConstants, thicknessMm = setting.thicknessMm): number[] =>
    logsOf(piece, thicknessMm, middleTable).map((log, at) => log - here[at]);
  const run = Math.hypot(noise.run, noise.session);
  // what is missed whatever is logged: all but the drift
  const missed = (clock: "core" | "crust" | "brown"): number =>
    Math.sqrt(Math.max(0, misfit[clock] ** 2 - (MISFIT_GROWTH[clock] * misfit.distance) ** 2));
  const load = scatterAt(draws.calibration, basis, setting);
  return {
    logs,
    scatter: [
      change({ ...middle, coefficientWm2K: middle.coefficientWm2K * Math.exp(run) }),
      change(middle, setting.thicknessMm * (1 + Math.hypot(unevenness, SLAB_SPREAD))),
      [PLACE_CORE_SPREAD, 0, 0, 0],
      [0, noise.crispTime, 0, 0],
      change(missedBy(middle, { core: missed("core") })),
      change(missedBy(middle, { crust: missed("crust") })),
      change(missedBy(middle, { brown: missed("brown") })),
    ],
    coreMissed: Math.hypot(missed("core"), load.doubt),
    logLoad: Math.log(loadFactor(load)),
  };
}

/** Standard deviation of what a clock misses at one setting, however often that is logged. */
export function floorOf({ noise }: CrispCalibration, clock: "core" | "crust" | "brown"): number {
  return noise.misfit * SETTING_MISFIT[clock];
}
