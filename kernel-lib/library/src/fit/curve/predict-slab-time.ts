import { positive } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { requireUsable, valuesOf } from "../doubt/delta-method";
import { intervalFactor } from "../doubt/interval-factor";
import type { Values } from "../fit";
import { SLAB_POWER_MODEL, SLAB_TIME_MODEL } from "../models/slab-time-model";
import type { SlabTimeFit } from "./fit-slab-time";
import { predictCurve } from "./predict-curve";
import { slabTimeBand } from "./slab-time-band";

/** The fitted time at one thickness, with its doubt. */
export interface SlabTimePrediction {
  readonly thicknessMm: number;
  readonly timeMin: number;
  /** of the curve itself, min: half the width of `confidence95` over its Student's t */
  readonly standardErrorMin: number;
  /** 95 % interval for the curve, min: where the mean of many trials would lie */
  readonly confidence95: readonly [number, number];
  /** 95 % interval for one further trial, min */
  readonly prediction95: readonly [number, number];
  /** the thickness lies outside the trials' */
  readonly extrapolated: boolean;
}

/**
 * The fitted time at a thickness, with 95 % intervals for the curve and for one more trial.
 *
 * The interval of the curve is the profile-likelihood one (`slabTimeBand`): the usual one where the trials settle every term,
 * wider on the side to which a term that rests at its bound may leave it, as b > 0 bends the curve up beyond the thicknesses
 * that were tried. The power law's is by the delta method. One more trial adds its scatter on either side.
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
  requireUsable("predictSlabTime", fit);
  const { value, low, high } = curveAt(fit, thicknessMm);
  const factor = intervalFactor(fit);
  const scatter = factor * fit.residualSd * (fit.scatter === "proportional" ? value : 1);
  const [thinnest, thickest] = fit.rangeX as readonly [number, number];
  return freezeDeep({
    thicknessMm,
    timeMin: value,
    standardErrorMin: (high - low) / (2 * factor),
    confidence95: [low, high],
    prediction95: [Math.max(0, value - Math.hypot(value - low, scatter)), value + Math.hypot(high - value, scatter)],
    extrapolated: thicknessMm < thinnest || thicknessMm > thickest,
  });
}

function curveAt(fit: SlabTimeFit, thicknessMm: number): { value: number; low: number; high: number } {
  if (fit.form === "powerLaw") {
    const { value, confidence95 } = predictCurve(
      SLAB_POWER_MODEL,
      { ...fit, model: SLAB_POWER_MODEL.name },
      thicknessMm,
    );
    return { value, low: confidence95[0], high: confidence95[1] };
  }
  const [low, high] = slabTimeBand(fit, thicknessMm);
  return { value: SLAB_TIME_MODEL.evaluate(thicknessMm, valuesOf(fit) as Values<"c0" | "a" | "b">), low, high };
}
