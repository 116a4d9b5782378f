import fc from "fast-check";
import { checkSchedule, scheduleSlack, scheduleTasks } from "slabwright/plan";
import { describe, expect, test } from "vitest";
import { smallKitchens } from "./small-problems";

describe("scheduleSlack", () => {
  test("a task may begin later by its slack and by no more", () => {
    fc.assert(
      fc.property(smallKitchens, (problem) => {
        const schedule = scheduleTasks({ ...problem, tries: 60 });
        const within = { ...problem, horizon: schedule.length };
        for (const { id, slack } of scheduleSlack(problem, schedule)) {
          const later = (by: number): number =>
            checkSchedule(
              within,
              schedule.tasks.map((one) => (one.id === id ? { id, start: one.start + by, end: one.end + by } : one)),
            ).length;
          for (let by = 0; by <= slack; by++) expect(later(by)).toBe(0);
          expect(later(slack + 1)).toBeGreaterThan(0);
        }
      }),
      { numRuns: 100 },
    );
  });
});
