import { expect, test } from "vitest";
import { dryingConstants, flipsS } from "../../../../kernel-lib/library/src/heat/solver/surroundings";
import { foods } from "../foods";

test("flips come to seconds", () => {
  expect(flipsS(undefined, "test")).toEqual([]);
  expect(flipsS(8, "test")).toEqual([480]);
  expect(() => flipsS([-1], "test")).toThrow("test: flipMin must be >= 0 min, got -1");
});

test("drying takes its water from the food; dry food does not dry", () => {
  expect(dryingConstants(undefined, foods.reference, "test").crustWaterKgM3).toBeCloseTo(771.75, 9);
  expect(dryingConstants(undefined, foods.reference, "test").constants.law).toBe("receding-front");
  expect(dryingConstants("wet-front", foods.withoutIce, "test").constants.law).toBe("none");
  expect(() => dryingConstants("damp" as "none", foods.reference, "test")).toThrow(
    "test: drying must be none, boiling-surface",
  );
});
