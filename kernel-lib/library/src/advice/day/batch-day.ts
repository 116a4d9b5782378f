import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { isTooLittle } from "../../check/too-little";
import type { TimeRange } from "../../heat/freezing/runs-over-doubt";
import { checkSchedule } from "../../plan/schedule/check-schedule";
import { type FreeSpan, freeSpans } from "../../plan/schedule/free-spans";
import type { ScheduleProblem } from "../../plan/schedule/schedule-problem";
import { scheduleSlack } from "../../plan/schedule/schedule-slack";
import { type Schedule, scheduleTasks } from "../../plan/schedule/schedule-tasks";
import { COOLING_LIMITS } from "../../safety/cold/cooling-check";
import type { Kitchen } from "../../trials/kitchen";
import { panOf, variantOf } from "../../trials/kitchen-lookup";
import { temperatureText } from "../../units/temperature-text";
import type { KitchenUnits } from "../../units/unit-table";
import { type BatchTimes, batchTimes, type DayBatch } from "./batch-times";
import { type DayFreezer, dayFreezer, WARMEST_STORED_C } from "./day-freezer";
import { type DayLimits, dayLimits } from "./day-limits";
import type { DayPlaces, SettledPlaces } from "./day-places";
import { type BatchCurves, type DayProblem, dayProblem, type PlannedStep } from "./day-problem";
import type { DayStep } from "./day-step";
import { kitchenPlaces } from "./kitchen-places";
import { placedDay } from "./placed-day";

/** What `batchDay` works from. */
export interface BatchDayOptions {
  readonly kitchen: Kitchen;
  readonly batches: readonly DayBatch[];
  /** what is left out is as the kitchen's `day.csv` says, and else as in `USUAL_DAY` */
  readonly places?: DayPlaces;
  /** orders of the steps that are tried; 200 unless given */
  readonly tries?: number;
  /** 1 unless given */
  readonly seed?: number;
}

/** What to do when on a batch day. */
export interface DayPlan {
  readonly kind: "day plan";
  /** by start */
  readonly steps: readonly DayStep[];
  /** when no hands are wanted between the first and the last step, the time that they are away anyway apart (minutes after midnight) */
  readonly away: readonly FreeSpan[];
  readonly startMin: number;
  readonly endMin: number;
  /** end when every wait takes as long as the air's doubt allows; null where it does not fit then */
  readonly slowEndMin: number | null;
  /** whether no other order can end sooner */
  readonly proven: boolean;
  /** pans above each other on one place of the freezer */
  readonly stacked: number;
  readonly places: SettledPlaces;
  readonly units: KitchenUnits;
  /** what the day asks of the freezer, and how warm what lies there gets */
  readonly freezer: DayFreezer;
  /** every batch against the limits of cooling and of time out of the cold */
  readonly limits: readonly DayLimits[];
  /** how each batch cools in slow air, for planning again */
  readonly curves: readonly BatchCurves[];
  /** what could not be kept, one sentence each; empty when all is */
  readonly breaches: readonly string[];
  /** stand-ins and where times are from */
  readonly notes: readonly string[];
  /** to be printed with it */
  readonly cautions: readonly string[];
  /** the tasks behind it, for `checkSchedule` and for planning again */
  readonly problem: ScheduleProblem;
}

/** A span without work that is worth leaving for (min); our judgement. */
const WORTH_LEAVING_MIN = 20;
const USUAL_TRIES = 200;

const CAUTIONS: readonly string[] = [
  "Times are calculated. Cut when the slab is firm, pack when the core is frozen, and probe every load: a plan is no thermometer.",
  `Cooked food goes from ${COOLING_LIMITS.startC} to ${COOLING_LIMITS.firstC} °C (135 to 70 °F) within 2 h and to ${COOLING_LIMITS.coldC} °C (41 °F) within 6 h in all (FDA Food Code 3-501.14). Local food codes and licensed practice come first.`,
  "Hot and soft food in the freezer warms what lies there: put it on the far side, and look at the freezer's thermometer.",
];

