import { seededRandom } from "../../statistics/random/seeded-random";
import type { CrispCalibration } from "../calibration/calibrate-crisp";
import { PLACE_CORE_SPREAD, SLAB_SPREAD } from "../calibration/crisp-noise";
import type { PiecePlace } from "../calibration/piece-at";
import { browningTableOf } from "../clocks/browning-clock";
import type { BrowningTable } from "../clocks/browning-table";
import type { ClockBasis } from "../clocks/clock-basis";
import { coreElasticity } from "../clocks/core-clock";
import type { PieceConstants } from "../clocks/piece-constants";
import { drawConstants, modePiece, pieceOfDraw } from "./draw-pieces";
import { type LoadScatter, loadFactor, loadScatter, safeFrom, wholeLoadSafe } from "./load-safety";
import type { Misfit } from "./misfit-at";
import { momentsOf, type SettledSetting, safeCoreMin } from "./window-setting";

/** Moments of many drawn pieces (min), one place a piece. */
export interface PieceTimes {
  readonly coreMin: Float64Array;
  readonly crispMin: Float64Array;
  readonly opensMin: Float64Array;
  readonly closesMin: Float64Array;
  /** the core's time of the typical piece of each draw: without the scatter of runs, places and pieces */
  readonly typicalCoreMin: Float64Array;
  readonly scatter: LoadScatter;
}

/** What all pieces of a calibration may differ in, drawn once for any setting. */
export interface PieceStock {
  readonly calibration: CrispCalibration;
  readonly constants: readonly (readonly number[])[];
  /** standard normal draws, one place a piece */
  readonly missed: { readonly core: Float64Array; readonly crust: Float64Array; readonly brown: Float64Array };
  readonly run: Float64Array;
  readonly thickness: Float64Array;
  readonly core: Float64Array;
  readonly crisp: Float64Array;
}

/** Stocks that were drawn already: all windows of a calibration draw the same pieces. */
const DRAWN = new WeakMap<CrispCalibration, Map<string, PieceStock>>();

/** Pieces as they will come: what the trials leave uncertain, what the clocks miss, and scatter of runs and pieces. */
export function pieceStock(calibration: CrispCalibration, options: { count: number; seed: number }): PieceStock {
  const stocks = DRAWN.get(calibration) ?? new Map<string, PieceStock>();
  DRAWN.set(calibration, stocks);
  const key = `${options.count} from ${options.seed}`;
  const stock = stocks.get(key) ?? newStock(calibration, options);
  stocks.set(key, stock);
  return stock;
}

function newStock(calibration: CrispCalibration, options: { count: number; seed: number }): PieceStock {
  const random = seededRandom(options.seed + 1);
  const draw = (): Float64Array => Float64Array.from({ length: options.count }, () => random.normal());
  return {
    calibration,
    constants: drawConstants(calibration, options),
    missed: { core: draw(), crust: draw(), brown: draw() },
    run: draw(),
    thickness: draw(),
    core: draw(),
    crisp: draw(),
  };
}

/** A drawn piece, with the browning sums of its air and activation energy. */
export interface DrawnPiece {
  readonly piece: PieceConstants;
  readonly table: BrowningTable;
}

/** The drawn pieces of a stock at one place, without what the clocks miss there. */
export function piecesOfStock(stock: PieceStock, place: PiecePlace): readonly PieceConstants[] {
  return stock.constants.map((z) => pieceOfDraw(stock.calibration, place, z));
}

/** Drawn pieces whose activation energies round to the same half kJ/mol share one table: 0.3 % of a rate at most. */
const TABLES_A_KJMOL = 2;

/** The same with their browning sums, which any thickness in that air can share. */
export function drawnPieces(stock: PieceStock, place: PiecePlace, basis: ClockBasis): readonly DrawnPiece[] {
  const tables = new Map<number, BrowningTable>();
  return piecesOfStock(stock, place).map((piece) => {
    const key = Math.round(TABLES_A_KJMOL * piece.browningKJmol);
    const table = tables.get(key) ?? browningTableOf(basis, { ...piece, browningKJmol: key / TABLES_A_KJMOL });
    tables.set(key, table);
    return { piece, table };
  });
}

/** The typical piece of a draw: its constants, with what the clocks miss at the setting. */
export function typicalPiece(stock: PieceStock, piece: PieceConstants, misfit: Misfit, at: number): PieceConstants {
  const { missed } = stock;
  return {
    ...piece,
    coreFactor: piece.coreFactor * Math.exp(misfit.core * missed.core[at]),
    crustFactor: piece.crustFactor * Math.exp(misfit.crust * missed.crust[at]),
    browningPerS: piece.browningPerS * Math.exp(misfit.brown * missed.brown[at]),
  };
}

