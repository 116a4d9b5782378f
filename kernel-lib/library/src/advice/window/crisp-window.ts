import { freezeDeep } from "../../check/freeze-deep";
import type { CrispCalibration } from "../../crisp/calibration/calibrate-crisp";
import { LOOSE_LOAD } from "../../crisp/clocks/load-effect";
import { type CrispWindow, windowAt } from "../../crisp/window/window-at";
import type { Kitchen } from "../../trials/kitchen";
import { applianceOf, panOf, variantOf } from "../../trials/kitchen-lookup";
import { type BatchOnPan, batchOnPan } from "../../trials/pieces/batch-on-pan";
import { piecesOnFloor } from "./load-plan";
import { windowCalibration } from "./window-calibration";

/** What `crispWindow` works from; what is left out is as the variant has it. */
export interface CrispWindowOptions {
  readonly kitchen: Kitchen;
  readonly variantId: string;
  /** the pan that the batch is spread on */
  readonly panId?: string;
  /** mass of mix on that pan (g) */
  readonly batchG?: number;
  /** slab thickness, in place of pan and batch (mm) */
  readonly thicknessMm?: number;
  /** pieces cut to another size than the variant's on that pan (mm); default: as the variant cuts them */
  readonly piece?: { readonly lengthMm: number; readonly widthMm: number };
  readonly applianceId?: string;
  readonly setpointC?: number;
  /** share of the floor that the pieces cover, 0 to 1.2; default 0.6, a loose single layer */
  readonly loadFraction?: number;
  /** turned past half-way; default: as most of its trials in that appliance were */
  readonly turned?: boolean;
  /** pieces when they go in (°C) */
  readonly startC?: number;
  /** browning score that is too dark, 0 to 9; default 7, our judgement */
  readonly tooBrownScore?: number;
  /** mass lost that is too dry (%); default 25, our judgement */
  readonly tooDryPercent?: number;
  /** longest reheat accepted (min) */
  readonly longestMin?: number;
  /** from `windowCalibration`, to save doing it again */
  readonly calibration?: CrispCalibration;
  /** pieces drawn for the chances; default 2000 */
  readonly draws?: number;
  /** default 1 */
  readonly seed?: number;
}

/** A crisp window with what it is the window of. */
export interface KitchenWindow extends CrispWindow {
  readonly variantId: string;
  readonly variantName: string;
  /** null when a thickness was given in their place */
  readonly panId: string | null;
  readonly batchG: number | null;
  readonly batch: BatchOnPan | null;
  readonly calibration: CrispCalibration;
}

/**
 * The crisp window of a variant on a pan, in an appliance, at a setpoint: when it opens and closes, the time to print
 * and how often that will do, from the kitchen's own trials (`windowCalibration`).
 *
 * The piece is the one that the variant's cut gives on that pan (`batchOnPan`): it heats, dries and browns from its edges
 * too. A thickness in place of a pan is cut as on the variant's own.
 *
 * @returns a `CrispWindow` (see `windowAt`) with variant, pan and batch; its `limit` is the variant's: that of the strictest
 * raw class in it, with source and caution
 *
 * @example
 * const window = crispWindow({ kitchen: loadKitchen(), variantId: "turkey-sage" });
 * window.limit.limitC; // → 74
 * window.open; // → true
 */
export function crispWindow(options: CrispWindowOptions): KitchenWindow {
  const { kitchen, draws, seed, piece } = options;
  const variant = variantOf(kitchen, options.variantId);
  const given = options.thicknessMm;
  const pan = panOf(kitchen, options.panId ?? variant.panId);
  const batchG = options.batchG ?? variant.batchG;
  const batch = batchOnPan({ kitchen, variant, pan, batchG });
  const sidesMm = piece === undefined ? batch.sidesMm : ([piece.lengthMm, piece.widthMm] as const);
  const appliance = applianceOf(kitchen, options.applianceId ?? variant.applianceId);
  const { applianceId } = appliance;
  const loadFraction = options.loadFraction ?? LOOSE_LOAD;
  const calibration = options.calibration ?? windowCalibration({ kitchen, variantId: variant.variantId });
  const window = windowAt({
    thicknessMm: given ?? batch.slab.thicknessMm,
    sidesMm,
    applianceId,
    setpointC: options.setpointC ?? variant.setpointC,
    loadFraction,
    piecesPerLoad: Math.max(1, piecesOnFloor(appliance, loadFraction, sidesMm)),
    turned: options.turned ?? usuallyTurned(kitchen, variant.variantId, applianceId),
    startC: options.startC ?? variant.startC,
    limit: variant.limit,
    tooBrownScore: options.tooBrownScore,
    tooDryPercent: options.tooDryPercent,
    longestMin: options.longestMin ?? variant.longestMin,
    units: kitchen.units,
    calibration,
    draws,
    seed,
  });
  return freezeDeep({
    ...window,
    variantId: variant.variantId,
    variantName: variant.name,
    panId: given === undefined ? pan.id : null,
    batchG: given === undefined ? batchG : null,
    batch: given === undefined ? batch : null,
    calibration,
  });
}

/** Whether more than half of a variant's trials in an appliance were turned. */
function usuallyTurned(kitchen: Kitchen, variantId: string, applianceId: string): boolean {
  const trials = kitchen.trials.filter((trial) => trial.variantId === variantId && trial.applianceId === applianceId);
  return 2 * trials.filter((trial) => trial.flipMin !== null).length > trials.length;
}
