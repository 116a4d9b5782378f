import { freezeDeep } from "../check/freeze-deep";
import type { CrispCalibration } from "../crisp/calibration/calibrate-crisp";
import { coreMin } from "../crisp/clocks/slab-clocks";
import { modeSlab } from "../crisp/window/draw-slabs";
import { type CrispWindow, windowAt } from "../crisp/window/window-at";
import { basisOf, type SettledSetting, settle } from "../crisp/window/window-setting";
import { coreTime } from "../heat/solver/core-time";
import { slabThickness } from "../pan/slab-thickness";
import { coreLimit } from "../safety/core-limit";
import type { Kitchen, KitchenVariant } from "../trials/kitchen";
import { applianceOf, panOf, variantOf } from "../trials/kitchen-lookup";
import { piecesOnPan } from "./pieces-on-pan";
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
  /** pieces cut to another size than on the variant's own pan (mm); default: as the variant cuts them */
  readonly piece?: { readonly lengthMm: number; readonly widthMm: number };
  readonly applianceId?: string;
  readonly setpointC?: number;
  /** share of the floor that the pieces cover, 0 to 1.2; default 0.6, a loose single layer */
  readonly loadFraction?: number;
  /** turned past half-way; default false */
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
  readonly calibration: CrispCalibration;
}

/**
 * The crisp window of a variant on a pan, in an appliance, at a setpoint: when it opens and closes, the time to print
 * and how often that will do, from the kitchen's own trials (`windowCalibration`).
 *
 * The core's clock is the later of the short form and the slab solver (`coreTime`) at the most probable constants. A
 * `piece` of another size than the variant's own multiplies it by the ratio of their core times in the piece solver, so
 * that larger pieces than those logged are not taken for as fast; crust and browning of the faces stay as they are.
 *
 * @returns a `CrispWindow` (see `windowAt`) with variant, pan and batch; its `limit` holds the core limit of the
 * variant's food class with source and caution
 *
 * @example
 * const window = crispWindow({ kitchen: loadKitchen(), variantId: "turkey-sage" });
 * window.limit.limitC; // → 74
 * window.open; // → true
 */
export function crispWindow(options: CrispWindowOptions): KitchenWindow {
  const { kitchen, draws, seed } = options;
  const variant = variantOf(kitchen, options.variantId);
  const given = options.thicknessMm;
  const pan = panOf(kitchen, options.panId ?? variant.panId);
  const batchG = options.batchG ?? variant.batchG;
  const { densityKgM3 } = variant;
  const thicknessMm = given ?? slabThickness({ pan, batchG, densityKgM3 }).thicknessMm;
  const appliance = applianceOf(kitchen, options.applianceId ?? variant.applianceId);
  const calibration = options.calibration ?? windowCalibration({ kitchen, variantId: variant.variantId });
  const setting = settle(
    {
      thicknessMm,
      applianceId: appliance.applianceId,
      setpointC: options.setpointC ?? variant.setpointC,
      loadFraction: options.loadFraction ?? 0.6,
      turned: options.turned ?? false,
      startC: options.startC ?? variant.startC,
      limit: coreLimit(variant.formula.foodClass),
      tooBrownScore: options.tooBrownScore ?? 7,
      tooDryPercent: options.tooDryPercent ?? 25,
      longestMin: options.longestMin ?? variant.longestMin,
    },
    "crispWindow",
  );
  const edges =
    options.piece === undefined ? 1 : edgeFactor({ kitchen, variant, calibration, setting, piece: options.piece });
  const coreFactor = edges * solverFactor(calibration, setting);
  const window = windowAt({ ...setting, calibration, draws, seed, coreFactor });
  return freezeDeep({
    ...window,
    variantId: variant.variantId,
    variantName: variant.name,
    panId: given === undefined ? pan.id : null,
    batchG: given === undefined ? batchG : null,
    calibration,
  });
}

/** The solver's core time over the short form's at the most probable constants, never below 1: the later one counts. */
function solverFactor(calibration: CrispCalibration, setting: SettledSetting): number {
  const basis = basisOf(calibration, setting);
  const slab = modeSlab(calibration, setting);
  const ratio = solvedCoreMin(calibration, setting) / coreMin(basis, slab, setting.thicknessMm);
  return Math.min(1.5, Math.max(1, ratio));
}

/** What `edgeFactor` compares. */
interface EdgeFactorOptions {
  readonly kitchen: Kitchen;
  readonly variant: KitchenVariant;
  readonly calibration: CrispCalibration;
  readonly setting: SettledSetting;
  readonly piece: { readonly lengthMm: number; readonly widthMm: number };
}

/** Core time of a piece over that of the variant's own cut at the same thickness, both by the piece solver. */
function edgeFactor({ kitchen, variant, calibration, setting, piece }: EdgeFactorOptions): number {
  const pan = panOf(kitchen, variant.panId);
  const slab = slabThickness({ pan, batchG: variant.batchG, densityKgM3: variant.densityKgM3 });
  const own = piecesOnPan({ kitchen, variant, pan, slab });
  const ownMin = solvedCoreMin(calibration, setting, { lengthMm: own.pieceLengthMm, widthMm: own.pieceWidthMm });
  return solvedCoreMin(calibration, setting, piece) / ownMin;
}

/** Core time by the solver at the most probable constants (min): of a slab, or of a piece with its edges. */
function solvedCoreMin(
  calibration: CrispCalibration,
  setting: SettledSetting,
  piece?: { readonly lengthMm: number; readonly widthMm: number },
): number {
  const slab = modeSlab(calibration, setting);
  const { food } = calibration;
  return coreTime({
    ...piece,
    food: {
      ...food,
      thawedConductivityWmK: food.thawedConductivityWmK * slab.conductivityFactor,
      frozenConductivityWmK: food.frozenConductivityWmK * slab.conductivityFactor,
    },
    thicknessMm: setting.thicknessMm,
    coefficientWm2K: slab.coefficientWm2K,
    airC: basisOf(calibration, setting).airC,
    startC: setting.startC,
    limitC: setting.limit.limitC,
  }).timeMin;
}
