import { fail, positive } from "../check/check";
import type { CurveFit } from "./fit-curve";
import { fitCurveFor } from "./fit-curve";
import { freezeDeep } from "./freeze-deep";
import { SLAB_POWER_MODEL, SLAB_TIME_EQUATIONS, SLAB_TIME_MODEL, type SlabTimeForm } from "./slab-time-model";

/** Trials of one recipe and setting: how thick, how long. */
export interface SlabTimeOptions {
  /** thickness of each trial's slab, mm */
  readonly thicknessMm: readonly number[];
  /** time of each trial, min */
  readonly timeMin: readonly number[];
  /** how much each trial counts [-], as 1/variance up to a common factor; all 1 unless given */
  readonly weights?: readonly number[];
  /** which curve; "full" unless given */
  readonly form?: SlabTimeForm;
}

/**
 * A fitted slab time. Parameters: `c0` (min), `a` (min/mm), `b` (min/mm²), with `c0` or `b` fixed at 0 in the
 * restricted forms; for the power law `a` (min at 1 mm) and `p` [-].
 */
export interface SlabTimeFit extends CurveFit<string> {
  readonly form: SlabTimeForm;
}

/**
 * Fits how a slab's time grows with its thickness, t = c0 + aL + bL² or a restriction of it, by least squares with
 * c0, a, b ≥ 0. a comes from the surface, b from conduction inside, c0 from a wanted crust (see `compareSlabTimeForms`).
 *
 * @returns parameters with standard errors and 95 % intervals, residual sd (min), range of thickness, notices
 * @example
 * const trials = { thicknessMm: [6, 6, 9, 9, 12, 12, 16, 16], timeMin: [8.9, 9.3, 11.6, 11.2, 14.3, 14.7, 19.2, 18.7] };
 * const fit = fitSlabTime({ ...trials, form: "linear" });
 * fit.parameters.a.estimate; // → 0.994292
 * fit.parameters.a.standardError; // → 0.040076
 *
 * The trials of the example are invented.
 */
export function fitSlabTime(options: SlabTimeOptions): SlabTimeFit {
  const { thicknessMm, timeMin, weights, form = "full" } = options;
  const where = "fitSlabTime";
  if (!(form in SLAB_TIME_EQUATIONS))
    fail(`${where}: form`, `must be one of ${Object.keys(SLAB_TIME_EQUATIONS).join(", ")}`, form);
  if (thicknessMm.length !== timeMin.length) {
    fail(`${where}: thicknessMm and timeMin`, "must be equally long, one entry a trial", [
      thicknessMm.length,
      timeMin.length,
    ]);
  }
  thicknessMm.forEach((value, i) => {
    positive(value, `${where}: thicknessMm[${i}]`, "mm");
    positive(timeMin[i], `${where}: timeMin[${i}]`, "min");
  });
  const needed = form === "full" ? 3 : 2;
  const thicknesses = new Set(thicknessMm).size;
  if (thicknesses < needed) {
    const advice =
      thicknesses < 2
        ? "log trials at a second thickness"
        : 'log trials at a third thickness or take form "linear" or "noConstant"';
    fail(
      `${where}: thicknessMm`,
      `must hold at least ${needed} different thicknesses for ${SLAB_TIME_EQUATIONS[form]}: ${advice}`,
      [...new Set(thicknessMm)],
    );
  }
  if (thicknessMm.length <= needed) {
    fail(
      `${where}: trials`,
      `must number more than the ${needed} parameters of ${SLAB_TIME_EQUATIONS[form]}, so that their doubt can be told: log more trials`,
      thicknessMm.length,
    );
  }
  const data = { x: thicknessMm, y: timeMin, weights };
  if (form === "powerLaw") {
    return freezeDeep({ ...fitCurveFor(where, SLAB_POWER_MODEL, data), form });
  }
  const fixed = form === "noConstant" ? { c0: 0 } : form === "linear" ? { b: 0 } : {};
  const fit = fitCurveFor(where, SLAB_TIME_MODEL, data, { fixed });
  return freezeDeep({ ...fit, equation: SLAB_TIME_EQUATIONS[form], form });
}
