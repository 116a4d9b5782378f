import { largestOf } from "../../statistics/extremes";
import { checkProblem, partsOf, type ScheduleProblem } from "./schedule-problem";

/** A task's predecessor by its number. */
export interface CompiledLink {
  readonly task: number;
  readonly least: number;
  /** Infinity where there is no limit */
  readonly most: number;
}

/** What a task takes of a resource by its number, for a part of its time. */
export interface CompiledUse {
  readonly resource: number;
  readonly amount: number;
  readonly from: number;
  readonly until: number;
}

/** A hold by numbers: of its resource from the start of one task until the start of another. */
export interface CompiledHold {
  readonly resource: number;
  readonly amount: number;
  readonly from: number;
  readonly until: number;
}

/** A checked problem in numbers, as the search works on it. */
export interface CompiledProblem {
  readonly ids: readonly string[];
  readonly duration: Int32Array;
  readonly notBefore: Int32Array;
  /** when a task has begun; −1 for one that has not */
  readonly begun: Int32Array;
  readonly uses: readonly (readonly CompiledUse[])[];
  readonly before: readonly (readonly CompiledLink[])[];
  readonly after: readonly (readonly CompiledLink[])[];
  readonly holds: readonly CompiledHold[];
  readonly opens: readonly (readonly CompiledHold[])[];
  readonly closes: readonly (readonly CompiledHold[])[];
  /** what there is of each resource at each time */
  readonly capacity: readonly Int32Array[];
  readonly horizon: number;
  /** no longest wait, no hold, no part of a task: each as early as possible, in some order, is then shortest */
  readonly simple: boolean;
  /** an order that the links allow */
  readonly order: readonly number[];
}

/** Checks a problem and puts it into numbers. */
export function compileProblem(problem: ScheduleProblem, where: string): CompiledProblem {
  const sorted = checkProblem(problem, where);
  const { tasks, resources, links } = problem;
  const numberOf = new Map(tasks.map(({ id }, at) => [id, at]));
  const resourceOf = new Map(resources.map(({ id }, at) => [id, at]));
  const lists = <T>(): T[][] => tasks.map(() => []);
  const before = lists<CompiledLink>();
  const after = lists<CompiledLink>();
  for (const { before: one, after: other, least = 0, most = Number.POSITIVE_INFINITY } of links) {
    const [from, to] = [numberOf.get(one) as number, numberOf.get(other) as number];
    before[to].push({ task: from, least, most });
    after[from].push({ task: to, least, most });
  }
  const holds = (problem.holds ?? []).map(({ resource, amount = 1, from, until }) => ({
    resource: resourceOf.get(resource) as number,
    amount,
    from: numberOf.get(from) as number,
    until: numberOf.get(until) as number,
  }));
  const opens = lists<CompiledHold>();
  const closes = lists<CompiledHold>();
  for (const hold of holds) {
    opens[hold.from].push(hold);
    closes[hold.until].push(hold);
  }
  const horizon = problem.horizon ?? longest(problem);
  const capacity = resources.map(({ capacity: most, less = [] }) => {
    const free = new Int32Array(horizon).fill(most);
    for (const span of less) free.fill(span.capacity, Math.min(span.from, horizon), Math.min(span.until, horizon));
    return free;
  });
  return {
    ids: tasks.map(({ id }) => id),
    duration: Int32Array.from(tasks, ({ duration }) => duration),
    notBefore: Int32Array.from(tasks, ({ notBefore = 0 }) => notBefore),
    begun: Int32Array.from(tasks, ({ begun = -1 }) => begun),
    uses: tasks.map((task) =>
      partsOf(task).map((part) => ({ ...part, resource: resourceOf.get(part.resource) as number })),
    ),
    before,
    after,
    holds,
    opens,
    closes,
    capacity,
    horizon,
    simple:
      holds.length === 0 &&
      links.every(({ most }) => most === undefined) &&
      tasks.every(({ parts = [] }) => parts.length === 0),
    order: sorted.map((id) => numberOf.get(id) as number),
  };
}

/** A time in which all tasks fit one after the other, whatever they wait for and wherever resources get less. */
function longest({ tasks, resources, links }: ScheduleProblem): number {
  const ends = resources.flatMap(({ less = [] }) => less.map(({ until }) => until));
  const begin = largestOf([0, ...ends, ...tasks.map(({ notBefore = 0, begun = 0 }) => Math.max(notBefore, begun))]);
  const busy = tasks.reduce((sum, { duration }) => sum + duration, 0);
  return begin + busy + links.reduce((sum, { least = 0 }) => sum + least, 0) + 1;
}
