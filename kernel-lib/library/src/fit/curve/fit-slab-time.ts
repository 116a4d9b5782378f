import { fail, positive } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { SLAB_POWER_MODEL, SLAB_TIME_EQUATIONS, SLAB_TIME_MODEL, type SlabTimeForm } from "../models/slab-time-model";
import type { CurveFit } from "./fit-curve";
import { fitCurveFor } from "./fit-curve";

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
  /** whether trials scatter by the same minutes, or by the same share of the time; "constant" unless given */
  readonly scatter?: SlabTimeScatter;
}

/** What the restricted forms hold at zero. */
const FIXED: Readonly<Record<SlabTimeForm, { readonly c0?: 0; readonly b?: 0 }>> = {
  full: {},
  noConstant: { c0: 0 },
  linear: { b: 0 },
  slopeOnly: { c0: 0, b: 0 },
  powerLaw: {},
};

/** How trials scatter about the curve: by the same minutes everywhere, or by the same share of the time. */
export type SlabTimeScatter = "constant" | "proportional";

/**
 * A fitted slab time. Parameters: `c0` (min), `a` (min/mm), `b` (min/mm²), with `c0` or `b` fixed at 0 in the
 * restricted forms; for the power law `a` (min at 1 mm) and `p` [-].
 */
export interface SlabTimeFit extends CurveFit<string> {
  readonly form: SlabTimeForm;
  /** with "proportional", `residualSd` is a share of the time [-] */
  readonly scatter: SlabTimeScatter;
}

/**
 * Fits how a slab's time grows with its thickness, t = c0 + aL + bL² or a restriction of it, by least squares with
 * c0, a, b ≥ 0. a comes from the surface, b from conduction inside, c0 from a wanted crust (see `compareSlabTimeForms`).
 * With "proportional" scatter each trial weighs 1/t̂² at the time that a first, even fit gives it.
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
  const { thicknessMm, timeMin, weights, form = "full", scatter = "constant" } = options;
  const where = "fitSlabTime";
  if (!Object.hasOwn(SLAB_TIME_EQUATIONS, form))
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
  const needed = form === "full" ? 3 : form === "slopeOnly" ? 1 : 2;
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
      `must number more than the ${needed} parameter${needed > 1 ? "s" : ""} of ${SLAB_TIME_EQUATIONS[form]}, so that their doubt can be told: log more trials`,
      thicknessMm.length,
    );
  }
  const fitWith = (given: readonly number[] | undefined): SlabTimeFit => {
    const data = { x: thicknessMm, y: timeMin, weights: given };
    if (form === "powerLaw") return { ...fitCurveFor(where, SLAB_POWER_MODEL, data), form, scatter };
    const fixed = FIXED[form];
    return {
      ...fitCurveFor(where, SLAB_TIME_MODEL, data, { fixed }),
      equation: SLAB_TIME_EQUATIONS[form],
      form,
      scatter,
    };
  };
  const even = fitWith(weights);
  if (scatter === "constant") return freezeDeep(even);
  return freezeDeep(fitWith(even.fitted.map((time, i) => (weights?.[i] ?? 1) / time ** 2)));
}