/**
 * A batch day: which step to begin when, so that all products are packed as soon as may be.
 *
 * The waits are the heat model's (`freezeToCut`, `temperToCut`, `workableTime`, `flashFreeze`) with the doubt of the air;
 * steps share hands, pans, places in the freezer and appliances (`scheduleTasks`); slabs are cut while they cut cleanly,
 * pieces coated while they are workable, and cooked food cooled within the two-stage limit. Every answer is checked by
 * `checkSchedule` before it is given. Pans are stacked only where
 * that ends the day sooner, no higher than it takes; they go in one after the other where all at once would warm what lies in the freezer.
 *
 * @returns steps with their times, slack and doubt, when you may leave, cautions
 *
 * @example
 * const day = batchDay({ kitchen: loadKitchen(), batches: [{ variantId: "beet-lentil" }] });
 * day.steps[0].kind; // → "mix"
 * day.breaches; // → []
 */
export function batchDay(options: BatchDayOptions): DayPlan {
  const where = "batchDay";
  const { kitchen, batches, tries = USUAL_TRIES, seed = 1 } = options;
  if (batches.length < 1 || batches.length > 20) fail(`${where}: batches`, "must be 1 to 20 products", batches.length);
  const pans = batches.map(({ panId, variantId }) => panOf(kitchen, panId ?? variantOf(kitchen, variantId).panId));
  const places = kitchenPlaces({ kitchen, given: options.places, pans, where: `${where}: places` });
  const timesAt = (stacked: number): readonly BatchTimes[] =>
    batches.map((batch) => batchTimes({ kitchen, batch, places, stacked }));
  const planOf = (times: readonly BatchTimes[], stacked: number, more: PlanMore = {}): PlacedPlan => {
    const roomy = more.endless ? { ...places, freezerPlaces: ENDLESS } : places;
    const day = dayProblem({ kitchen, places: roomy, batches: times, stacked, keepsUp: more.keepsUp });
    const first = day.steps.map(({ id }) => id);
    const schedule = placedDay({ ...day.problem, tries: more.tries ?? tries, seed, first });
    return { day, schedule, stacked, times };
  };
  const flat = timesAt(1);
  const glance = Math.ceil(tries / 4);
  let best = orNone(() => planOf(flat, 1));
  // pans above each other freeze more slowly: only where places are what the day waits for
  if (
    places.stackUpTo > 1 &&
    (best === null ||
      shorter(
        orNone(() => planOf(flat, 1, { endless: true, tries: glance })),
        best,
      ))
  ) {
    const high = timesAt(2);
    for (let stacked = 2; stacked <= places.stackUpTo; stacked++) {
      const plan = orNone(() => planOf(high, stacked, { tries: glance }));
      if (shorter(plan, best)) best = plan;
    }
  }
  best ??= planOf(flat, 1);
  const noted: string[] = [];
  const { storedToC } = freezerOf(best, places, kitchen.units);
  if (storedToC !== null && storedToC > WARMEST_STORED_C) {
    const { times, stacked } = best;
    const apart = orNone(() => planOf(times, stacked, { keepsUp: true }));
    const cooler = apart === null ? null : freezerOf(apart, places, kitchen.units).storedToC;
    if (apart !== null && cooler !== null && cooler < storedToC) {
      noted.push(
        `Pans and trays go into the freezer one after the other, so that it keeps up: all at once would warm what lies there to ${temperatureText(storedToC, kitchen.units)}.`,
      );
      best = apart;
    }
  }
  const notes = [
    ...noted,
    ...(places.standIns === null ? [] : [places.standIns]),
    ...new Set(best.times.flatMap((times) => times.notes)),
    "Waits are calculated from the mix, and off by as much as the air in your freezer is: note when a slab was firm enough, and hold it against them.",
    "A mix that waits for a pan, and a batter that waits for the oven, wait in the fridge.",
  ];
  return dayPlan({ ...best, notes, places, units: kitchen.units });
}

/** How a plan differs from the plain one. */
interface PlanMore {
  /** as if the freezer had room for all */
  readonly endless?: boolean;
  readonly keepsUp?: boolean;
  readonly tries?: number;
}

