import { expect, test } from "vitest";
import { dryingConstants, faceAir, flipsS } from "../../../../kernel-lib/library/src/heat/solver/surroundings";
import { foods } from "../foods";

test("air comes to SI, jumps allowed, going back refused", () => {
  const jump = [
    { timeMin: 0, airC: 204 },
    { timeMin: 5, airC: 204 },
    { timeMin: 5, airC: 150 },
  ];
  expect(faceAir(jump, 40, "test", "").timeS).toEqual([0, 300, 300]);
  expect(() => faceAir([jump[1], jump[0]], 40, "test", "")).toThrow("test: air[1].timeMin must not be before");
  expect(() => faceAir(900, 40, "test", "")).toThrow("test: air must be between -200 and 450 °C, got 900");
});

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
