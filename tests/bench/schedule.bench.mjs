/**
 * Schedules. day.j30optimal: how many of twelve published instances (tests/published/psplib) come out at their proven optimum,
 * 10,000 orders each, which takes less than a second. No peer in the registry solves the same problem; the optimum is the peer.
 */
import { readFileSync } from "node:fs";
import { checkSchedule, scheduleTasks } from "slabwright/plan";

const instances = JSON.parse(readFileSync(new URL("../published/psplib/j30.json", import.meta.url), "utf8"));

function problemOf({ capacity, duration, use, followers }) {
  return {
    tasks: duration.map((lasts, at) => ({
      id: String(at + 1),
      duration: lasts,
      uses: Object.fromEntries(use.map((row, resource) => [`R${resource + 1}`, row[at]])),
    })),
    resources: capacity.map((most, at) => ({ id: `R${at + 1}`, capacity: most })),
    links: followers.flatMap((list, at) => list.map((after) => ({ before: String(at + 1), after: String(after) }))),
  };
}

export function rows() {
  let optimal = 0;
  let longestMs = 0;
  for (const one of instances) {
    const problem = problemOf(one);
    const begun = performance.now();
    const schedule = scheduleTasks({ ...problem, tries: 10_000 });
    longestMs = Math.max(longestMs, performance.now() - begun);
    if (checkSchedule(problem, schedule.tasks).length > 0) throw new Error(`${one.instance} breaks its problem`);
    if (schedule.length === one.optimum) optimal++;
  }
  return [
    {
      name: "day.j30optimal",
      value: optimal,
      unit: "instances",
      peer: "proven optima",
      peerValue: instances.length,
      ratio: optimal / instances.length,
      note: "of twelve mostly hard ones; 10,000 orders each",
    },
    {
      name: "day.j30longest",
      value: longestMs,
      unit: "ms",
      peer: null,
      peerValue: null,
      ratio: null,
      note: "the slowest of the twelve",
    },
  ];
}
