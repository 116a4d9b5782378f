import { fail, within } from "../../check/check";
import { isTooLittle } from "../../check/too-little";
import { freezerCoefficients } from "../../heat/freezing/freezer-coefficients";
import type { TimeRange } from "../../heat/freezing/runs-over-doubt";
import type { ScheduleTask } from "../../plan/schedule/schedule-problem";
import { lengthText } from "../../units/length-text";
import { parseClock } from "../../units/typed/parse-clock";
import { type DayPlan, dayPlan } from "./batch-day";
import type { CoreCurve } from "./batch-times";
import type { BatchCurves } from "./day-problem";
import type { DayStep } from "./day-step";
import { placedDay } from "./placed-day";

/** What changed, and when. */
export interface ReplanDayOptions {
  readonly plan: DayPlan;
  /** time of day: `"11:20"`, or minutes after midnight of the first day */
  readonly now: string | number;
  /** what is in the freezer now or later takes so many times as long; 1 unless given */
  readonly freezerSlower?: number;
  /** how many are gone, by resource as in `plan.problem.resources`: `{ freezer: 1, "pan half-sheet": 1 }` */
  readonly fewer?: Readonly<Record<string, number>>;
  /** orders that are tried; 100 unless given */
  readonly tries?: number;
}

const USUAL_TRIES = 100;
const FREEZING: readonly DayStep["kind"][] = ["freeze", "freeze pieces"];

/**
 * The rest of a batch day planned again: what has begun stays as it was, everything else comes from now on, with a slower
 * freezer or with less of something; pans go above each other where no place is left for all. What can no longer be kept stands in `breaches`: a slab that is past its time to be cut, a
 * load that was to be in the freezer.
 *
 * @example
 * const plan = batchDay({ kitchen: loadKitchen(), batches: [{ variantId: "beet-lentil" }] });
 * const later = replanDay({ plan, now: "9:30", freezerSlower: 1.5 });
 * later.endMin > plan.endMin; // → true
 * later.steps[0].startMin === plan.steps[0].startMin; // → true
 */
export function replanDay(options: ReplanDayOptions): DayPlan {
  const where = "replanDay";
  const { plan, now, freezerSlower = 1, fewer = {} } = options;
  const nowMin = Math.ceil(
    typeof now === "string" ? parseClock(now, `${where}: now`) : within(now, 0, 4320, `${where}: now`, "min"),
  );
  within(freezerSlower, 0.2, 10, `${where}: freezerSlower`, "");
  const known = plan.problem.resources.map(({ id }) => id);
  for (const [id, count] of Object.entries(fewer)) {
    if (!known.includes(id)) fail(`${where}: fewer`, `must be of ${known.join(", ")}`, id);
    if (!(Number.isInteger(count) && count >= 0)) fail(`${where}: fewer ${id}`, "must be a whole number from 0", count);
  }
  const places = { slower: freezerSlower, height: 1 };
  const flat = orNone(() => replanned(options, nowMin, places));
  if (flat !== null) return flat;
  const height = plan.places.stackUpTo;
  // no place is left for all: pans go above each other, where they do not stand so already
  if (plan.stacked === 1 && height > 1)
    return replanned(options, nowMin, { slower: freezerSlower * stackedSlower(plan.places), height });
  return replanned(options, nowMin, places);
}

interface Freezer {
  /** freezing takes so many times as long */
  readonly slower: number;
  /** pans that stand above each other on one place, more than the plan has */
  readonly height: number;
}

/** The rest of a day with another freezer. */
function replanned(
  { plan, fewer = {}, tries = USUAL_TRIES }: ReplanDayOptions,
  nowMin: number,
  { slower, height }: Freezer,
): DayPlan {
  const stepOf = new Map(plan.steps.map((step) => [step.id, step]));
  const factorOf = ({ kind, endMin }: DayStep): number => (FREEZING.includes(kind) && endMin > nowMin ? slower : 1);
  const tasks = plan.problem.tasks.map((task): ScheduleTask => {
    const step = stepOf.get(task.id) as DayStep;
    const duration = Math.ceil(task.duration * factorOf(step));
    return step.startMin < nowMin
      ? { ...task, duration, begun: step.startMin }
      : { ...task, duration, notBefore: Math.max(nowMin, task.notBefore ?? 0) };
  });
  // a place counts as as many as may stand on it
  const stacked = plan.stacked * height;
  const resources = plan.problem.resources.map((one) =>
    one.id === "freezer"
      ? { ...one, capacity: Math.max(0, one.capacity / plan.stacked - (fewer.freezer ?? 0)) * stacked }
      : { ...one, capacity: Math.max(0, one.capacity - (fewer[one.id] ?? 0)) },
  );
  const steps = plan.steps.map((step) => ({
    ...step,
    wait: step.wait === null ? null : longer(step.wait, factorOf(step)),
  }));
  const problem = { ...plan.problem, tasks, resources };
  const schedule = placedDay({ ...problem, tries, first: plan.steps.map(({ id }) => id) });
  return dayPlan({
    day: { problem, steps, curves: plan.curves.map((one) => slowerCurves(one, slower)) },
    schedule,
    notes:
      height === 1
        ? plan.notes
        : [
            `No place is left for all: pans and trays now stand above each other in the freezer, up to ${height} on a place with ${lengthText([plan.places.gapMm], plan.units)} between, and freeze more slowly for it.`,
            ...plan.notes,
          ],
    stacked,
    places: plan.places,
    units: plan.units,
  });
}

/** How many times as long it takes to freeze above each other: by the heat that both faces give away. */
function stackedSlower({ airflow, freezerC, gapMm }: DayPlan["places"]): number {
  const both = (stackGapMm?: number): number => {
    const { coefficientBelowWm2K, coefficientWm2K } = freezerCoefficients({ airC: freezerC, airflow, stackGapMm });
    return coefficientWm2K + coefficientBelowWm2K;
  };
  return Math.max(1, both() / both(gapMm));
}

/** Curves in a freezer that takes so many times as long. */
function slowerCurves({ ambient, cooked, ...one }: BatchCurves, by: number): BatchCurves {
  const slow = (curve: CoreCurve): CoreCurve => ({ ...curve, timeMin: curve.timeMin.map((min) => min * by) });
  return {
    ...one,
    ambient: ambient === null ? null : slow(ambient),
    cooked: cooked === null ? null : { ...cooked, freezer: slow(cooked.freezer) },
  };
}

function orNone(plan: () => DayPlan): DayPlan | null {
  try {
    return plan();
  } catch (error) {
    if (!isTooLittle(error)) throw error;
    return null;
  }
}

function longer({ timeMin, earliestMin, latestMin }: TimeRange, by: number): TimeRange {
  return { timeMin: timeMin * by, earliestMin: earliestMin * by, latestMin: latestMin * by };
}
