import { fail, notNegative, positive } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { valuesOf } from "../doubt/delta-method";
import type { CurveModel } from "../models/curve-model";
import { SLAB_POWER_MODEL, SLAB_TIME_EQUATIONS, SLAB_TIME_MODEL, type SlabTimeForm } from "../models/slab-time-model";
import type { CurveFit } from "./fit-curve";
import { fitCurveFor } from "./fit-curve";
import { fitOneSided, type StandIn } from "./fit-one-sided";

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
  /** trials whose time was seen from one side only; they count for what they rule out; none unless given */
  readonly oneSided?: readonly OneSidedTime[];
  /**
   * which curves the bands allow: those of the form, unless "full" is given, which lets them bend and start anywhere though
   * the trials are too few to fit that
   */
  readonly bandForm?: "full";
}

/** A trial that was not yet so when it ended, or was so at its first check. */
export interface OneSidedTime {
  readonly thicknessMm: number;
  /** last check at which it was not yet so (min); 0 when it was so at the first */
  readonly lowerMin: number;
  /** first check at which it was so (min); `null` when it never was */
  readonly upperMin: number | null;
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
  /** the trials seen from one side only, each with the point that stands for it at the solution (min) */
  readonly oneSided: readonly (OneSidedTime & StandIn)[];
  /** which curves the bands of `predictSlabTime` allow */
  readonly bandForm: SlabTimeForm;
}

/**
 * Fits how a slab's time grows with its thickness, t = c0 + aL + bL² or a restriction of it, by least squares with
 * c0, a, b ≥ 0. a comes from the surface, b from conduction inside, c0 from a wanted crust (see `compareSlabTimeForms`).
 * With "proportional" scatter each trial weighs 1/t̂² at the time that a first, even fit gives it.
 *
 * A trial seen from both sides counts with its time as if it were exact; one in `oneSided`, say taken out before it was crisp,
 * by the chance of that under normal scatter (`n`, residuals and degrees of freedom are of the former alone).
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
  const oneSided = options.oneSided ?? [];
  oneSided.forEach((trial, i) => {
    checkOneSided(trial, `${where}: oneSided[${i}]`);
  });
  const model: CurveModel = form === "powerLaw" ? SLAB_POWER_MODEL : SLAB_TIME_MODEL;
  const fitWith = (given: readonly number[] | undefined, sideWeights: readonly number[]): SlabTimeFit => {
    const data = { x: thicknessMm, y: timeMin, weights: given };
    const points = oneSided.map(({ thicknessMm: x, lowerMin, upperMin }, i) => ({
      x,
      limit: upperMin ?? lowerMin,
      lies: upperMin === null ? ("above" as const) : ("below" as const),
      weight: sideWeights[i],
    }));
    const fixing = { fixed: FIXED[form] };
    const { fit, standIns } =
      points.length === 0
        ? { fit: fitCurveFor(where, model, data, fixing), standIns: [] }
        : fitOneSided(where, model, data, points, fixing);
    return {
      ...fit,
      equation: SLAB_TIME_EQUATIONS[form],
      form,
      scatter,
      oneSided: oneSided.map((trial, i) => ({ ...trial, ...standIns[i] })),
      bandForm: options.bandForm ?? form,
      notices: oneSided.length === 0 ? fit.notices : [...fit.notices, sidesNotice(oneSided)],
    };
  };
  const even = fitWith(
    weights,
    oneSided.map(() => 1),
  );
  if (scatter === "constant") return freezeDeep(even);
  const sides = oneSided.map(({ thicknessMm: x }) => 1 / model.evaluate(x, valuesOf(even)) ** 2);
  return freezeDeep(
    fitWith(
      even.fitted.map((time, i) => (weights?.[i] ?? 1) / time ** 2),
      sides,
    ),
  );
}

function checkOneSided({ thicknessMm, lowerMin, upperMin }: OneSidedTime, where: string): void {
  positive(thicknessMm, `${where}.thicknessMm`, "mm");
  notNegative(lowerMin, `${where}.lowerMin`, "min");
  if (upperMin !== null) positive(upperMin, `${where}.upperMin`, "min");
  if (lowerMin > 0 === (upperMin !== null)) {
    fail(
      where,
      "must be known from one side: lowerMin > 0 with upperMin null when it never was so, or lowerMin 0 when it was at its first check",
      [lowerMin, upperMin],
    );
  }
}

function sidesNotice(oneSided: readonly OneSidedTime[]): string {
  const never = oneSided.filter(({ upperMin }) => upperMin === null).length;
  const parts = [
    ...(never > 0 ? [`${never} that ended before`] : []),
    ...(never < oneSided.length ? [`${oneSided.length - never} that were so at the first check`] : []),
  ];
  return `Counted for what they rule out: ${parts.join(", ")}.`;
}
