import { isTooLittle } from "../../check/too-little";
import type { Schedule } from "../../plan/schedule/schedule-tasks";
import type { Kitchen } from "../../trials/kitchen";
import { type BatchTimes, batchTimes, type DayBatch } from "./batch-times";
import { type DayFreezer, dayFreezer, WARMEST_STORED_C } from "./day-freezer";
import type { SettledPlaces } from "./day-places";
import { type DayProblem, dayProblem } from "./day-problem";
import { placedDay } from "./placed-day";

/** What `searchDay` works from. */
export interface SearchDayOptions {
  readonly kitchen: Kitchen;
  readonly batches: readonly DayBatch[];
  readonly places: SettledPlaces;
  readonly tries: number;
  readonly seed: number;
}

/** A day with its times. */
export interface PlacedDay {
  readonly day: DayProblem;
  readonly schedule: Schedule;
  /** pans above each other on one place at most; 1: none */
  readonly stacked: number;
  readonly times: readonly BatchTimes[];
  /** how warm it would get what lies in the freezer had it all gone in as soon as may be (°C); null where it is no warmer */
  readonly wouldWarmToC: number | null;
}

/** More places than any day asks for. */
const ENDLESS = 500;
/** Shares of the freezer's power that what freezes at the same time may ask for, most first: stored food takes up some. */
const POWER_SHARES: readonly number[] = [3, 2, 1.5, 1.25, 1];

/**
 * Searches for a short day: all pans side by side; then, where places are what the day waits for, with batches above each
 * other, one more as long as the day gets shorter, or all of them; then, where what lies in the freezer would get too warm, with the least
 * bound on what freezes at the same time that keeps it cold.
 */
export function searchDay({ kitchen, batches, places, tries, seed }: SearchDayOptions): PlacedDay {
  const glance = Math.ceil(tries / 8);
  const height = places.stackUpTo;
  const placed = (times: readonly BatchTimes[], more: Partial<PlanMore> = {}): PlacedDay => {
    const stacked = times.some(({ isStacked }) => isStacked) ? height : 1;
    const roomy = more.endless ? { ...places, freezerPlaces: ENDLESS } : places;
    const day = dayProblem({ kitchen, places: roomy, batches: times, stacked, powerShare: more.powerShare });
    const first = day.steps.map(({ id }) => id);
    const schedule = placedDay({ ...day.problem, tries: more.tries ?? tries, seed, first });
    return { day, schedule, stacked, times, wouldWarmToC: null };
  };
  const timesAt = (stacked: number): readonly BatchTimes[] =>
    batches.map((batch) => batchTimes({ kitchen, batch, places, stacked }));
  const flat = timesAt(1);
  let best = orNone(() => placed(flat));
  if (
    height > 1 &&
    (best === null ||
      shorter(
        orNone(() => placed(flat, { endless: true, tries: glance })),
        best,
      ))
  )
    best = higher({
      flat,
      high: timesAt(height),
      from: best,
      place: (times) => orNone(() => placed(times, { tries: glance })),
    });
  const found = best ?? placed(flat);
  const storedC = (plan: PlacedDay): number =>
    freezerOf(plan, places, kitchen.units).storedToC ?? Number.NEGATIVE_INFINITY;
  const warmC = storedC(found);
  if (warmC <= WARMEST_STORED_C) return found;
  let coolest = found;
  for (const powerShare of POWER_SHARES) {
    const plan = orNone(() => placed(found.times, { powerShare, tries: glance }));
    if (plan === null) continue;
    if (storedC(plan) < storedC(coolest)) coolest = plan;
    if (storedC(plan) <= WARMEST_STORED_C) break;
  }
  return coolest === found ? found : { ...coolest, wouldWarmToC: warmC };
}

interface PlanMore {
  /** as if the freezer had room for all */
  readonly endless: boolean;
  readonly powerShare: number;
  readonly tries: number;
}

interface HigherOptions {
  readonly flat: readonly BatchTimes[];
  readonly high: readonly BatchTimes[];
  /** the day with all pans side by side; null where there is none */
  readonly from: PlacedDay | null;
  readonly place: (times: readonly BatchTimes[]) => PlacedDay | null;
}

/** The shortest day with some batches above each other: one more at a time while that helps, or all. */
function higher({ flat, high, from, place }: HigherOptions): PlacedDay | null {
  let best = from;
  const all = place(high);
  let above = new Set<number>();
  for (let grew = true; grew && above.size < flat.length; ) {
    grew = false;
    let next = above;
    for (const at of flat.keys()) {
      if (above.has(at)) continue;
      const set = new Set([...above, at]);
      const plan = place(flat.map((one, index) => (set.has(index) ? high[index] : one)));
      if (!shorter(plan, best)) continue;
      best = plan;
      next = set;
      grew = true;
    }
    above = next;
  }
  return shorter(all, best) ? all : best;
}

/** A plan; null where none was found. */
function orNone(plan: () => PlacedDay): PlacedDay | null {
  try {
    return plan();
  } catch (error) {
    if (!isTooLittle(error)) throw error;
    return null;
  }
}

function shorter(plan: PlacedDay | null, than: PlacedDay | null): boolean {
  return plan !== null && (than === null || plan.schedule.length < than.schedule.length);
}

/** What a schedule asks of the freezer. */
export function freezerOf(
  { day, schedule }: Pick<PlacedDay, "day" | "schedule">,
  places: SettledPlaces,
  units: Kitchen["units"],
): DayFreezer {
  const placed = new Map(schedule.tasks.map((task) => [task.id, task]));
  const spans = day.steps.flatMap(({ id, heat }) => {
    const task = placed.get(id);
    return heat === null || task === undefined ? [] : [{ startMin: task.start, endMin: task.end, ...heat }];
  });
  return dayFreezer(spans, places, units);
}
