import type { CompiledProblem } from "./compiled-problem";

/**
 * A length that no schedule can go below: the longest chain of tasks, and for each resource the work on it, between the
 * least time that comes before and the least that comes after, over what there is of it at each time.
 *
 * Max over resources k and tasks i, j: the time by which k has given Σ duration·use of all tasks with head ≥ headᵢ and
 * tail ≥ tailⱼ, counted from headᵢ, plus tailⱼ.
 */
export function scheduleBound(problem: CompiledProblem): number {
  const { after, before, begun, capacity, duration, horizon, notBefore, order, uses } = problem;
  const count = duration.length;
  const head = new Int32Array(count);
  const tail = new Int32Array(count);
  for (const task of order) {
    let from = notBefore[task];
    for (const link of before[task]) from = Math.max(from, head[link.task] + duration[link.task] + link.least);
    head[task] = begun[task] >= 0 ? begun[task] : firstOpen(problem, task, from);
  }
  for (let at = count - 1; at >= 0; at--) {
    const task = order[at];
    for (const link of after[task]) {
      const behind = link.least + duration[link.task] + tail[link.task];
      tail[task] = Math.max(tail[task], begun[link.task] >= 0 ? 0 : behind);
    }
  }
  let bound = 0;
  for (let task = 0; task < count; task++) bound = Math.max(bound, head[task] + duration[task] + tail[task]);
  for (const [resource, row] of capacity.entries()) {
    const users = Array.from({ length: count }, (_, task) => task).flatMap((task) => {
      const own = uses[task].filter((one) => one.resource === resource);
      const work = own.reduce((sum, { amount, from, until }) => sum + amount * (until - from), 0);
      return work === 0 || begun[task] >= 0 ? [] : [{ task, work }];
    });
    if (users.length === 0) continue;
    const given = new Float64Array(horizon + 1);
    for (let at = 0; at < horizon; at++) given[at + 1] = given[at] + row[at];
    const tails = [...new Set(users.map(({ task }) => tail[task]))];
    for (const least of new Set(users.map(({ task }) => head[task]))) {
      for (const last of tails) {
        let work = 0;
        for (const user of users) if (head[user.task] >= least && tail[user.task] >= last) work += user.work;
        if (work > 0) bound = Math.max(bound, timeWhen(given, given[least] + work) + last);
      }
    }
  }
  return bound;
}

/** First time from which a task alone finds what it uses. */
function firstOpen({ capacity, duration, horizon, uses }: CompiledProblem, task: number, from: number): number {
  let start = from;
  for (let at = start; at < Math.min(horizon, start + duration[task]); at++) {
    const short = uses[task].find(
      (use) => at >= start + use.from && at < start + use.until && capacity[use.resource][at] < use.amount,
    );
    if (short === undefined) continue;
    start = at + 1 - short.from;
    at = start - 1;
  }
  return start;
}

/** First time by which so much was given. */
function timeWhen(given: Float64Array, wanted: number): number {
  let [low, high] = [0, given.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (given[middle] >= wanted) high = middle;
    else low = middle + 1;
  }
  return low;
}
