import { batchTimes } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { checkSchedule, scheduleTasks } from "slabwright/plan";
import { describe, expect, test } from "vitest";
import { dayProblem } from "../../../../kernel-lib/library/src/advice/day/day-problem";
import { kitchenPlaces } from "../../../../kernel-lib/library/src/advice/day/kitchen-places";
import { freezerOf, searchDay } from "../../../../kernel-lib/library/src/advice/day/search-day";

const kitchen = { ...loadKitchen(), day: {}, traces: [] };
const batches = [{ variantId: "beet-lentil" }, { variantId: "chickpea-carrot" }];
const search = (given: object) => {
  const places = kitchenPlaces({ kitchen, given, where: "test" });
  return { places, ...searchDay({ kitchen, batches, places, tries: 16, seed: 1 }) };
};

describe("searchDay", () => {
  test("more hands and more places in the freezer never make the day longer", () => {
    const settled = (given: object) => kitchenPlaces({ kitchen, given, where: "test" });
    const times = batches.map((batch) => batchTimes({ kitchen, batch, places: settled({}), stacked: 1 }));
    const length = (given: object): number => {
      const { problem, steps } = dayProblem({ kitchen, places: settled(given), batches: times, stacked: 1 });
      return scheduleTasks({ ...problem, tries: 200, first: steps.map(({ id }) => id) }).length;
    };
    const byHands = [1, 2, 3].map((hands) => length({ hands, freezerPlaces: 5 }));
    const byPlaces = [3, 4, 5, 8].map((freezerPlaces) => length({ hands: 2, freezerPlaces }));
    for (const lengths of [byHands, byPlaces]) expect(lengths).toEqual([...lengths].sort((a, b) => b - a));
    expect(byHands[2]).toBeLessThan(byHands[0]);
  });

  test("one that stands alone takes a whole place, and those above each other share it", () => {
    const { day, schedule, stacked, times } = search({
      hands: 2,
      airflow: "fan",
      freezerPlaces: 1,
      stackUpTo: 4,
      freezerRemovesW: 2000,
    });
    expect(checkSchedule(day.problem, schedule.tasks)).toEqual([]);
    expect(times.some(({ isStacked }) => isStacked)).toBe(true);
    expect(stacked).toBe(4);
    expect(day.problem.resources.find(({ id }) => id === "freezer")?.capacity).toBe(4);
    const amountOf = new Map(times.map(({ variant, isStacked }) => [variant.variantId, isStacked ? 1 : 4]));
    for (const { resource, amount = 1, from } of day.problem.holds ?? [])
      if (resource === "freezer")
        expect(amount).toBe(amountOf.get(day.steps.find(({ id }) => id === from)?.variantId ?? ""));
  });

  test("the freezer's power is shared only where what lies there would get too warm, and then it is colder", () => {
    const wide = { hands: 3, freezerPlaces: 9, stackUpTo: 1, storedKg: 3 };
    expect(search({ ...wide, freezerRemovesW: 2000 }).wouldWarmToC).toBeNull();
    const weak = search({ ...wide, freezerRemovesW: 60 });
    expect(checkSchedule(weak.day.problem, weak.schedule.tasks)).toEqual([]);
    expect(weak.wouldWarmToC as number).toBeGreaterThan(-12);
    expect(freezerOf(weak, weak.places, "metric").storedToC as number).toBeLessThan(weak.wouldWarmToC as number);
  });
});
