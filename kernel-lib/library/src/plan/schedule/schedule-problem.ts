import { fail } from "../../check/check";

/** What a task takes for a part of its time. */
export interface SchedulePart {
  readonly resource: string;
  /** 1 unless given */
  readonly amount?: number;
  /** counted from the task's start */
  readonly from: number;
  readonly until: number;
}

/** Something to be done without a pause. */
export interface ScheduleTask {
  readonly id: string;
  /** whole number from 0, in the one unit of time of the problem */
  readonly duration: number;
  /** how much of each resource it takes while it runs: `{ hands: 1 }` */
  readonly uses?: Readonly<Record<string, number>>;
  /** what it takes for a part of its time only, counted from its start: hands while an oven is filled */
  readonly parts?: readonly SchedulePart[];
  /** not before this time; 0 unless given */
  readonly notBefore?: number;
  /** it has begun then, and nothing moves it */
  readonly begun?: number;
}

/** What tasks share. */
export interface ScheduleResource {
  readonly id: string;
  /** whole number from 0 */
  readonly capacity: number;
  /** spans in which there is less of it, such as a break; what is given last counts */
  readonly less?: readonly { readonly from: number; readonly until: number; readonly capacity: number }[];
}

/** One task waits for another: `after` begins at least `least` and at most `most` after the end of `before`. */
export interface ScheduleLink {
  readonly before: string;
  readonly after: string;
  /** 0 unless given */
  readonly least?: number;
  /** no limit unless given */
  readonly most?: number;
}

/** A resource that stays taken between two tasks: from the start of one until the start of another that follows it. */
export interface ScheduleHold {
  readonly resource: string;
  /** 1 unless given */
  readonly amount?: number;
  readonly from: string;
  readonly until: string;
}

/** Tasks, what they share, and what waits for what. All times are whole numbers in one unit. */
export interface ScheduleProblem {
  readonly tasks: readonly ScheduleTask[];
  readonly resources: readonly ScheduleResource[];
  readonly links: readonly ScheduleLink[];
  readonly holds?: readonly ScheduleHold[];
  /** nothing may last beyond it; longest time in which the tasks fit one after the other unless given */
  readonly horizon?: number;
}

/** The longest horizon: our judgement, ten weeks of minutes. */
const LONGEST = 100_000;
/** The most tasks of a problem; our judgement. */
const MOST_TASKS = 2000;

const whole = (value: number, where: string, least = 0): number => {
  if (!(Number.isInteger(value) && value >= least && value <= LONGEST))
    fail(where, `must be a whole number from ${least} to ${LONGEST}`, value);
  return value;
};

