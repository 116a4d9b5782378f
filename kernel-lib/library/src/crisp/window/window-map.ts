import { fail } from "../../check/check";
import type { CrispCalibration } from "../calibration/calibrate-crisp";
import { loadFactor } from "./load-safety";
import { misfitAt } from "./misfit-at";
import {
  drawnPieces,
  type PieceTimes,
  pieceStock,
  piecesAt,
  safeFromMin,
  scatterAt,
  successOverTime,
} from "./success-over-time";
import { basisOf, type SettledSetting, settle, type WindowSetting } from "./window-setting";

/** What the maps work from. */
export interface WindowMapOptions extends Omit<WindowSetting, "thicknessMm"> {
  readonly calibration: CrispCalibration;
  /** rising (mm) */
  readonly thicknessesMm: readonly number[];
  /** pieces drawn for each cell; default 200 */
  readonly draws?: number;
  /** default 1 */
  readonly seed?: number;
  /** called with the share done, 0 to 1 */
  readonly progress?: (done: number) => void;
}

/** Chance of success over thickness and a second axis. */
export interface WindowMap {
  readonly kind: "window map";
  readonly across: "time" | "setpoint";
  readonly thicknessesMm: readonly number[];
  /** times (min) or setpoints (°C) */
  readonly acrossValues: readonly number[];
  /** one row a value of the second axis, one cell a thickness [-]; a cell that is not safe is 0 */
  readonly success: readonly (readonly number[])[];
  /** for a map over setpoints: the best safe time of each cell (min) */
  readonly bestMin: readonly (readonly number[])[] | null;
  readonly setting: SettledSetting;
}

/**
 * Chance of success over thickness × time at one setpoint. A cell before the safe time (`safeFromMin`) is 0: a map is read as advice.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const calibration = calibrateCrisp({ food, observations: [], applianceIds: ["basket"] });
 * const map = windowMapOverTime({ calibration, applianceId: "basket", setpointC: 200, thicknessesMm: [6, 9], timesMin: [1, 12] });
 * map.success[0]; // → [0, 0]
 */
export function windowMapOverTime(options: WindowMapOptions & { readonly timesMin: readonly number[] }): WindowMap {
  const { calibration, thicknessesMm, timesMin, draws = 200, seed = 1, progress, ...rest } = options;
  rising(thicknessesMm, "windowMapOverTime: thicknessesMm");
  rising(timesMin, "windowMapOverTime: timesMin");
  const setting = settle({ ...rest, thicknessMm: thicknessesMm[0] }, "windowMapOverTime");
  const basis = basisOf(calibration, setting);
  const stock = pieceStock(calibration, { count: draws, seed });
  const drawn = drawnPieces(stock, setting, basis);
  const columns = thicknessesMm.map((thicknessMm, at) => {
    const here = { ...setting, thicknessMm };
    const pieces = piecesAt(stock, basis, here, misfitAt(calibration, here, basis.coreError), drawn);
    const { success, safeFromMin: safe } = successOverTime(pieces, timesMin);
    progress?.((at + 1) / thicknessesMm.length);
    return success.map((chance, row) => (timesMin[row] >= safe ? chance : 0));
  });
  return Object.freeze({
    kind: "window map",
    across: "time",
    thicknessesMm,
    acrossValues: timesMin,
    success: timesMin.map((_, row) => columns.map((column) => column[row])),
    bestMin: null,
    setting,
  });
}

/** Best chance of success over thickness × setpoint, each cell at its own best safe time within the accepted one. */
export function windowMapOverSetpoint(
  options: Omit<WindowMapOptions, "setpointC"> & { readonly setpointsC: readonly number[] },
): WindowMap {
  const { calibration, thicknessesMm, setpointsC, draws = 200, seed = 1, progress, ...rest } = options;
  rising(thicknessesMm, "windowMapOverSetpoint: thicknessesMm");
  rising(setpointsC, "windowMapOverSetpoint: setpointsC");
  const setting = settle({ ...rest, thicknessMm: thicknessesMm[0], setpointC: setpointsC[0] }, "windowMapOverSetpoint");
  const stock = pieceStock(calibration, { count: draws, seed });
  const cells = setpointsC.map((setpointC, row) => {
    const here = { ...setting, setpointC };
    const basis = basisOf(calibration, here);
    const drawn = drawnPieces(stock, here, basis);
    // the surface's share falls with thickness: the thinnest slab's serves the row, on the late side for the others
    const factor = loadFactor(scatterAt(calibration, basis, here));
    const line = thicknessesMm.map((thicknessMm) => {
      const cell = { ...here, thicknessMm };
      const pieces = piecesAt(stock, basis, cell, misfitAt(calibration, cell, basis.coreError), drawn);
      return bestOf(pieces, here.longestMin, factor);
    });
    progress?.((row + 1) / setpointsC.length);
    return line;
  });
  return Object.freeze({
    kind: "window map",
    across: "setpoint",
    thicknessesMm,
    acrossValues: setpointsC,
    success: cells.map((line) => line.map((cell) => cell.success)),
    bestMin: cells.map((line) => line.map((cell) => cell.timeMin)),
    setting,
  });
}

/** The best safe time of drawn pieces: chances change only where a piece opens or has closed. */
function bestOf(pieces: PieceTimes, longestMin: number, factor: number): { success: number; timeMin: number } {
  const safe = safeFromMin(pieces, factor);
  const count = pieces.coreMin.length;
  const opens = new Float64Array(count);
  const closes = new Float64Array(count);
  let open = 0;
  for (let at = 0; at < count; at++) {
    if (pieces.opensMin[at] > pieces.closesMin[at] || pieces.closesMin[at] < safe) continue;
    opens[open] = Math.max(safe, pieces.opensMin[at]);
    closes[open++] = pieces.closesMin[at];
  }
  const opened = opens.subarray(0, open).sort();
  const closed = closes.subarray(0, open).sort();
  let best = { success: 0, timeMin: safe };
  let gone = 0;
  for (let at = 0; at < open && opened[at] <= longestMin; at++) {
    while (gone < open && closed[gone] < opened[at]) gone++;
    const success = (at + 1 - gone) / count;
    if (success > best.success) best = { success, timeMin: opened[at] };
  }
  return best;
}

function rising(values: readonly number[], where: string): void {
  if (values.length === 0) fail(where, "must not be empty", values);
  for (let at = 1; at < values.length; at++)
    if (!(values[at] > values[at - 1])) fail(where, "must rise", values.slice(at - 1, at + 1));
}
