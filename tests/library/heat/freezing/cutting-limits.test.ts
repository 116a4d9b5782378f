import { expect, test } from "vitest";
import { CUTTING_LIMITS, checkCuttingLimits } from "../../../../kernel-lib/library/src/heat/freezing/cutting-limits";

test("limits must lie below the freezing point, brittle below soft", () => {
  expect(checkCuttingLimits(CUTTING_LIMITS, -1.5, "test")).toBe(CUTTING_LIMITS);
  expect(() => checkCuttingLimits(CUTTING_LIMITS, -3.5, "test")).toThrow(
    "below the mix's freezing point of -3.5 °C, got -3",
  );
  expect(() => checkCuttingLimits({ softAboveC: -3, brittleBelowC: -3 }, -1, "test")).toThrow(
    "must be below softAboveC",
  );
});