interface PlacedPlan {
  readonly day: DayProblem;
  readonly schedule: Schedule;
  readonly stacked: number;
  readonly times: readonly BatchTimes[];
}

/** More places than any day asks for. */
const ENDLESS = 500;

/** A plan; null where none was found. */
function orNone(plan: () => PlacedPlan): PlacedPlan | null {
  try {
    return plan();
  } catch (error) {
    if (!isTooLittle(error)) throw error;
    return null;
  }
}

function shorter(plan: PlacedPlan | null, than: PlacedPlan | null): boolean {
  return plan !== null && (than === null || plan.schedule.length < than.schedule.length);
}

/** What a schedule asks of the freezer. */
function freezerOf(
  { day, schedule }: Pick<PlacedPlan, "day" | "schedule">,
  places: SettledPlaces,
  units: KitchenUnits,
): DayFreezer {
  const placed = new Map(schedule.tasks.map((task) => [task.id, task]));
  const spans = day.steps.flatMap(({ id, heat }) => {
    const task = placed.get(id);
    return heat === null || task === undefined ? [] : [{ startMin: task.start, endMin: task.end, ...heat }];
  });
  return dayFreezer(spans, places, units);
}

/** What `dayPlan` puts together. */
export interface DayPlanOptions {
  readonly day: DayProblem;
  readonly schedule: Schedule;
  readonly notes: readonly string[];
  readonly stacked: number;
  readonly places: SettledPlaces;
  readonly units: KitchenUnits;
}

/** A schedule put into steps, checked, with slack and with what slow air does to it. */
export function dayPlan({ day, schedule, notes, stacked, places, units }: DayPlanOptions): DayPlan {
  const { problem } = day;
  const stepOf = new Map(day.steps.map((step) => [step.id, step]));
  const slackOf = new Map(scheduleSlack(problem, schedule).map(({ id, slack }) => [id, slack]));
  const steps = schedule.tasks.map(({ id, start, end }): DayStep => {
    const step = stepOf.get(id) as PlannedStep;
    return {
      ...step,
      startMin: start,
      endMin: end,
      slackMin: slackOf.get(id) as number,
      readyMin: step.wait === null ? null : readyMin(step.wait, start, end),
    };
  });
  const busy = problem.tasks.flatMap((task) => {
    const { start, end } = schedule.tasks.find(({ id }) => id === task.id) as { start: number; end: number };
    return [
      ...(task.uses?.hands === undefined ? [] : [{ start, end }]),
      ...(task.parts ?? [])
        .filter(({ resource }) => resource === "hands")
        .map(({ from, until }) => ({ start: start + from, end: start + until })),
    ];
  });
  return freezeDeep({
    kind: "day plan" as const,
    steps,
    away: freeSpans(busy, WORTH_LEAVING_MIN),
    startMin: steps[0].startMin,
    endMin: schedule.length,
    slowEndMin: slowEnd(day, schedule),
    proven: schedule.proven,
    stacked,
    places,
    units,
    freezer: freezerOf({ day, schedule }, places, units),
    limits: dayLimits(steps, day.curves),
    curves: day.curves,
    breaches: checkSchedule(problem, schedule.tasks),
    notes,
    cautions: CAUTIONS,
    problem,
  });
}

/** From when to look and by when it is done, around the planned end. */
function readyMin(
  { timeMin, earliestMin, latestMin }: TimeRange,
  start: number,
  end: number,
): readonly [number, number] {
  const share = timeMin > 0 ? (end - start) / timeMin : 1;
  return [Math.floor(start + share * earliestMin), Math.ceil(start + share * latestMin)];
}

/** End of the day in the same order when every wait takes its longest. */
function slowEnd({ problem, steps }: DayProblem, schedule: Schedule): number | null {
  const waitOf = new Map(steps.map(({ id, wait }) => [id, wait]));
  const tasks = problem.tasks.map((task) => {
    const wait = waitOf.get(task.id);
    return wait === null || wait === undefined ? task : { ...task, duration: Math.max(task.duration, wait.latestMin) };
  });
  const first = schedule.tasks.map(({ id }) => id);
  try {
    return scheduleTasks({ ...problem, tasks, tries: 40, first }).length;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
