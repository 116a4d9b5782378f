import type { CrispCalibration } from "../calibration/calibrate-crisp";
import { browningTableOf } from "../clocks/browning-clock";
import type { ClockBasis } from "../clocks/clock-basis";
import type { PieceConstants } from "../clocks/piece-constants";
import { modePiece } from "./draw-pieces";
import { misfitAt } from "./misfit-at";
import { pieceStock, piecesOfStock, typicalPiece } from "./success-over-time";
import { basisOf, momentsOf, type SettledSetting, settle, type WindowSetting } from "./window-setting";

/** The thickest slab that still has a window within the accepted time. */
export interface LargestThickness {
  readonly kind: "largest thickness";
  /** most probable (mm); 0 when not even 1 mm has one */
  readonly thicknessMm: number;
  readonly interval95: readonly [number, number];
  /** what ends it: the accepted time, or the window closing */
  readonly endedBy: "time" | "window";
  readonly longestMin: number;
}

/**
 * The largest thickness that is safe and crisp before it is overdone and within the accepted time, with its interval.
 *
 * @param options a setting without thickness, with `calibration`; `longestMin` is the accepted time (min)
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const calibration = calibrateCrisp({ food, observations: [], applianceIds: ["basket"] });
 * largestThickness({ calibration, applianceId: "basket", setpointC: 200, longestMin: 14 }).thicknessMm; // → 8.30
 */
export function largestThickness(
  options: Omit<WindowSetting, "thicknessMm"> & { readonly calibration: CrispCalibration; readonly seed?: number },
): LargestThickness {
  const { calibration, seed = 1, ...rest } = options;
  const setting = settle({ ...rest, thicknessMm: 10 }, "largestThickness");
  const basis = basisOf(calibration, setting);
  const own = modePiece(calibration, setting);
  const thicknessMm = largest(basis, own, setting);
  const stock = pieceStock(calibration, { count: 400, seed });
  const misfit = misfitAt(calibration, { ...setting, thicknessMm: Math.max(1, thicknessMm) }, basis.coreError);
  const drawn = piecesOfStock(stock, setting)
    .map((piece, at) => largest(basis, typicalPiece(stock, piece, misfit, at), setting))
    .sort((a, b) => a - b);
  const { coreMin, crispMin } = momentsOf(basis, own, Math.max(1, thicknessMm) * 1.01, setting);
  return Object.freeze({
    kind: "largest thickness",
    thicknessMm,
    interval95: [drawn[10], drawn[389]] as const,
    endedBy: Math.max(coreMin, crispMin) > setting.longestMin ? "time" : "window",
    longestMin: setting.longestMin,
  });
}

/** Scans down from 40 mm, as a window can be shut at both ends, and then halves. */
function largest(basis: ClockBasis, piece: PieceConstants, setting: SettledSetting): number {
  const table = browningTableOf(basis, piece);
  const good = (mm: number): boolean => {
    const { coreMin, crispMin, brownMin, dryMin } = momentsOf(basis, piece, mm, setting, table);
    const opens = Math.max(coreMin, crispMin);
    return opens <= Math.min(brownMin, dryMin, setting.longestMin);
  };
  let low = 40;
  while (low >= 1 && !good(low)) low -= 0.5;
  if (low < 1) return 0;
  let high = low + 0.5;
  for (let halving = 0; halving < 12; halving++) {
    const middle = (low + high) / 2;
    if (good(middle)) low = middle;
    else high = middle;
  }
  return low;
}
