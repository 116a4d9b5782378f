import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import type { TimeRange } from "../../heat/freezing/runs-over-doubt";
import { checkSchedule } from "../../plan/schedule/check-schedule";
import { type FreeSpan, freeSpans } from "../../plan/schedule/free-spans";
import type { ScheduleProblem } from "../../plan/schedule/schedule-problem";
import { scheduleSlack } from "../../plan/schedule/schedule-slack";
import { type Schedule, scheduleTasks } from "../../plan/schedule/schedule-tasks";
import { COOLING_LIMITS } from "../../safety/cold/cooling-check";
import type { Kitchen } from "../../trials/kitchen";
import { panOf, variantOf } from "../../trials/kitchen-lookup";
import { lengthText } from "../../units/length-text";
import { temperatureText } from "../../units/temperature-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { DayBatch } from "./batch-times";
import type { DayFreezer } from "./day-freezer";
import { type DayLimits, dayLimits } from "./day-limits";
import type { DayPlaces, SettledPlaces } from "./day-places";
import type { BatchCurves, DayProblem, PlannedStep } from "./day-problem";
import type { DayStep } from "./day-step";
import { kitchenPlaces } from "./kitchen-places";
import { freezerOf, searchDay } from "./search-day";

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
  /** pans above each other on one place of the freezer at most; 1: none. A place then counts as so many of `freezer` */
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

const COOLING_RULE = "FDA Food Code 3-501.14). Local food codes and licensed practice come first.";
const cautionsIn = (units: KitchenUnits): readonly string[] => [
  "Times are calculated. Cut when the slab is firm, pack when the core is frozen, and probe every load: a plan is no thermometer.",
  units === "us"
    ? `Cooked food goes from 135 to 70 °F (${COOLING_LIMITS.startC} to ${COOLING_LIMITS.firstC} °C) within 2 h and to 41 °F (${COOLING_LIMITS.coldC} °C) within 6 h in all (${COOLING_RULE}`
    : `Cooked food goes from ${COOLING_LIMITS.startC} to ${COOLING_LIMITS.firstC} °C (135 to 70 °F) within 2 h and to ${COOLING_LIMITS.coldC} °C (41 °F) within 6 h in all (${COOLING_RULE}`,
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
  const { wouldWarmToC, times, ...found } = searchDay({ kitchen, batches, places, tries, seed });
  const stacked = times.filter(({ isStacked }) => isStacked).map(({ variant }) => variant.name);
  const notes = [
    ...(wouldWarmToC === null
      ? []
      : [
          `Not everything goes into the freezer as soon as it could, so that it keeps up: else what lies there would get up to ${temperatureText(wouldWarmToC, kitchen.units)} warm.`,
        ]),
    ...(stacked.length === 0
      ? []
      : [
          `Pans and trays of ${[...new Set(stacked)].join(", ")} stand above each other in the freezer, up to ${places.stackUpTo} on a place with ${lengthText([places.gapMm], kitchen.units)} between, and freeze more slowly for it.`,
        ]),
    ...(places.standIns === null ? [] : [places.standIns]),
    ...new Set(times.flatMap((one) => one.notes)),
    "Waits are calculated from the mix, and off by as much as the air in your freezer is: note when a slab was firm enough, and hold it against them.",
    "A mix that waits for a pan, and a batter that waits for the oven, wait in the fridge.",
  ];
  return dayPlan({ ...found, notes, places, units: kitchen.units });
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
    cautions: cautionsIn(units),
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
