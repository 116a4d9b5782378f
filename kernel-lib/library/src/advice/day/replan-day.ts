import { fail, within } from "../../check/check";
import type { TimeRange } from "../../heat/freezing/runs-over-doubt";
import type { ScheduleTask } from "../../plan/schedule/schedule-problem";
import { parseClock } from "../../units/typed/parse-clock";
import { type DayPlan, dayPlan } from "./batch-day";
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
 * freezer or with less of something. What can no longer be kept stands in `breaches`: a slab that is past its time to be cut, a
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
  const { plan, now, freezerSlower = 1, fewer = {}, tries = USUAL_TRIES } = options;
  const nowMin = Math.ceil(
    typeof now === "string" ? parseClock(now, `${where}: now`) : within(now, 0, 4320, `${where}: now`, "min"),
  );
  within(freezerSlower, 0.2, 10, `${where}: freezerSlower`, "");
  const known = plan.problem.resources.map(({ id }) => id);
  for (const [id, count] of Object.entries(fewer)) {
    if (!known.includes(id)) fail(`${where}: fewer`, `must be of ${known.join(", ")}`, id);
    if (!(Number.isInteger(count) && count >= 0)) fail(`${where}: fewer ${id}`, "must be a whole number from 0", count);
  }
  const stepOf = new Map(plan.steps.map((step) => [step.id, step]));
  const factorOf = ({ kind, endMin }: DayStep): number =>
    FREEZING.includes(kind) && endMin > nowMin ? freezerSlower : 1;
  const tasks = plan.problem.tasks.map((task): ScheduleTask => {
    const step = stepOf.get(task.id) as DayStep;
    const duration = Math.ceil(task.duration * factorOf(step));
    return step.startMin < nowMin
      ? { ...task, duration, begun: step.startMin }
      : { ...task, duration, notBefore: Math.max(nowMin, task.notBefore ?? 0) };
  });
  const resources = plan.problem.resources.map((one) => ({
    ...one,
    // a place counts as as many as may stand on it
    capacity: Math.max(0, one.capacity - (fewer[one.id] ?? 0) * (one.id === "freezer" ? plan.stacked : 1)),
  }));
  const steps = plan.steps.map((step) => ({
    ...step,
    wait: step.wait === null ? null : longer(step.wait, factorOf(step)),
  }));
  const problem = { ...plan.problem, tasks, resources };
  const schedule = placedDay({ ...problem, tries, first: plan.steps.map(({ id }) => id) });
  return dayPlan({
    day: { problem, steps, curves: plan.curves },
    schedule,
    notes: plan.notes,
    stacked: plan.stacked,
    places: plan.places,
    units: plan.units,
  });
}

function longer({ timeMin, earliestMin, latestMin }: TimeRange, by: number): TimeRange {
  return { timeMin: timeMin * by, earliestMin: earliestMin * by, latestMin: latestMin * by };
}
