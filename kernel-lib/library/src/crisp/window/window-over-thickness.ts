import { fail } from "../../check/check";
import { nearestRank } from "../../statistics/nearest-rank";
import type { CrispCalibration } from "../calibration/calibrate-crisp";
import { modePiece } from "./draw-pieces";
import { misfitAt } from "./misfit-at";
import { drawnPieces, pieceStock, typicalPiece } from "./success-over-time";
import type { Moment } from "./window-at";
import { basisOf, momentsOf, type SettledSetting, settle, type WindowSetting } from "./window-setting";

/** What `windowOverThickness` works from. */
export interface WindowOverThicknessOptions extends Omit<WindowSetting, "thicknessMm"> {
  readonly calibration: CrispCalibration;
  /** rising (mm) */
  readonly thicknessesMm: readonly number[];
  /** draws for the intervals; default 300 */
  readonly draws?: number;
  /** default 1 */
  readonly seed?: number;
}

/** Opening, closing and core time over thickness, with their intervals. */
export interface WindowOverThickness {
  readonly kind: "window over thickness";
  readonly setting: SettledSetting;
  readonly thicknessesMm: readonly number[];
  readonly opens: readonly Moment[];
  readonly closes: readonly Moment[];
  readonly core: readonly Moment[];
}

/**
 * The crisp window at one setting over many thicknesses; the same draws serve all of them, so curves are smooth.
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const calibration = calibrateCrisp({ food, observations: [], applianceIds: ["basket"] });
 * const over = windowOverThickness({ calibration, applianceId: "basket", setpointC: 200, thicknessesMm: [6, 9, 12] });
 * over.opens[1].min; // → 14.7
 */
export function windowOverThickness(options: WindowOverThicknessOptions): WindowOverThickness {
  const { calibration, thicknessesMm, draws = 300, seed = 1, ...rest } = options;
  if (thicknessesMm.length === 0) fail("windowOverThickness: thicknessesMm", "must not be empty", thicknessesMm);
  const setting = settle({ ...rest, thicknessMm: thicknessesMm[0] }, "windowOverThickness");
  const basis = basisOf(calibration, setting);
  const own = modePiece(calibration, setting);
  const stock = pieceStock(calibration, { count: draws, seed });
  const pieces = drawnPieces(stock, setting, basis);
  const points = thicknessesMm.map((thicknessMm) => {
    const at = momentsOf(basis, own, thicknessMm, setting);
    const misfit = misfitAt(calibration, { ...setting, thicknessMm }, basis.coreError);
    const drawn = pieces.map(({ piece, table }, place) =>
      momentsOf(basis, typicalPiece(stock, piece, misfit, place), thicknessMm, setting, table),
    );
    const moment = (of: (moments: typeof at) => number): Moment => {
      const sorted = Float64Array.from(drawn, of).sort();
      return { min: of(at), interval95: [nearestRank(sorted, 0.025), nearestRank(sorted, 0.975)] };
    };
    return {
      opens: moment(({ coreMin, crispMin }) => Math.max(coreMin, crispMin)),
      closes: moment(({ brownMin, dryMin }) => Math.min(brownMin, dryMin)),
      core: moment(({ coreMin }) => coreMin),
    };
  });
  return Object.freeze({
    kind: "window over thickness",
    setting,
    thicknessesMm,
    opens: points.map((point) => point.opens),
    closes: points.map((point) => point.closes),
    core: points.map((point) => point.core),
  });
}
