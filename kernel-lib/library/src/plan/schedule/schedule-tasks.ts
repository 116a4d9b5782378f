import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { type SeededRandom, seededRandom } from "../../statistics/random/seeded-random";
import { type CompiledProblem, compileProblem } from "./compiled-problem";
import { lateOrder } from "./late-order";
import { type PlacedTasks, type PlacingOptions, placeTasks } from "./place-tasks";
import { scheduleBound } from "./schedule-bound";
import type { ScheduleProblem } from "./schedule-problem";
import { sortedNumbers } from "./sorted-numbers";

/** A problem, and how long to search. */
export interface ScheduleOptions extends ScheduleProblem {
  /** orders of the tasks that are tried at most; 2000 unless given */
  readonly tries?: number;
  /** 1 unless given; the same seed gives the same schedule everywhere */
  readonly seed?: number;
  /** an order to try first, such as that of an earlier schedule: ids of tasks */
  readonly first?: readonly string[];
}

/** When one task runs. */
export interface ScheduledTask {
  readonly id: string;
  readonly start: number;
  readonly end: number;
}

/** When all tasks run. */
export interface Schedule {
  readonly kind: "schedule";
  /** by start */
  readonly tasks: readonly ScheduledTask[];
  /** end of the last task */
  readonly length: number;
  /** no schedule can be shorter */
  readonly bound: number;
  /** whether the length is at its bound, and so proven shortest */
  readonly proven: boolean;
  /** longest waits that are overrun since what came before had begun */
  readonly late: readonly { readonly before: string; readonly after: string; readonly by: number }[];
  /** orders that were tried */
  readonly tried: number;
}

/** Orders kept at a time, and how many may bring nothing shorter before they are given up for others. */
const POPULATION = 40;
const STALE = 500;

interface Kept {
  readonly order: Int32Array;
  readonly placed: PlacedTasks;
  readonly sum: number;
}

/**
 * A short schedule of tasks that share resources (the resource-constrained project scheduling problem), with longest waits
 * and with resources that stay held between tasks.
 *
 * Searches over orders of the tasks: a population of them, begun with priority rules. Of two, one gives what it does in a
 * stretch of time, the other the sequence of the rest (after S. Hartmann 1998; V. Valls, F. Ballestín, S. Quintanilla 2008),
 * shuffled a little; each is placed by `placeTasks`, and pushed late and early again (`lateOrder`). Where nothing shorter
 * comes up the population begins anew. Ends early where the length meets `scheduleBound`. `checkSchedule` holds the answer
 * against the problem and shares nothing with this search.
 *
 * @returns starts and ends, length, bound; throws where no order was found that keeps all waits
 *
 * @example
 * const tasks = [{ id: "a", duration: 3, uses: { hands: 1 } }, { id: "b", duration: 2, uses: { hands: 1 } }, { id: "wait", duration: 4 }];
 * const day = scheduleTasks({ tasks, resources: [{ id: "hands", capacity: 1 }], links: [{ before: "b", after: "wait" }] });
 * day.length; // → 6
 * day.proven; // → true
 */
export function scheduleTasks(options: ScheduleOptions): Schedule {
  const where = "scheduleTasks";
  const { tries = 2000, seed = 1, first } = options;
  if (!(Number.isInteger(tries) && tries >= 1 && tries <= 1e6))
    fail(`${where}: tries`, "must be a whole number from 1 to 1000000", tries);
  const problem = compileProblem(options, where);
  const { duration, ids, simple } = problem;
  const bound = scheduleBound(problem);
  const random = seededRandom(seed);
  let kept: Kept[] = [];
  let best: Kept | undefined;
  let tried = 0;
  let improved = 0;
  const shortest = (): boolean => best !== undefined && best.placed.length <= bound;
  const keep = (order: ArrayLike<number>, how: PlacingOptions): PlacedTasks | null => {
    tried++;
    const placed = placeTasks(problem, order, how);
    if (placed === null) return null;
    const one = { order: byStart(placed), placed, sum: placed.starts.reduce((sum, start) => sum + start, 0) };
    if (kept.length === 0 || one.placed.length < kept[0].placed.length) improved = tried;
    if (best === undefined || better(one, best)) best = one;
    const worse = kept.findIndex((other) => better(one, other));
    if (!kept.some((other) => same(other.placed.starts, placed.starts)))
      kept.splice(worse < 0 ? kept.length : worse, 0, one);
    if (kept.length > POPULATION) kept.pop();
    return placed;
  };
  const improve = (order: ArrayLike<number>): void => {
    // what must follow soon goes first in every other order: it fits more often, and is not always shortest
    const how = { urgentFirst: tried % 4 < 2, delayed: simple ? null : delayOf(best, problem, random) };
    const placed = keep(order, how);
    if (placed !== null && !shortest() && tried < tries) keep(lateOrder(problem, placed), { ...how, delayed: null });
  };

  if (first !== undefined) improve(ordered(first, ids, where));
  const behind = longestBehind(problem);
  improve(ranked(behind));
  let fresh = tried + 2 * POPULATION;
  while (tried < tries && !shortest()) {
    if (kept.length < 2 || tried < fresh)
      improve(ranked(behind.map((value) => value * random.uniform() ** 0.5 + random.uniform())));
    else if (tried - improved > STALE) {
      kept = [];
      fresh = tried + 2 * POPULATION;
    } else improve(child(kept, random));
  }
  const found: Kept =
    best ??
    fail(`${where}: tasks`, `must fit into ${problem.horizon} in one of ${tried} orders that were tried`, ids.length);
  const tasks = Array.from(found.order, (task) => ({
    id: ids[task],
    start: found.placed.starts[task],
    end: found.placed.starts[task] + duration[task],
  }));
  const { length, starts } = found.placed;
  return freezeDeep({
    kind: "schedule" as const,
    tasks,
    length,
    bound,
    proven: length <= bound,
    late: problem.before.flatMap((links, task) =>
      links.flatMap((link) => {
        const by = starts[task] - (starts[link.task] + duration[link.task] + link.most);
        return by > 0 ? [{ before: ids[link.task], after: ids[task], by }] : [];
      }),
    ),
    tried,
  });
}