/** Refuses a problem whose parts do not fit together; returns its tasks in an order that the links allow. */
export function checkProblem(problem: ScheduleProblem, where: string): readonly string[] {
  const { tasks, resources, links, holds = [] } = problem;
  if (tasks.length < 1 || tasks.length > MOST_TASKS)
    fail(`${where}: tasks`, `must be 1 to ${MOST_TASKS} tasks`, tasks.length);
  const capacity = new Map<string, number>();
  for (const resource of resources) {
    if (capacity.has(resource.id)) fail(`${where}: resource ${resource.id}`, "must stand once", resource.id);
    capacity.set(resource.id, whole(resource.capacity, `${where}: capacity of ${resource.id}`));
    for (const { from, until, capacity: left } of resource.less ?? []) {
      whole(from, `${where}: less of ${resource.id}: from`);
      whole(until, `${where}: less of ${resource.id}: until`, from);
      if (!(whole(left, `${where}: less of ${resource.id}: capacity`) <= resource.capacity))
        fail(`${where}: less of ${resource.id}`, `must be at most ${resource.capacity}`, left);
    }
  }
  const known = new Map<string, ScheduleTask>();
  for (const task of tasks) {
    if (known.has(task.id)) fail(`${where}: task ${task.id}`, "must stand once", task.id);
    known.set(task.id, task);
    whole(task.duration, `${where}: duration of ${task.id}`);
    whole(task.notBefore ?? 0, `${where}: notBefore of ${task.id}`);
    whole(task.begun ?? 0, `${where}: begun of ${task.id}`);
    for (const { resource, amount, from, until } of partsOf(task)) {
      const id = resource;
      whole(amount, `${where}: what ${task.id} uses of ${id}`);
      whole(from, `${where}: part of ${task.id}: from`);
      if (whole(until, `${where}: part of ${task.id}: until`, from) > task.duration)
        fail(`${where}: part of ${task.id}`, `must end with it, after ${task.duration}`, until);
      const most = capacity.get(id);
      if (most === undefined)
        fail(`${where}: what ${task.id} uses`, `must be one of ${[...capacity.keys()].join(", ")}`, id);
      if (amount > most && task.begun === undefined)
        fail(`${where}: what ${task.id} uses of ${id}`, `must be at most ${most}`, amount);
    }
  }
  const followers = new Map<string, string[]>(tasks.map(({ id }) => [id, []]));
  const waits = new Map<string, number>(tasks.map(({ id }) => [id, 0]));
  for (const { before, after, least = 0, most } of links) {
    for (const id of [before, after]) if (!known.has(id)) fail(`${where}: a link`, "must name tasks", id);
    whole(least, `${where}: least between ${before} and ${after}`);
    if (most !== undefined && !(whole(most, `${where}: most between ${before} and ${after}`) >= least))
      fail(`${where}: most between ${before} and ${after}`, `must be at least ${least}`, most);
    if (known.get(after)?.begun !== undefined && known.get(before)?.begun === undefined)
      fail(`${where}: ${before}`, `must have begun, as ${after} has`, before);
    (followers.get(before) as string[]).push(after);
    waits.set(after, (waits.get(after) as number) + 1);
  }
  const order = tasks.flatMap(({ id }) => (waits.get(id) === 0 ? [id] : []));
  for (let at = 0; at < order.length; at++)
    for (const after of followers.get(order[at]) as string[]) {
      const left = (waits.get(after) as number) - 1;
      waits.set(after, left);
      if (left === 0) order.push(after);
    }
  if (order.length < tasks.length) {
    const circle = tasks.filter(({ id }) => !order.includes(id)).map(({ id }) => id);
    fail(`${where}: links`, "must not go in a circle", circle.join(", "));
  }
  for (const hold of holds) checkHold(hold, { known, capacity, followers, resources, where });
  return order;
}

/** All that a task takes, by part of its time. */
export function partsOf({ duration, uses = {}, parts = [] }: ScheduleTask): readonly Required<SchedulePart>[] {
  return [
    ...Object.entries(uses).map(([resource, amount]) => ({ resource, amount, from: 0, until: duration })),
    ...parts.map((part) => ({ ...part, amount: part.amount ?? 1 })),
  ].filter(({ amount }) => amount !== 0);
}

interface HoldContext {
  readonly known: ReadonlyMap<string, ScheduleTask>;
  readonly capacity: ReadonlyMap<string, number>;
  readonly followers: ReadonlyMap<string, readonly string[]>;
  readonly resources: readonly ScheduleResource[];
  readonly where: string;
}

function checkHold(
  { resource, amount = 1, from, until }: ScheduleHold,
  { known, capacity, followers, resources, where }: HoldContext,
): void {
  const most = capacity.get(resource);
  if (most === undefined) fail(`${where}: a hold`, `must name one of ${[...capacity.keys()].join(", ")}`, resource);
  for (const id of [from, until]) if (!known.has(id)) fail(`${where}: a hold of ${resource}`, "must name tasks", id);
  if (whole(amount, `${where}: hold of ${resource}`) > most && known.get(from)?.begun === undefined)
    fail(`${where}: hold of ${resource} by ${from}`, `must be at most ${most}`, amount);
  if ((resources.find(({ id }) => id === resource)?.less ?? []).length > 0)
    fail(`${where}: hold of ${resource}`, "must be of a resource that never gets less", resource);
  if (partsOf(known.get(from) as ScheduleTask).some((part) => part.resource === resource))
    fail(`${where}: ${from}`, `must not use ${resource} itself, which it holds from its start on`, resource);
  const seen = new Set([from]);
  for (const id of seen) for (const next of followers.get(id) ?? []) seen.add(next);
  if (from === until || !seen.has(until))
    fail(`${where}: hold of ${resource} from ${from}`, "must end with a task that links lead to", until);
}
