import type { CompiledProblem } from "./compiled-problem";
import type { PlacedTasks } from "./place-tasks";
import { sortedNumbers } from "./sorted-numbers";

/**
 * The order of the tasks when each lies as late as its followers and the resources allow, without making the whole longer
 * (justification, V. Valls, F. Ballestín, S. Quintanilla 2005). Placed again in that order a schedule gets shorter or stays;
 * longest waits and holds are left to that placing.
 */
export function lateOrder(problem: CompiledProblem, { starts, length }: PlacedTasks): Int32Array {
  const { after, capacity, duration, uses } = problem;
  const count = duration.length;
  const span = length + 1;
  const byEnd = sortedNumbers(count, (task) => (length - starts[task] - duration[task]) * span + length - starts[task]);
  const free = capacity.map((row) => row.slice(0, length));
  const late = new Int32Array(count);
  const done = new Uint8Array(count);
  // a follower can stand before its predecessor in byEnd only when both last no time
  const visit = (task: number): void => {
    if (done[task]) return;
    done[task] = 1;
    let end = length;
    for (const link of after[task]) {
      visit(link.task);
      end = Math.min(end, late[link.task] - link.least);
    }
    let start = end - duration[task];
    for (let settled = false; !settled && start > starts[task]; ) {
      settled = true;
      for (const { resource, amount, from, until } of uses[task]) {
        const row = free[resource];
        for (let at = start + from; at < start + until; at++) {
          if (row[at] >= amount) continue;
          start = at - until;
          settled = false;
          break;
        }
      }
    }
    late[task] = Math.max(start, Math.min(starts[task], end - duration[task]));
    for (const { resource, amount, from, until } of uses[task]) {
      const row = free[resource];
      for (let at = Math.max(0, late[task] + from); at < late[task] + until; at++) row[at] -= amount;
    }
  };
  for (const task of byEnd) visit(task);
  return sortedNumbers(count, (task) => late[task] * span + starts[task]);
}
