// PSPLIB, the project scheduling problem library: R. Kolisch, A. Sprecher (1996), PSPLIB, European Journal of Operational
// Research 96:205-216; set j30, 30 tasks and four resources each. psplib/j30.json holds 44 of its 480 instances: of 40 of the 48
// classes one, of most the first, and four more of classes with scarce resources (13, 29, 45), which are known to be hard. The eight classes
// that are left out (16, 20, 24, 28, 32, 36, 40, 44) have resources in plenty. Instances were read in the public repository
// MiniZinc/minizinc-benchmarks (rcpsp/data_psplib/j30), j301_1 also in google/or-tools (ortools/scheduling/testdata);
// optima, all proven, in ptal/kobe-scheduling (data/rcpsp/j30.sm/optimum/optimum.csv). No tolerance: lengths are whole
// numbers. `npm run bench -- schedule` measures how long each takes.

import { readFileSync } from "node:fs";
import { checkSchedule, type ScheduleProblem, scheduleTasks } from "slabwright/plan";
import { describe, expect, test } from "vitest";
import { comparison } from "./comparison";

const lengths = comparison({
  page: "batch-day",
  what: "length of schedules by `scheduleTasks`, two thousand orders",
  against: "proven optima of set j30",
  source: "Kolisch R., Sprecher A. (1996), PSPLIB, European Journal of Operational Research 96:205-216",
});

interface Instance {
  readonly instance: string;
  readonly optimum: number;
  readonly capacity: readonly number[];
  readonly duration: readonly number[];
  readonly use: readonly (readonly number[])[];
  readonly followers: readonly (readonly number[])[];
}
const instances = JSON.parse(readFileSync(new URL("psplib/j30.json", import.meta.url), "utf8")) as Instance[];

function problemOf({ capacity, duration, use, followers }: Instance): ScheduleProblem {
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

describe("published schedules", () => {
  let optimal = 0;

  test.each(instances.map((one) => [one.instance, one] as const))("%s", (_, one) => {
    const problem = problemOf(one);
    const schedule = scheduleTasks({ ...problem, tries: 10_000 });
    expect(checkSchedule(problem, schedule.tasks)).toEqual([]);
    expect(schedule.bound).toBeLessThanOrEqual(one.optimum);
    expect(schedule.length).toBeGreaterThanOrEqual(one.optimum);
    lengths.relative(schedule.length, one.optimum, 0.03);
    if (schedule.length === one.optimum) optimal++;
  });

  test("at least 95 % are optimal after ten thousand orders, some 0.3 s each", () => {
    expect(optimal).toBeGreaterThanOrEqual(0.95 * instances.length);
  });
});
