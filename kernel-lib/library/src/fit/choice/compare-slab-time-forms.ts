import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { fitSlabTime, type SlabTimeFit, type SlabTimeOptions } from "../curve/fit-slab-time";
import { SLAB_TIME_EQUATIONS, SLAB_TIME_FORMS, type SlabTimeForm } from "../models/slab-time-model";
import { compareFits, type FitComparison } from "./compare-fits";

/** The forms of the slab time side by side. */
export interface SlabTimeComparison extends FitComparison {
  /** the form with the lowest AICc */
  readonly best: SlabTimeForm;
  /** by form; a form that these trials cannot carry is missing, and a note says why */
  readonly fits: { readonly [F in SlabTimeForm]?: SlabTimeFit };
  /** what these trials tell of the curve's shape, for somebody who knows no AICc */
  readonly plain: string;
}

/**
 * Fits every form of the slab time and compares them by AICc (Hurvich & Tsai 1989), with one sentence on which terms
 * these trials support. A term counts as supported when the best form with it has an AICc lower by more than 2 than the best
 * without it, weakly when by less. A term that rests at its bound 0 is not in the curve and not counted.
 *
 * @example
 * const trials = { thicknessMm: [6, 6, 9, 9, 12, 12, 16, 16], timeMin: [8.9, 9.3, 11.6, 11.2, 14.3, 14.7, 19.2, 18.7] };
 * compareSlabTimeForms(trials).best; // → "linear"
 */
export function compareSlabTimeForms(options: Omit<SlabTimeOptions, "form">): SlabTimeComparison {
  const fits: { [F in SlabTimeForm]?: SlabTimeFit } = {};
  const notes: string[] = [];
  for (const form of SLAB_TIME_FORMS) {
    try {
      fits[form] = fitSlabTime({ ...options, form });
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      notes.push(error.message);
    }
  }
  const fitted = SLAB_TIME_FORMS.filter((form) => fits[form] !== undefined);
  if (fitted.length === 0)
    fail("compareSlabTimeForms: trials", `must carry at least one form (${notes[0]})`, options.timeMin.length);
  const comparison = compareFits(Object.fromEntries(fitted.map((form) => [form, fits[form] as SlabTimeFit])));
  const best = comparison.best as SlabTimeForm;
  return freezeDeep({
    ...comparison,
    best,
    fits,
    notes: [...notes, ...comparison.notes],
    reading: readingOf(fits, best, options.timeMin.length),
    plain: plainOf(fits, options.timeMin.length),
  });
}

/** From here a fall of AICc counts. */
const CLEAR = 2;
/** The forms with each term and their restrictions without it. */
const TERMS = { b: ["full", "noConstant"], c0: ["full", "linear"] } as const;
const PLAIN = ["full", "noConstant", "linear", "slopeOnly"] as const;

function readingOf(fits: { readonly [F in SlabTimeForm]?: SlabTimeFit }, best: SlabTimeForm, trials: number): string {
  const opening = `AICc is lowest for ${SLAB_TIME_EQUATIONS[best]}`;
  if (!(fits.full && Number.isFinite(fits.full.aicc)))
    return `${opening}: ${trials} trials are too few to judge the full form.`;
  return `${opening}: the L² term is ${support(fits, "b")} by these ${trials} trials, and the constant c0 is ${support(fits, "c0")}.`;
}

function plainOf(fits: { readonly [F in SlabTimeForm]?: SlabTimeFit }, trials: number): string {
  if (!(fits.full && Number.isFinite(fits.full.aicc)))
    return `${trials} trials are too few to tell whether the time grows in a straight line with thickness or faster.`;
  const bend = fallWith(fits, "b");
  const grows =
    bend > CLEAR
      ? "thick slabs take longer than a straight line says"
      : bend > 0
        ? "perhaps thick slabs take a little longer than a straight line says"
        : "the time grows in a straight line with thickness, as far as these trials tell";
  const start = fallWith(fits, "c0");
  const thin =
    start > CLEAR
      ? "and even a very thin slab takes its time"
      : "and they do not tell whether a very thin slab takes time too";
  return `From ${trials} trials: ${grows}, ${thin}.`;
}

/** The best form that estimates a term against the best without it; one in which it rests at its bound is without it. */
function support(fits: { readonly [F in SlabTimeForm]?: SlabTimeFit }, term: "b" | "c0"): string {
  const fall = fallWith(fits, term);
  if (fall === Number.NEGATIVE_INFINITY) return "not supported (it rests at its bound 0)";
  if (fall > CLEAR) return `supported (AICc falls by ${fall.toFixed(1)} with it)`;
  if (fall > 0) return `weakly supported (AICc falls by ${fall.toFixed(1)} with it)`;
  return `not supported (AICc rises by ${(-fall).toFixed(1)} with it)`;
}

/** By how much AICc falls with a term: above 2 it is supported, below 0 not; −∞ where it rests at its bound in every form. */
function fallWith(fits: { readonly [F in SlabTimeForm]?: SlabTimeFit }, term: "b" | "c0"): number {
  const lowest = { with: Number.POSITIVE_INFINITY, without: Number.POSITIVE_INFINITY };
  for (const form of PLAIN) {
    const fit = fits[form];
    if (!fit?.converged) continue;
    const side =
      (TERMS[term] as readonly string[]).includes(form) && fit.parameters[term].atBound === null ? "with" : "without";
    lowest[side] = Math.min(lowest[side], fit.aicc);
  }
  return lowest.without - lowest.with;
}
