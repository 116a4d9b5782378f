import fc from "fast-check";
import { checkSchedule, type ScheduleProblem, scheduleTasks } from "slabwright/plan";
import { describe, expect, test } from "vitest";
import { shortestByHand } from "./shortest-by-hand";
import { smallKitchens } from "./small-problems";

const hands = { id: "hands", capacity: 1 };
const spread = (id: string): ScheduleProblem["tasks"][number] => ({ id, duration: 10, uses: { hands: 1 } });

describe("scheduleTasks", () => {
  test("small kitchens are as short as when every start is tried, and break nothing", () => {
    fc.assert(
      fc.property(smallKitchens, (problem) => {
        const schedule = scheduleTasks({ ...problem, tries: 1500 });
        expect(checkSchedule(problem, schedule.tasks)).toEqual([]);
        expect(schedule.length).toBe(shortestByHand(problem, schedule.length));
        expect(schedule.bound).toBeLessThanOrEqual(schedule.length);
      }),
      { numRuns: 25 },
    );
  });

  test("more of a resource is never longer", () => {
    fc.assert(
      fc.property(smallKitchens, fc.constantFrom("pan", "shelf", "hands"), (problem, more) => {
        const richer = {
          ...problem,
          resources: problem.resources.map((one) => (one.id === more ? { ...one, capacity: one.capacity + 1 } : one)),
        };
        const before = scheduleTasks({ ...problem, tries: 300 });
        const first = before.tasks.map(({ id }) => id);
        expect(scheduleTasks({ ...richer, tries: 300, first }).length).toBeLessThanOrEqual(before.length);
      }),
      { numRuns: 60 },
    );
  });

  test("a task goes on through no break", () => {
    const resources = [{ ...hands, less: [{ from: 15, until: 45, capacity: 0 }] }];
    const schedule = scheduleTasks({ tasks: [spread("a"), spread("b")], resources, links: [] });
    expect(schedule.tasks.map(({ start }) => start)).toEqual([0, 45]);
    expect(schedule.length).toBe(55);
  });

  test("what comes before is begun later when else its follower would come too late", () => {
    const problem: ScheduleProblem = {
      tasks: [spread("spread"), { id: "temper", duration: 20 }, spread("cut")],
      resources: [{ ...hands, less: [{ from: 25, until: 70, capacity: 0 }] }],
      links: [
        { before: "spread", after: "temper" },
        { before: "temper", after: "cut", most: 5 },
      ],
    };
    const schedule = scheduleTasks(problem);
    expect(schedule.tasks.find(({ id }) => id === "temper")?.start).toBe(45);
    expect(checkSchedule(problem, schedule.tasks)).toEqual([]);
  });

  test("a pan that stays taken lets the next product wait", () => {
    const tasks = ["a", "b"].flatMap((id) => [
      spread(`spread ${id}`),
      { id: `freeze ${id}`, duration: 100 },
      spread(`cut ${id}`),
    ]);
    const problem: ScheduleProblem = {
      tasks,
      resources: [hands, { id: "pan", capacity: 1 }],
      links: ["a", "b"].flatMap((id) => [
        { before: `spread ${id}`, after: `freeze ${id}` },
        { before: `freeze ${id}`, after: `cut ${id}` },
      ]),
      holds: ["a", "b"].map((id) => ({ resource: "pan", from: `spread ${id}`, until: `cut ${id}` })),
    };
    // 10 spread, 100 freeze, 10 cut, and only then has the other a pan
    expect(scheduleTasks({ ...problem, tries: 200 }).length).toBe(240);
  });

  test("what has begun stays, and is said to be late where it cannot be helped", () => {
    const problem: ScheduleProblem = {
      tasks: [
        { id: "temper", duration: 20, begun: 0 },
        { ...spread("cut"), notBefore: 60 },
      ],
      resources: [hands],
      links: [{ before: "temper", after: "cut", most: 15 }],
    };
    const schedule = scheduleTasks(problem);
    expect(schedule.late).toEqual([{ before: "temper", after: "cut", by: 25 }]);
    expect(checkSchedule(problem, schedule.tasks)).toHaveLength(1);
  });

  test("the same seed gives the same schedule", () => {
    const [problem] = fc.sample(smallKitchens, { numRuns: 1, seed: 5 });
    expect(scheduleTasks({ ...problem, seed: 3 })).toEqual(scheduleTasks({ ...problem, seed: 3 }));
  });

  test("refuses what cannot be", () => {
    const tasks = [spread("a"), spread("b")];
    const circle = [
      { before: "a", after: "b" },
      { before: "b", after: "a" },
    ];
    expect(() => scheduleTasks({ tasks, resources: [hands], links: circle })).toThrow(
      /^scheduleTasks: links must not go in a circle, got "a, b"$/,
    );
    expect(() => scheduleTasks({ tasks, resources: [{ id: "hands", capacity: 0 }], links: [] })).toThrow(
      /^scheduleTasks: what a uses of hands must be at most 0, got 1$/,
    );
    const parts = [{ resource: "hands", from: 8, until: 11 }];
    expect(() => scheduleTasks({ tasks: [{ id: "a", duration: 10, parts }], resources: [hands], links: [] })).toThrow(
      /part of a must end with it, after 10, got 11/,
    );
    expect(() => scheduleTasks({ tasks, resources: [hands], links: [], horizon: 15 })).toThrow(/must fit into 15/);
    expect(() => scheduleTasks({ tasks: [spread("a"), spread("a")], resources: [hands], links: [] })).toThrow(
      /task a must stand once/,
    );
    expect(() => scheduleTasks({ tasks, resources: [hands], links: [{ before: "a", after: "c" }] })).toThrow(
      /a link must name tasks, got "c"/,
    );
    expect(() =>
      scheduleTasks({ tasks, resources: [hands], links: [], holds: [{ resource: "hands", from: "a", until: "b" }] }),
    ).toThrow(/a must not use hands itself/);
  });
});
