import type { ScheduleProblem } from "slabwright/plan";

/**
 * The length of the shortest schedule of a small problem: every start of every task is tried, minute by minute. Shares no
 * code with the library. `null` where nothing fits into the horizon.
 */
export function shortestByHand(problem: ScheduleProblem, horizon: number): number | null {
  const { tasks, resources, links, holds = [] } = problem;
  const starts = new Map<string, number>();
  let best: number | null = null;

  const endOf = (id: string): number =>
    (starts.get(id) as number) + (tasks.find((task) => task.id === id)?.duration as number);
  const waitsKept = (): boolean =>
    links.every(({ before, after, least = 0, most = Number.POSITIVE_INFINITY }) => {
      if (!starts.has(before) || !starts.has(after)) return true;
      const wait = (starts.get(after) as number) - endOf(before);
      return wait >= least && wait <= most;
    });
  const roomKept = (whole: boolean): boolean =>
    resources.every(({ id, capacity, less = [] }) => {
      for (let at = 0; at < horizon; at++) {
        let taken = 0;
        for (const task of tasks) {
          const start = starts.get(task.id);
          if (start === undefined) continue;
          if (start <= at && at < start + task.duration) taken += task.uses?.[id] ?? 0;
          for (const { resource, amount = 1, from, until } of task.parts ?? [])
            if (resource === id && start + from <= at && at < start + until) taken += amount;
        }
        for (const hold of whole ? holds : [])
          if (
            hold.resource === id &&
            (starts.get(hold.from) as number) <= at &&
            at < (starts.get(hold.until) as number)
          )
            taken += hold.amount ?? 1;
        const there = less.reduce((now, one) => (one.from <= at && at < one.until ? one.capacity : now), capacity);
        if (taken > there) return false;
      }
      return true;
    });
  const place = (at: number): void => {
    if (at === tasks.length) {
      if (!roomKept(true)) return;
      const length = Math.max(...tasks.map(({ id }) => endOf(id)));
      if (best === null || length < best) best = length;
      return;
    }
    const { id, duration, notBefore = 0 } = tasks[at];
    for (let start = notBefore; start + duration <= (best ?? horizon + 1) - 1; start++) {
      starts.set(id, start);
      if (waitsKept() && roomKept(false)) place(at + 1);
    }
    starts.delete(id);
  };
  place(0);
  return best;
}