function better(one: Kept, other: Kept): boolean {
  return one.placed.length < other.placed.length || (one.placed.length === other.placed.length && one.sum < other.sum);
}

function same(one: Int32Array, other: Int32Array): boolean {
  for (let at = 0; at < one.length; at++) if (one[at] !== other[at]) return false;
  return true;
}

function byStart({ starts }: PlacedTasks): Int32Array {
  return sortedNumbers(starts.length, (task) => starts[task]);
}

/** Time that follows the start of each task at least: the longest chain from it on. */
function longestBehind({ after, duration, order }: CompiledProblem): Float64Array {
  const behind = new Float64Array(duration.length);
  for (let at = order.length - 1; at >= 0; at--) {
    const task = order[at];
    for (const link of after[task]) behind[task] = Math.max(behind[task], link.least + behind[link.task]);
    behind[task] += duration[task];
  }
  return behind;
}

function ranked(priority: Float64Array): Int32Array {
  return Int32Array.from({ length: priority.length }, (_, at) => at).sort((a, b) => priority[b] - priority[a] || a - b);
}

/** In one order of three some task is kept waiting a little beyond where it lies in the best schedule so far. */
function delayOf(
  best: Kept | undefined,
  { duration }: CompiledProblem,
  random: SeededRandom,
): PlacingOptions["delayed"] {
  if (best === undefined || random.uniform() > 1 / 3) return null;
  const task = random.integer(duration.length);
  const by = 1 + random.integer(1 + duration[random.integer(duration.length)]);
  return { task, notBefore: best.placed.starts[task] + by };
}

/** What one does in a stretch of time, the rest in another's sequence, a few neighbours changed and one task moved. */
function child(kept: readonly Kept[], random: SeededRandom): Int32Array {
  const pick = (): Kept => kept[Math.min(random.integer(kept.length), random.integer(kept.length))];
  const [{ order: own, placed }, { order: other }] = [pick(), pick()];
  const from = random.uniform() * placed.length;
  const until = from + (0.25 + 0.5 * random.uniform()) * placed.length;
  const part = (task: number): number => (placed.starts[task] < from ? 0 : placed.starts[task] < until ? 1 : 2);
  const order = Int32Array.from([
    ...other.filter((task) => part(task) === 0),
    ...own.filter((task) => part(task) === 1),
    ...other.filter((task) => part(task) === 2),
  ]);
  const count = order.length;
  for (let at = 1; at < count; at++)
    if (random.uniform() < 0.06) [order[at - 1], order[at]] = [order[at], order[at - 1]];
  if (random.uniform() < 0.5) {
    const [away, to] = [random.integer(count), random.integer(count)];
    const moved = order[away];
    if (away < to) order.copyWithin(away, away + 1, to + 1);
    else order.copyWithin(to + 1, to, away);
    order[to] = moved;
  }
  return order;
}

function ordered(first: readonly string[], ids: readonly string[], where: string): Int32Array {
  const place = new Map(first.map((id, at) => [id, at]));
  if (place.size !== ids.length || ids.some((id) => !place.has(id)))
    fail(`${where}: first`, "must name every task once", first.length);
  return Int32Array.from({ length: ids.length }, (_, at) => at).sort(
    (a, b) => (place.get(ids[a]) as number) - (place.get(ids[b]) as number),
  );
}
