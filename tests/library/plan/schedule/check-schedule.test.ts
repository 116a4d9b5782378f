import fc from "fast-check";
import { checkSchedule, type ScheduledTask, type ScheduleProblem, scheduleTasks } from "slabwright/plan";
import { describe, expect, test } from "vitest";
import { smallKitchens } from "./small-problems";

const problem: ScheduleProblem = {
  tasks: [
    { id: "spread", duration: 10, uses: { hands: 1 } },
    { id: "freeze", duration: 30, uses: { shelf: 1 } },
    { id: "cut", duration: 10, uses: { hands: 1 }, notBefore: 35 },
    { id: "other", duration: 20, uses: { shelf: 1 } },
  ],
  resources: [
    { id: "hands", capacity: 1, less: [{ from: 60, until: 70, capacity: 0 }] },
    { id: "shelf", capacity: 2 },
    { id: "pan", capacity: 1 },
  ],
  links: [
    { before: "spread", after: "freeze", most: 5 },
    { before: "freeze", after: "cut", most: 10 },
  ],
  holds: [{ resource: "pan", from: "spread", until: "cut" }],
};
const sound: readonly ScheduledTask[] = [
  { id: "spread", start: 0, end: 10 },
  { id: "freeze", start: 10, end: 40 },
  { id: "cut", start: 45, end: 55 },
  { id: "other", start: 0, end: 20 },
];
const moved = (id: string, start: number, end: number): ScheduledTask[] =>
  sound.map((one) => (one.id === id ? { id, start, end } : one));

describe("checkSchedule", () => {
  test.each([
    ["a wait that is too long", moved("freeze", 16, 46), /freeze begins 6 after spread, 5 at most/],
    ["a follower before its predecessor ends", moved("freeze", 9, 39), /freeze begins -1 after spread, 0 at least/],
    ["another duration", moved("other", 0, 19), /other lasts 19 instead of 20/],
    ["work in a break", moved("cut", 52, 62), /1 of hands are taken at 60, and there are 0/],
    ["two for one pair of hands", moved("cut", 5, 15), /2 of hands are taken at 5/],
    ["before it may begin", moved("cut", 34, 44), /cut begins at 34, before 35/],
    ["a task left out", sound.slice(1), /spread is not in the schedule/],
    ["a task that stands twice", [...sound, sound[0]], /spread stands twice/],
    ["a stranger", [...sound, { id: "x", start: 0, end: 1 }], /x is no task/],
  ])("finds %s", (_, scheduled, said) => {
    expect(checkSchedule(problem, sound)).toEqual([]);
    expect(checkSchedule(problem, scheduled).join("; ")).toMatch(said);
  });

  test("finds hands that are wanted twice for a part of the time", () => {
    const tasks = problem.tasks.map((task) =>
      task.id === "other" ? { ...task, parts: [{ resource: "hands", from: 18, until: 20 }] } : task,
    );
    expect(checkSchedule({ ...problem, tasks }, sound)).toEqual([]);
    expect(checkSchedule({ ...problem, tasks }, moved("other", 30, 50))).toEqual([
      "2 of hands are taken at 48, and there are 1",
    ]);
  });

  test("finds a pan that two hold, an end beyond the horizon and a start that was not", () => {
    const twice: ScheduleProblem = {
      ...problem,
      tasks: [...problem.tasks, { id: "spread too", duration: 0 }],
      links: [...problem.links, { before: "spread too", after: "cut" }],
      holds: [...(problem.holds ?? []), { resource: "pan", from: "spread too", until: "cut" }],
    };
    const scheduled = [...sound, { id: "spread too", start: 44, end: 44 }];
    expect(checkSchedule(twice, scheduled)).toEqual(["2 of pan are taken at 44, and there are 1"]);
    expect(checkSchedule({ ...problem, horizon: 50 }, sound)).toEqual(["cut ends at 55, after 50"]);
    const tasks = problem.tasks.map((task) => (task.id === "spread" ? { ...task, begun: 2 } : task));
    expect(checkSchedule({ ...problem, tasks }, sound)).toEqual(["spread begins at 0, and began 2"]);
  });

  test("a task moved out of a shortest schedule is found, or the schedule got no worse by it", () => {
    fc.assert(
      fc.property(smallKitchens, fc.nat(), fc.integer({ min: -4, max: -1 }), (kitchen, which, by) => {
        const { tasks, length, proven } = scheduleTasks({ ...kitchen, tries: 100 });
        const early = tasks.map((one, at) =>
          at === which % tasks.length ? { ...one, start: one.start + by, end: one.end + by } : one,
        );
        const end = Math.max(...early.map((one) => one.end));
        if (early.some(({ start }) => start < 0)) return;
        expect(proven && end < length ? checkSchedule(kitchen, early).length : 1).toBeGreaterThan(0);
      }),
      { numRuns: 100 },
    );
  });
});
