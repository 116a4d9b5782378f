import { expect, test } from "vitest";
import { counterRuns } from "../../../../kernel-lib/library/src/heat/freezing/counter-runs";
import { foods } from "../foods";

const food = foods.reference;

test("the three runs on the counter get as warm as they are asked to", () => {
  const { runs } = counterRuns({ food, thicknessMm: 10 }, -2, "test");
  for (const run of runs) expect(run.stopped).toBe("core reached its target");
  expect(runs[1].timeMin[runs[1].timeMin.length - 1]).toBeLessThan(runs[2].timeMin[runs[2].timeMin.length - 1]);
});

test("a cold room and thawed food are refused by the caller's name", () => {
  expect(() => counterRuns({ food, thicknessMm: 10, airC: 0 }, -2, "test")).toThrow("test: airC must be warmer than");
  expect(() => counterRuns({ food, thicknessMm: 10, startC: 2 }, -2, "test")).toThrow("test: startC must be below");
});
