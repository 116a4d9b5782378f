import type { CompiledHold, CompiledProblem } from "./compiled-problem";

/** Where the tasks came to lie. */
export interface PlacedTasks {
  readonly starts: Int32Array;
  readonly length: number;
}

/** How an order is read. */
export interface PlacingOptions {
  /** what must follow soon goes before what stands first */
  readonly urgentFirst: boolean;
  /** one task is kept waiting: as early as possible is not always best where parts of a task or holds are in the way */
  readonly delayed: { readonly task: number; readonly notBefore: number } | null;
}

/** Places that were left for room to move a task: none of an order gets more. */
const MOST_REPAIRS = 40;

/**
 * Places tasks one after the other, each as early as all that lie already allow (serial schedule generation, J. E. Kelley
 * 1963): of those whose predecessors lie, what stands first in the order, or first of all what must follow soon. A hold is open
 * to the end until the task that ends it lies; a task that finds no place before then lets others go first. Where one comes
 * too late after another, that other is moved by as much, and all is placed again (after B. Franck, K. Neumann,
 * C. Schwindt 2001).
 *
 * @returns starts, or null where this order leads nowhere
 */
export function placeTasks(
  problem: CompiledProblem,
  order: ArrayLike<number>,
  { urgentFirst, delayed }: PlacingOptions,
): PlacedTasks | null {
  const { before, begun, capacity, duration, horizon, notBefore, simple } = problem;
  const count = duration.length;
  const earliest = Int32Array.from(notBefore);
  if (delayed !== null) earliest[delayed.task] = Math.max(earliest[delayed.task], delayed.notBefore);
  const repairs = MOST_REPAIRS + 2 * count;
  for (let repair = 0; repair <= repairs; repair++) {
    const room: Room = { free: capacity.map((one) => one.slice()), reach: 0, tail: capacity.map(() => 0) };
    const starts = new Int32Array(count).fill(-1);
    for (const task of problem.order) if (begun[task] >= 0) settle(problem, room, starts, task, begun[task]);
    let moved = false;
    let left = 0;
    for (let task = 0; task < count; task++) if (starts[task] < 0) left++;
    let first = 0;
    while (left > 0 && !moved) {
      let placed = false;
      while (starts[order[first]] >= 0) first++;
      for (const urgentOnly of urgentFirst && !simple ? [true, false] : [false]) {
        for (let at = first; at < count && !placed; at++) {
          const task = order[at];
          if (starts[task] >= 0 || !ready(problem, starts, task, urgentOnly)) continue;
          let from = earliest[task];
          let latest = horizon;
          let blame = -1;
          for (const link of before[task]) {
            const end = starts[link.task] + duration[link.task];
            if (end + link.least > from) from = end + link.least;
            // what has begun cannot be moved: then it is late, and is said to be
            if (begun[link.task] < 0 && end + link.most < latest) {
              latest = end + link.most;
              blame = link.task;
            }
          }
          const start = earliestPlace(problem, room, task, from);
          if (start < 0) continue;
          if (start > latest) {
            earliest[blame] = starts[blame] + (start - latest);
            moved = true;
            if (earliest[blame] >= horizon) return null;
          } else {
            settle(problem, room, starts, task, start);
            left--;
          }
          placed = true;
        }
        if (placed) break;
      }
      if (!placed) return null;
    }
    if (!moved) {
      let length = 0;
      for (let task = 0; task < count; task++) length = Math.max(length, starts[task] + duration[task]);
      return { starts, length };
    }
  }
  return null;
}

function ready({ before }: CompiledProblem, starts: Int32Array, task: number, urgentOnly: boolean): boolean {
  let urgent = false;
  for (const link of before[task]) {
    if (starts[link.task] < 0) return false;
    if (link.most !== Infinity) urgent = true;
  }
  return urgent || !urgentOnly;
}

/**
 * What is free at each time. Holds reach to the end, and nearly all of it lies beyond everything that was placed: there what
 * open holds take stands once, in the tail, and is written into the rows as far as they are reached.
 */
interface Room {
  readonly free: readonly Int32Array[];
  reach: number;
  readonly tail: number[];
}

function extend(room: Room, reach: number): void {
  if (reach <= room.reach) return;
  for (const [resource, taken] of room.tail.entries()) {
    if (taken === 0) continue;
    const row = room.free[resource];
    for (let at = room.reach; at < reach; at++) row[at] -= taken;
  }
  room.reach = reach;
}

/** First time from which a task finds all it uses, and what it goes on holding; −1 where there is none. */
function earliestPlace(problem: CompiledProblem, room: Room, task: number, from: number): number {
  const { capacity, closes, duration, horizon, opens, uses } = problem;
  const { free, tail } = room;
  const lasting = duration[task];
  if (from + lasting > horizon) return -1;
  extend(room, from);
  for (const hold of closes[task]) hang(room, hold, from, -hold.amount);
  let start = from;
  for (const { resource, amount } of opens[task]) {
    // what is held never gets less by itself
    if (capacity[resource][horizon - 1] - tail[resource] < amount) {
      start = horizon;
      break;
    }
    const row = free[resource];
    let at = room.reach - 1;
    while (at >= start && row[at] >= amount) at--;
    start = Math.max(start, at + 1);
  }
  for (let settled = false; !settled && start + lasting <= horizon; ) {
    settled = true;
    extend(room, start + lasting);
    for (const { resource, amount, from: begin, until } of uses[task]) {
      const row = free[resource];
      for (let at = start + until - 1; at >= start + begin; at--) {
        if (row[at] >= amount) continue;
        start = at + 1 - begin;
        settled = false;
        break;
      }
    }
  }
  for (const hold of closes[task]) hang(room, hold, from, hold.amount);
  return start + lasting <= horizon ? start : -1;
}

function settle(problem: CompiledProblem, room: Room, starts: Int32Array, task: number, start: number): void {
  const { closes, duration, opens, uses } = problem;
  starts[task] = start;
  extend(room, start + duration[task]);
  for (const hold of closes[task]) hang(room, hold, start, -hold.amount);
  for (const hold of opens[task]) hang(room, hold, start, hold.amount);
  for (const { resource, amount, from, until } of uses[task]) {
    const row = room.free[resource];
    for (let at = start + from; at < start + until; at++) row[at] -= amount;
  }
}

/** Takes so much more of a resource from a time on, to the end. */
function hang(room: Room, { resource }: CompiledHold, from: number, amount: number): void {
  room.tail[resource] += amount;
  const row = room.free[resource];
  for (let at = from; at < room.reach; at++) row[at] -= amount;
}
