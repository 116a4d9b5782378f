import { orTooLittle } from "../../check/or-too-little";
import { LARGEST_CURVE_LOAD } from "../../crisp/clocks/load-effect";
import { fitLinear, type LinearFit } from "../../fit/curve/fit-linear";
import { predictLinear } from "../../fit/curve/predict-linear";
import { predictSlabTime } from "../../fit/curve/predict-slab-time";
import type { Kitchen, KitchenTrial } from "../../trials/kitchen";
import { variantOf } from "../../trials/kitchen-lookup";
import { lossOfTrial } from "../../trials/pieces/loss-of-trial";
import { type VariantCrispTime, variantCrispTime } from "./variant-crisp-time";

/** What `reheatYield` works from. */
export interface ReheatYieldOptions {
  readonly kitchen: Kitchen;
  readonly variantId: string;
  /** from `variantCrispTime`, to save fitting it again */
  readonly crispTime?: VariantCrispTime;
}

/** A variant's reheat yields on its own appliance and setpoint, and what they depend on. */
export interface ReheatYield {
  /** the trials taken out crisp and weighed before and after */
  readonly trials: readonly KitchenTrial[];
  /** yield (%) by `perThickness` (1/mm) and `pastCrispPerThickness` (min/mm) */
  readonly fit: LinearFit;
  readonly crispTime: VariantCrispTime;
}

/** The reheat yield expected at one thickness and time. */
export interface ExpectedYield {
  /** mass after on mass before (%) */
  readonly yieldPercent: number;
  /** standard error of one further trial's yield (% points) */
  readonly standardErrorPercent: number;
  /** 95 % interval for one further trial (%) */
  readonly interval95: readonly [number, number];
}

/**
 * Regresses the reheat yield of a variant on its slab thickness and time, from the weighed trials at its own appliance
 * and setpoint that were taken out crisp:
 *
 * loss = b0 + (b1 + b2·(t − t_crisp(L)))/L
 *
 * At the moment of crispness the dry crust is equally deep on every slab, so the water it gave up is a share that falls
 * as 1/L; past that moment it deepens at a steady pace; b0 is what drips. Thin pieces lose a larger share, long reheats
 * lose more.
 *
 * What the log's weights say by themselves, as `variantCrispTime` for the times: the window's loss, from the clocks and
 * every setting, is what card, macros and `decide` use (`recommended.lossPercent`). For weighed cooks of any kind, without
 * a kitchen or a crisp time, there is `fitLoss`.
 *
 * Throws `TooLittle`, saying what to log, when fewer than four such trials are logged, or all are alike.
 *
 * @example
 * const yields = reheatYield({ kitchen: loadKitchen(), variantId: "beet-lentil" });
 * expectedYield(yields, { thicknessMm: 10, timeMin: 11 }).yieldPercent; // → 92.4
 */
export function reheatYield(options: ReheatYieldOptions): ReheatYield {
  const { kitchen, variantId, crispTime = variantCrispTime(options) } = options;
  const { name, applianceId, setpointC } = variantOf(kitchen, variantId);
  const trials = kitchen.trials.filter(
    (trial) =>
      trial.variantId === variantId &&
      trial.applianceId === applianceId &&
      Math.abs(trial.setpointC - setpointC) <= 1 &&
      (trial.loadFraction ?? 0) <= LARGEST_CURVE_LOAD &&
      trial.crispMin !== null &&
      lossOfTrial(trial) !== null,
  );
  const cases = trials.map((trial) => covariates(crispTime, trial.thicknessMm, trial.timeMin));
  const fit = orTooLittle(
    "reheatYield",
    () => askForWeights(name, trials.length),
    () =>
      fitLinear({
        covariates: {
          perThickness: cases.map((one) => one.perThickness),
          pastCrispPerThickness: cases.map((one) => one.pastCrispPerThickness),
        },
        y: trials.map((trial) => 100 - (lossOfTrial(trial) as number)),
      }),
  );
  return Object.freeze({ trials, fit, crispTime });
}

/** The yield to expect by `reheatYield` at a thickness and a reheat time; between 0 and 100 %. */
export function expectedYield(
  yields: ReheatYield,
  { thicknessMm, timeMin }: { readonly thicknessMm: number; readonly timeMin: number },
): ExpectedYield {
  const at = predictLinear(yields.fit, covariates(yields.crispTime, thicknessMm, timeMin));
  const [low, high] = at.prediction95;
  return Object.freeze({
    yieldPercent: Math.min(100, Math.max(0, at.value)),
    standardErrorPercent: Math.hypot(at.standardError, yields.fit.residualSd),
    interval95: Object.freeze([Math.max(0, low), Math.min(100, high)] as const),
  });
}

/** Weighed and crisp trials that the regression takes: one more than its coefficients. */
const LEAST_WEIGHED = 4;

function askForWeights(name: string, weighed: number): string {
  const had = `${weighed === 0 ? "No crisp trial" : weighed === 1 ? "One crisp trial" : `${weighed} crisp trials`} of ${name} at the card's setting`;
  const more = Math.max(1, LEAST_WEIGHED - weighed);
  const verb = weighed > 1 ? "were" : "was";
  return `${had} ${verb} weighed before and after, too few to tell how the yield follows thickness and time: log ${more} more, of another thickness, taken out when crisp or a little later.`;
}

function covariates(
  crispTime: VariantCrispTime,
  thicknessMm: number,
  timeMin: number,
): { perThickness: number; pastCrispPerThickness: number } {
  const crispMin = predictSlabTime(crispTime.fit, thicknessMm).timeMin;
  return { perThickness: 1 / thicknessMm, pastCrispPerThickness: (timeMin - crispMin) / thicknessMm };
}
