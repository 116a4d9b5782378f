import { freezeDeep } from "../../check/freeze-deep";
import { partsOf, type ScheduleProblem } from "./schedule-problem";
import type { Schedule } from "./schedule-tasks";

/** By how much a task may begin later while every other stays where it is. */
export interface TaskSlack {
  readonly id: string;
  readonly slack: number;
}

/**
 * The slack of every task: by how much it may begin later while nothing else moves, no resource is short and no wait too
 * long, and the whole gets no longer. A task that has begun has none.
 *
 * @example
 * const problem = { tasks: [{ id: "a", duration: 3 }, { id: "b", duration: 2 }, { id: "c", duration: 5 }], resources: [], links: [{ before: "a", after: "b" }] };
 * scheduleSlack(problem, scheduleTasks(problem)).map(({ slack }) => slack); // → [0, 0, 0]
 * scheduleSlack({ ...problem, links: [] }, scheduleTasks({ ...problem, links: [] })).map(({ slack }) => slack); // → [2, 3, 0]
 */
export function scheduleSlack(problem: ScheduleProblem, schedule: Schedule): readonly TaskSlack[] {
  const at = new Map(schedule.tasks.map((one) => [one.id, one]));
  const place = (id: string): { readonly start: number; readonly end: number } =>
    at.get(id) as { readonly start: number; readonly end: number };
  const free = new Map(
    problem.resources.map(({ id, capacity, less = [] }) => {
      const row = new Int32Array(schedule.length).fill(capacity);
      for (const span of less) row.fill(span.capacity, span.from, Math.min(span.until, schedule.length));
      return [id, row];
    }),
  );
  const take = (id: string, from: number, until: number, amount: number): void => {
    const row = free.get(id) as Int32Array;
    for (let moment = from; moment < Math.min(until, row.length); moment++) row[moment] -= amount;
  };
  for (const task of problem.tasks)
    for (const { resource, amount, from, until } of partsOf(task))
      take(resource, place(task.id).start + from, place(task.id).start + until, amount);
  for (const { resource, amount = 1, from, until } of problem.holds ?? [])
    take(resource, place(from).start, place(until).start, amount);
  return freezeDeep(
    problem.tasks.map((task) => {
      const { id, begun } = task;
      const { start, end } = place(id);
      const parts = partsOf(task);
      let most = begun === undefined ? schedule.length - end : 0;
      for (const link of problem.links) {
        if (link.before === id) most = Math.min(most, place(link.after).start - (link.least ?? 0) - end);
        if (link.after === id && link.most !== undefined)
          most = Math.min(most, place(link.before).end + link.most - start);
      }
      // its parts move on, and a hold that it ends lasts longer
      const needed = [
        ...parts.map(({ resource, amount, until }) => ({ resource, amount, from: start + until })),
        ...(problem.holds ?? [])
          .filter((hold) => hold.until === id)
          .map(({ resource, amount = 1 }) => ({ resource, amount, from: start })),
      ];
      let slack = 0;
      while (slack < most && needed.every(({ resource, amount, from }) => roomAt(resource, from + slack, amount)))
        slack++;
      return { id, slack: Math.max(0, slack) };

      function roomAt(resource: string, moment: number, amount: number): boolean {
        const now = parts.filter(
          (part) => part.resource === resource && start + part.from <= moment && moment < start + part.until,
        );
        const self = now.reduce((sum, part) => sum + part.amount, 0);
        return (free.get(resource) as Int32Array)[moment] + self >= amount;
      }
    }),
  );
}
