import { positive } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { intervalFactor } from "../doubt/interval-factor";
import { SLAB_POWER_MODEL, SLAB_TIME_MODEL } from "../models/slab-time-model";
import type { SlabTimeFit } from "./fit-slab-time";
import { type Prediction, predictCurve } from "./predict-curve";

/** The fitted time at one thickness, with its doubt. */
export interface SlabTimePrediction {
  readonly thicknessMm: number;
  readonly timeMin: number;
  /** of the curve itself, min */
  readonly standardErrorMin: number;
  /** 95 % interval for the curve, min: where the mean of many trials would lie */
  readonly confidence95: readonly [number, number];
  /** 95 % interval for one further trial, min */
  readonly prediction95: readonly [number, number];
  /** the thickness lies outside the trials' */
  readonly extrapolated: boolean;
}

/**
 * The fitted time at a thickness, with 95 % intervals for the curve and for one more trial (see `predictCurve`).
 *
 * @param thicknessMm mm
 * @example
 * const trials = { thicknessMm: [6, 6, 9, 9, 12, 12, 16, 16], timeMin: [8.9, 9.3, 11.6, 11.2, 14.3, 14.7, 19.2, 18.7] };
 * const at = predictSlabTime(fitSlabTime({ ...trials, form: "linear" }), 10);
 * at.timeMin; // → 12.74178
 * at.extrapolated; // → false
 */
export function predictSlabTime(fit: SlabTimeFit, thicknessMm: number): SlabTimePrediction {
  positive(thicknessMm, "predictSlabTime: thicknessMm", "mm");
  const at: Prediction =
    fit.form === "powerLaw"
      ? predictCurve(SLAB_POWER_MODEL, fit, thicknessMm)
      : predictCurve(SLAB_TIME_MODEL, fit, thicknessMm);
  const scatterMin = fit.residualSd * (fit.scatter === "proportional" ? at.value : 1);
  const wide = intervalFactor(fit) * Math.hypot(at.standardError, scatterMin);
  return freezeDeep({
    thicknessMm,
    timeMin: at.value,
    standardErrorMin: at.standardError,
    confidence95: at.confidence95,
    prediction95: [at.value - wide, at.value + wide],
    extrapolated: at.extrapolated,
  });
}
