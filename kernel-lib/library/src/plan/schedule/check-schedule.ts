import type { ScheduleProblem } from "./schedule-problem";
import type { ScheduledTask } from "./schedule-tasks";

/**
 * Everything in which a schedule breaks its problem, one sentence each; an empty list when it keeps all. Reads the problem
 * as it was stated and shares no code with the search.
 *
 * @example
 * const problem = { tasks: [{ id: "a", duration: 3, uses: { oven: 1 } }, { id: "b", duration: 2, uses: { oven: 1 } }], resources: [{ id: "oven", capacity: 1 }], links: [] };
 * checkSchedule(problem, [{ id: "a", start: 0, end: 3 }, { id: "b", start: 2, end: 4 }]).length; // → 1
 * checkSchedule(problem, [{ id: "a", start: 0, end: 3 }, { id: "b", start: 3, end: 5 }]).length; // → 0
 */
export function checkSchedule(problem: ScheduleProblem, scheduled: readonly ScheduledTask[]): readonly string[] {
  const breaches: string[] = [];
  const at = new Map<string, ScheduledTask>();
  for (const one of scheduled) {
    if (at.has(one.id)) breaches.push(`${one.id} stands twice`);
    at.set(one.id, one);
  }
  for (const id of at.keys())
    if (!problem.tasks.some((task) => task.id === id)) breaches.push(`${id} is no task of the problem`);
  const whole = problem.tasks.filter(({ id }) => {
    const there = at.has(id);
    if (!there) breaches.push(`${id} is not in the schedule`);
    return there;
  });
  const startOf = (id: string): number => at.get(id)?.start ?? Number.NaN;
  const endOf = (id: string): number => at.get(id)?.end ?? Number.NaN;
  for (const { id, duration, notBefore = 0, begun } of whole) {
    if (endOf(id) - startOf(id) !== duration)
      breaches.push(`${id} lasts ${endOf(id) - startOf(id)} instead of ${duration}`);
    if (begun !== undefined && startOf(id) !== begun)
      breaches.push(`${id} begins at ${startOf(id)}, and began ${begun}`);
    if (begun === undefined && startOf(id) < notBefore)
      breaches.push(`${id} begins at ${startOf(id)}, before ${notBefore}`);
    if (problem.horizon !== undefined && endOf(id) > problem.horizon)
      breaches.push(`${id} ends at ${endOf(id)}, after ${problem.horizon}`);
  }
  for (const { before, after, least = 0, most } of problem.links) {
    const wait = startOf(after) - endOf(before);
    if (wait < least) breaches.push(`${after} begins ${wait} after ${before}, ${least} at least`);
    if (most !== undefined && wait > most) breaches.push(`${after} begins ${wait} after ${before}, ${most} at most`);
  }
  for (const { id, capacity, less = [] } of problem.resources) {
    const taken = [
      ...whole.flatMap((task) => {
        const all = [{ from: startOf(task.id), until: endOf(task.id), amount: task.uses?.[id] ?? 0, by: task }];
        for (const { resource, amount = 1, from, until } of task.parts ?? [])
          if (resource === id)
            all.push({ from: startOf(task.id) + from, until: startOf(task.id) + until, amount, by: task });
        return all.filter(({ amount }) => amount > 0);
      }),
      ...(problem.holds ?? [])
        .filter((hold) => hold.resource === id)
        .map((hold) => ({
          from: startOf(hold.from),
          until: startOf(hold.until),
          amount: hold.amount ?? 1,
          by: problem.tasks.find((task) => task.id === hold.from),
        })),
    ].filter(({ from, until }) => from < until);
    const moments = [...taken.map(({ from }) => from), ...less.flatMap(({ from, until }) => [from, until])];
    for (const moment of new Set(moments)) {
      const now = taken.filter(({ from, until }) => from <= moment && moment < until);
      const there = less.reduce(
        (most, span) => (span.from <= moment && moment < span.until ? span.capacity : most),
        capacity,
      );
      const sum = now.reduce((total, { amount }) => total + amount, 0);
      // what has begun is a fact: only what was planned beside it can be at fault
      if (sum > there && now.some(({ by }) => by?.begun === undefined))
        breaches.push(`${sum} of ${id} are taken at ${moment}, and there are ${there}`);
    }
  }
  return breaches;
}
