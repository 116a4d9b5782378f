import { fail } from "../../check/check";
import { borrowedPriors } from "../../crisp/calibration/borrowed-priors";
import { type CrispCalibration, calibrateCrisp } from "../../crisp/calibration/calibrate-crisp";
import { USUAL_UNEVENNESS } from "../../crisp/calibration/crisp-noise";
import type { CrispObservation } from "../../crisp/calibration/crisp-observation";
import type { CrispPrior } from "../../crisp/calibration/crisp-priors";
import { type ThermalProperties, thermalProperties } from "../../food/thermal/thermal-properties";
import { hasImpossibleCore } from "../../trials/core-of-trial";
import { distinctTrials } from "../../trials/distinct-trials";
import type { Kitchen, KitchenTrial, KitchenVariant } from "../../trials/kitchen";
import { variantOf } from "../../trials/kitchen-lookup";
import { lossOfTrial } from "../../trials/pieces/loss-of-trial";
import { sidesOfTrial } from "../../trials/pieces/sides-of-trial";
import { thicknessDoubt } from "../../trials/pieces/thickness-doubt";

/** What `windowCalibration` works from. */
export interface WindowCalibrationOptions {
  readonly kitchen: Kitchen;
  readonly variantId: string;
  /** trials to leave out, by name: a doubtful log, or the trial that is to be explained */
  readonly without?: readonly string[];
  /**
   * start what belongs to appliances, load and turn from the kitchen's other variants instead of from the usual ranges;
   * for a variant with few trials; default false
   */
  readonly borrow?: boolean;
}

/** Water of a dry or pre-fried crumb coat (kg/m³): middle of 100 to 350 dry, wetted by its wash (from memory). */
const COATED_WATER_KGM3 = 400;
/**
 * Calibrates heat, crust and browning of one variant from the kitchen's logs: every trial of it, in every appliance.
 *
 * The mix's thermal constants come from its composition; the pieces are those of the log, or else of the variant's cut on
 * that pan. A coated piece starts from 400 kg/m³ of water in its crust, an uncoated one from the mix's own water.
 *
 * @returns the calibration that `crispWindow` and the others use; give it to them to save time
 */
export function windowCalibration(options: WindowCalibrationOptions): CrispCalibration {
  const { kitchen, variantId } = options;
  const variant = variantOf(kitchen, variantId);
  const without = options.without ?? [];
  for (const trialId of without)
    if (!kitchen.trials.some((trial) => trial.trialId === trialId))
      fail("windowCalibration: without", "must name trials of the kitchen", trialId);
  const trials = distinctTrials(
    kitchen.trials.filter((trial) => trial.variantId === variantId && !without.includes(trial.trialId)),
  );
  const coated = isCoated(variant);
  return calibrateCrisp({
    food: thermalOf(variant),
    observations: trials.map((trial) => observationOf(kitchen, trial)),
    applianceIds: kitchen.appliances.map((appliance) => appliance.applianceId),
    coated,
    crustWaterKgM3: coated ? COATED_WATER_KGM3 : undefined,
    unevenness: unevennessOf(trials),
    units: kitchen.units,
    priors: options.borrow === true ? borrowedFor(kitchen, variantId) : undefined,
  });
}

/** Whether the pieces carry a breading or a wash. */
export function isCoated(variant: KitchenVariant): boolean {
  return variant.formula.coating.some((layer) => layer.layer === "breading" || layer.layer === "wash");
}

function borrowedFor(kitchen: Kitchen, variantId: string): readonly CrispPrior[] {
  const others = kitchen.variants.filter(
    (other) => other.variantId !== variantId && kitchen.trials.some((trial) => trial.variantId === other.variantId),
  );
  return borrowedPriors(
    others.map((other) => ({
      name: other.variantId,
      calibration: windowCalibration({ kitchen, variantId: other.variantId }),
    })),
  );
}

/** Thermal constants of a variant's mix, at the density it is spread with. */
export function thermalOf(variant: KitchenVariant): ThermalProperties {
  const thermal = thermalProperties(variant.composition, { airFraction: variant.formula.airFraction });
  return Object.freeze({ ...thermal, densityKgM3: variant.densityKgM3 });
}

/**
 * What one logged trial says to the clocks. A core with a rested one beside it was read at taking out; alone it is the
 * highest within two minutes, as the first logs have it. A core that is hotter than water boils tells nothing.
 */
export function observationOf(kitchen: Kitchen, trial: KitchenTrial): CrispObservation {
  const { thicknessMm } = trial;
  const { restedCoreC, coreC } = hasImpossibleCore(trial) ? { restedCoreC: null, coreC: null } : trial;
  return {
    id: trial.trialId,
    session: trial.session ?? trial.date,
    slab: trial.slab,
    applianceId: trial.applianceId,
    thicknessMm,
    thicknessSeMm: thicknessDoubt(trial) * thicknessMm,
    sidesMm: sidesOfTrial(kitchen, trial),
    setpointC: trial.setpointC,
    loadFraction: trial.loadFraction,
    startC: trial.startC,
    turned: trial.flipMin !== null,
    timeMin: trial.timeMin,
    notCrispMin: trial.notCrispMin,
    crispMin: trial.crispMin,
    looksMin: looksOf(trial),
    coreC: restedCoreC === null ? null : coreC,
    restedCoreC: restedCoreC ?? coreC,
    lossPercent: lossOfTrial(trial),
    crispScores: trial.crispScores,
    brownScores: trial.brownScores,
  };
}

/** When a trial was looked at: as logged; else at its checks, which nobody makes without a look. */
function looksOf({ looksMin, notCrispMin, crispMin, timeMin }: KitchenTrial): readonly number[] {
  if (looksMin.length > 0) return looksMin;
  return [notCrispMin, crispMin].flatMap((check) => (check === null || check === 0 || check >= timeMin ? [] : [check]));
}

/** Pooled coefficient of variation of the thickness within a slab [-]; the usual one where no slab was probed twice. */
function unevennessOf(trials: readonly KitchenTrial[]): number {
  let squares = 0;
  let freedom = 0;
  for (const { thicknessSdMm, thicknessMm, probesMm } of trials) {
    if (thicknessSdMm === null) continue;
    squares += (probesMm.length - 1) * (thicknessSdMm / thicknessMm) ** 2;
    freedom += probesMm.length - 1;
  }
  // the usual unevenness counts as four readings more
  return Math.sqrt((squares + 4 * USUAL_UNEVENNESS ** 2) / (freedom + 4));
}