/** The moments of every piece of a stock at one setting; `pieces` from `drawnPieces` when a map has them already. */
export function piecesAt(
  stock: PieceStock,
  basis: ClockBasis,
  setting: SettledSetting,
  misfit: Misfit,
  pieces: readonly DrawnPiece[] = drawnPieces(stock, setting, basis),
): PieceTimes {
  const { noise, unevenness } = stock.calibration;
  const count = pieces.length;
  const times = {
    coreMin: new Float64Array(count),
    crispMin: new Float64Array(count),
    opensMin: new Float64Array(count),
    closesMin: new Float64Array(count),
    typicalCoreMin: new Float64Array(count),
  };
  const runs = Math.hypot(noise.run, noise.session);
  const uneven = Math.hypot(unevenness, SLAB_SPREAD);
  for (let at = 0; at < count; at++) {
    const typical = typicalPiece(stock, pieces[at].piece, misfit, at);
    times.typicalCoreMin[at] = safeCoreMin(basis, typical, setting.thicknessMm, setting);
    const piece = { ...typical, coefficientWm2K: typical.coefficientWm2K * Math.exp(runs * stock.run[at]) };
    const thicknessMm = setting.thicknessMm * Math.max(0.3, 1 + uneven * stock.thickness[at]);
    const moments = momentsOf(basis, piece, thicknessMm, setting, pieces[at].table);
    times.coreMin[at] = moments.coreMin * Math.exp(PLACE_CORE_SPREAD * stock.core[at]);
    times.crispMin[at] = moments.crispMin * Math.exp(noise.crispTime * stock.crisp[at]);
    times.opensMin[at] = Math.max(times.coreMin[at], times.crispMin[at]);
    times.closesMin[at] = Math.min(moments.brownMin, moments.dryMin);
  }
  return { ...times, scatter: scatterAt(stock.calibration, basis, setting) };
}

/** The scatter of core times at a setting, the run's through the surface's share at the most probable constants. */
export function scatterAt(calibration: CrispCalibration, basis: ClockBasis, setting: SettledSetting): LoadScatter {
  const { noise, unevenness, n: trials } = calibration;
  const elasticity = coreElasticity(basis, modePiece(calibration, setting), setting.thicknessMm);
  return loadScatter({ noise, unevenness, pieces: setting.piecesPerLoad, elasticity, trials });
}

/** Chance of success at every time, and what each part of it does. */
export interface SuccessOverTime {
  readonly kind: "success over time";
  readonly timesMin: readonly number[];
  /** a piece is safe, crisp and not overdone [-] */
  readonly success: readonly number[];
  /** a piece is safe [-] */
  readonly safe: readonly number[];
  /** every piece of a load is safe [-] */
  readonly safeLoads: readonly number[];
  readonly crisp: readonly number[];
  readonly overdone: readonly number[];
  /** from here on all pieces of 99 of 100 loads are safe, with 98 % confidence (min) */
  readonly safeFromMin: number;
  /** number of pieces drawn */
  readonly draws: number;
}

/** Chances at the given times from drawn pieces. */
export function successOverTime(pieces: PieceTimes, timesMin: readonly number[]): SuccessOverTime {
  const count = pieces.coreMin.length;
  const share = (values: Float64Array): ((timeMin: number) => number) => {
    const sorted = values.slice().sort();
    return (timeMin) => countBelow(sorted, timeMin) / count;
  };
  const open = (_: number, at: number): boolean => pieces.opensMin[at] <= pieces.closesMin[at];
  const opened = share(pieces.opensMin.filter(open));
  const closed = share(pieces.closesMin.filter(open));
  const safe = share(pieces.coreMin);
  const crisp = share(pieces.crispMin);
  const overdone = share(pieces.closesMin);
  return Object.freeze({
    kind: "success over time",
    timesMin,
    success: timesMin.map((time) => Math.max(0, opened(time) - closed(time))),
    safe: timesMin.map(safe),
    safeLoads: safeLoadsAt(pieces, timesMin),
    crisp: timesMin.map(crisp),
    overdone: timesMin.map(overdone),
    safeFromMin: safeFromMin(pieces),
    draws: count,
  });
}

/** The drawn typical cores are counted in so many parts of equal chance. */
const SAFE_PARTS = 120;

/** Chance that every piece of a load is safe, at each time: over what is uncertain, from a table over ln(t/typical). */
function safeLoadsAt(pieces: PieceTimes, timesMin: readonly number[]): number[] {
  const { typicalCoreMin, scatter } = pieces;
  const [first, last, nodes] = [-0.6, 1, 81];
  const table = Float64Array.from({ length: nodes }, (_, at) =>
    wholeLoadSafe(scatter, first + ((last - first) * at) / (nodes - 1)),
  );
  const at = (x: number): number => {
    const place = ((x - first) / (last - first)) * (nodes - 1);
    if (place <= 0) return 0;
    if (place >= nodes - 1) return table[nodes - 1];
    const low = Math.floor(place);
    return table[low] + (place - low) * (table[low + 1] - table[low]);
  };
  const sorted = typicalCoreMin.slice().sort();
  const parts = Math.min(SAFE_PARTS, sorted.length);
  const logs = Float64Array.from({ length: parts }, (_, part) =>
    Math.log(sorted[Math.floor(((part + 0.5) / parts) * sorted.length)]),
  );
  return timesMin.map((time) => {
    if (time <= 0) return 0;
    const log = Math.log(time);
    let sum = 0;
    for (const own of logs) sum += at(log - own);
    return sum / logs.length;
  });
}

/** Time from which all pieces of 99 of 100 loads are safe, with 98 % confidence (min): see `safeFrom`; `factor` from `loadFactor`. */
export function safeFromMin(pieces: PieceTimes, factor: number = loadFactor(pieces.scatter)): number {
  return safeFrom(pieces.typicalCoreMin, factor, pieces.scatter.doubt);
}

function countBelow(sorted: Float64Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle] <= value) low = middle + 1;
    else high = middle;
  }
  return low;
}
